import { describe, expect, it } from 'vitest';
import type { CourseView } from '#contract';
import type { Id, PlainDate, PlainTime } from '#core';
import { courseOf, lessonOf } from '../../score/course.fixture.ts';
import { lessonsWithin, type Trial, trialToCommands } from './what-if-commands.ts';

const day = (text: string) => text as PlainDate;
const nothing: Trial = { away: null, minutes: null, unit: null, deadlines: new Map() };
const slot = (n: number, given: Partial<CourseView['slots'][number]> = {}) => ({
  id: `slot:${n}` as Id<'slot'>,
  weekday: 1 as const,
  time: '16:00' as PlainTime,
  minutes: 30,
  starts: day('2025-09-01'),
  ends: null,
  ...given,
});
const course = courseOf({
  revision: 9,
  today: day('2026-01-12'),
  bars: [
    lessonOf(1, { status: 'taught' }),
    lessonOf(2, {}),
    { kind: 'rest', from: day('2026-01-17'), to: day('2026-01-18'), name: 'Fair' },
    lessonOf(3, {}),
    lessonOf(4, { status: 'cancelled', number: null }),
    lessonOf(5, {}),
  ],
  slots: [slot(1), slot(2, { minutes: 45 }), slot(3, { ends: day('2025-12-20') })],
});

describe('trialToCommands', () => {
  it('is empty when nothing is tried', () => {
    expect(trialToCommands(course, nothing, 'away')).toEqual([]);
  });

  it('cancels the planned lessons of the days away, both ends included', () => {
    const away = { from: day('2026-01-05'), to: day('2026-02-02') };
    expect(lessonsWithin(course, away.from, away.to).map((bar) => bar.lesson)).toEqual([
      'lesson:2',
      'lesson:3',
      'lesson:5',
    ]);
    expect(trialToCommands(course, { ...nothing, away }, 'away')[0]).toEqual({
      type: 'lesson.cancel',
      lesson: 'lesson:2',
      reason: 'away',
    });
  });

  it('changes the length of the slots that run on and have another', () => {
    const commands = trialToCommands(course, { ...nothing, minutes: 45 }, 'away');
    expect(commands).toEqual([
      { type: 'slot.put', seen: 9, course: course.id, slot: { ...slot(1), minutes: 45 } },
    ]);
  });

  it('changes strands only when a deadline really differs, and can take one away', () => {
    const [strand] = course.strands;
    if (!strand) throw new Error('the fixture has strands');
    expect(trialToCommands(course, { ...nothing, deadlines: new Map([[strand.id, null]]) }, 'away')).toEqual(
      [],
    );
    const [command] = trialToCommands(
      course,
      { ...nothing, deadlines: new Map([[strand.id, day('2026-03-01')]]) },
      'away',
    );
    expect(command).toMatchObject({ type: 'course.change', seen: 9 });
    expect(command?.type === 'course.change' && command.strands?.map((s) => s.deadline)).toEqual([
      '2026-03-01',
      null,
    ]);
  });
});
