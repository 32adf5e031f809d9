import { describe, expect, it } from 'vitest';
import type { Id, PlainTime } from '#core';
import { courseOf, lessonOf, segmentOf } from './course.fixture.ts';
import {
  describeBar,
  describeSegment,
  descriptionToText,
  isMovable,
  isSettable,
  joinSentences,
} from './describe.ts';
import { barToTimes } from './timeline.ts';

const writing = {
  day: (date: string) => date,
  time: (time: PlainTime) => time,
  share: (share: number) => `${Math.round(share * 100)} %`,
};
const strand = 'strand:0' as Id<'strand'>;
const work = segmentOf({
  id: 'segment:a' as Id<'segment'>,
  strand,
  start: 5,
  minutes: 10,
  title: 'Long notes',
  courseUnit: 'course-unit:a' as Id<'course-unit'>,
  activity: 'long-notes',
  endsUnit: true,
  completes: true,
  pinned: true,
  reasons: ['Rests on “Breath”.', 'Split: 10 of 14 minutes fit here.'],
});

describe('the score in sentences', () => {
  it('says of a planned segment where, how long, what and why', () => {
    const said = describeSegment(work, lessonOf(3, {}), work, courseOf({}).strands[0] ?? null, writing);
    expect(descriptionToText(said)).toBe(
      'Long notes, Technique, 10 min, Lesson 3, 2026-01-19, from minute 5, the unit ends here: check, pinned. ' +
        'Rests on “Breath”. Split: 10 of 14 minutes fit here.',
    );
  });

  it('says of a taught one what it took against the plan', () => {
    const taught = { ...work, actualMinutes: 13, outcome: 'partly' as const, endsUnit: false, pinned: false };
    const said = describeSegment(
      taught,
      lessonOf(1, { status: 'taught' }),
      { start: 2, minutes: 13 },
      courseOf({}).strands[0] ?? null,
      writing,
    );
    expect(said.facts).toContain('13 min of 10 planned');
    expect(said.facts).toContain('partly done');
  });

  it('says of a bar what became of the lesson', () => {
    const bar = lessonOf(2, { status: 'cancelled', number: null, reason: 'storm' });
    expect(descriptionToText(describeBar(bar, barToTimes(bar), writing))).toBe(
      'Lesson, 2026-01-12, 16:00, 30 min, Cancelled: storm.',
    );
    const planned = lessonOf(2, { barred: true, overrun: 0.16 });
    expect(describeBar(planned, barToTimes(planned), writing).facts.slice(3)).toEqual([
      'planned',
      'kept free',
      '16 % chance of running over',
    ]);
  });

  it('names in a taught bar what was passed over', () => {
    const bar = lessonOf(1, { status: 'taught', segments: [{ ...work, outcome: 'skipped' }] });
    expect(describeBar(bar, barToTimes(bar), writing).facts).toContain('not done: Long notes');
  });

  it('ends every sentence once', () => {
    expect(joinSentences(['a', 'B.', '', 'c?'])).toBe('a. B. c?');
  });
});

describe('what can be done with a segment', () => {
  it.each([
    [work, 'planned', true, true],
    [work, 'taught', false, false],
    [{ ...work, kind: 'revisit', courseUnit: null, activity: null }, 'planned', true, false],
    [{ ...work, kind: 'recap', strand: null }, 'planned', false, false],
  ] as const)('case %#', (segment, status, movable, settable) => {
    const bar = lessonOf(1, { status });
    expect(isMovable(segment, bar)).toBe(movable);
    expect(isSettable(segment, bar)).toBe(settable);
  });
});
