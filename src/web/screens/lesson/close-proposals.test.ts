import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LessonSegmentView, LessonSkillView } from '#contract';
import { nearestQuarter, proposeClose } from './close-proposals.ts';
import { segmentOf } from './lesson-segment.fixture.ts';

const segment = (id: string, change: Partial<LessonSegmentView> = {}): LessonSegmentView =>
  segmentOf(id, { minutes: 12, ...change });
const skill = (here: LessonSkillView['level'], wanted: LessonSkillView['wanted'] = 2): LessonSkillView => ({
  skill: 'skill:s' as LessonSkillView['skill'],
  title: 's',
  level: here,
  here:
    here === null
      ? null
      : { observation: 'observation:o' as NonNullable<LessonSkillView['here']>['observation'], level: here },
  wanted,
  lookFor: [],
  listenable: [],
});
const propose = (...segments: LessonSegmentView[]) =>
  proposeClose({ minutes: 30, segments }).map((p) => [p.outcome, p.share, p.minutes, p.because]);

describe('proposals on closing a lesson', () => {
  it('leave what the teacher recorded', () => {
    expect(propose(segment('a', { outcome: 'setAside', seconds: 300 }))).toEqual([
      ['setAside', null, 5, 'recorded'],
    ]);
  });
  it('know the share that was said by hand', () => {
    const segments = [segment('a', { outcome: 'partly', seconds: 300, covered: 7.5 })];
    const found = proposeClose({ minutes: 30, segments }, new Map([['segment:a', 0.5]]));
    expect(found[0]).toMatchObject({ outcome: 'partly', share: 0.5, because: 'recorded' });
    expect(proposeClose({ minutes: 30, segments })[0]?.share).toBeNull();
  });
  it('take the lesson as planned when no clock ran at all', () => {
    expect(propose(segment('a'), segment('b', { completes: false, minutes: 8 }))).toEqual([
      ['finished', null, 12, 'asPlanned'],
      ['partly', 1, 8, 'asPlanned'],
    ]);
  });
  it('claim no measured time where no clock ran', () => {
    const segments = [
      segment('a'),
      segment('b', { outcome: 'finished' }),
      segment('c', { outcome: 'finished', seconds: 4 }),
    ];
    expect(proposeClose({ minutes: 40, segments }).map((p) => [p.minutes, p.timed])).toEqual([
      [0, 'clock'],
      [12, 'planned'],
      [12, 'planned'],
    ]);
  });
  it('call a segment not reached when others had the clock and it had none', () => {
    expect(propose(segment('a', { seconds: 720 }), segment('b'))).toEqual([
      ['finished', null, 12, 'clockFull'],
      ['skipped', null, 0, 'notStarted'],
    ]);
  });
  it('carry on where the clock stopped short, to the nearest quarter', () => {
    expect(propose(segment('a', { seconds: 330 }))).toEqual([['partly', 0.5, 6, 'clockPart']]);
    expect(propose(segment('a', { seconds: 40 }))).toEqual([['partly', 0.25, 1, 'clockPart']]);
  });
  it('pass over what the clock only touched on the way to closing', () => {
    expect(propose(segment('a', { seconds: 720 }), segment('b', { seconds: 20 }))).toEqual([
      ['finished', null, 12, 'clockFull'],
      ['skipped', null, 0, 'notStarted'],
    ]);
  });
  it('finish early when the level was reached', () => {
    expect(propose(segment('a', { seconds: 240, skills: [skill(3)] }))).toEqual([
      ['finished', null, 4, 'levelReached'],
    ]);
  });
  it('carry on after full time when the level was not reached', () => {
    expect(propose(segment('a', { seconds: 720, skills: [skill(1)] }))).toEqual([
      ['partly', 0.75, 12, 'levelBelow'],
    ]);
  });
  it('never call the chunk of a longer activity finished by itself', () => {
    expect(propose(segment('a', { seconds: 700, completes: false, skills: [skill(3)] }))[0]?.[0]).toBe(
      'partly',
    );
  });
  it('put planned minutes in place of a clock that ran on over lunch', () => {
    expect(propose(segment('a', { seconds: 7200 }))).toEqual([['finished', null, 12, 'ranOn']]);
  });
  it('give every segment one proposal in order, with whole minutes and a share only when partly (law)', () => {
    const any = fc.record({
      minutes: fc.integer({ min: 1, max: 40 }),
      seconds: fc.option(fc.integer({ min: 0, max: 21_600 })),
      completes: fc.boolean(),
      kind: fc.constantFrom<LessonSegmentView['kind']>(
        'settlingIn',
        'recap',
        'revisit',
        'work',
        'extension',
        'practice',
      ),
    });
    fc.assert(
      fc.property(fc.array(any, { maxLength: 9 }), (plain) => {
        const segments = plain.map((p, i) => segment(`s${i}`, p));
        const found = proposeClose({ minutes: 45, segments });
        expect(found.map((p) => p.segment)).toEqual(segments.map((s) => s.id));
        for (const p of found) {
          expect(Number.isInteger(p.minutes)).toBe(true);
          expect(p.share === null).toBe(p.outcome !== 'partly');
        }
      }),
      { seed: 12 },
    );
  });
});

describe('nearestQuarter', () => {
  it.each([
    [0, 0.25],
    [0.37, 0.25],
    [0.38, 0.5],
    [0.7, 0.75],
    [0.99, 0.75],
  ])('%s is %s', (share, quarter) => expect(nearestQuarter(share)).toBe(quarter));
});
