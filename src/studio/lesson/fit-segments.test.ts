import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { SegmentRecord } from '../record/records.ts';
import { id } from '../testing/open-studio.contract.ts';
import { fitSegments } from './fit-segments.ts';

const segment = (n: number, more: Partial<SegmentRecord>): SegmentRecord => ({
  id: id('segment', `s${n}`),
  lesson: id('lesson', 'l'),
  course: id('course', 'c'),
  position: n,
  key: `k${n}`,
  kind: 'work',
  strand: null,
  courseUnit: null,
  activity: null,
  skill: null,
  title: '',
  start: 0,
  minutes: 5,
  completes: false,
  pinned: false,
  reasons: [],
  seconds: null,
  covered: null,
  outcome: null,
  note: '',
  ...more,
});

test('[R-HAND-3] open time gives first, then what was done early, then the plan from its end', () => {
  const segments = [
    segment(0, { kind: 'settlingIn', minutes: 3 }),
    segment(1, { minutes: 10, outcome: 'finished', seconds: 360 }),
    segment(2, { minutes: 10 }),
    segment(3, { kind: 'open', minutes: 4 }),
    segment(4, { kind: 'practice', minutes: 3 }),
  ];
  const minutes = (total: number) => fitSegments(segments, total).map((s) => s.minutes);
  expect(minutes(30)).toEqual([3, 10, 10, 4, 3]);
  expect(minutes(27)).toEqual([3, 10, 10, 1, 3]);
  expect(minutes(24)).toEqual([3, 8, 10, 3]);
  expect(minutes(20)).toEqual([3, 6, 8, 3]);
  expect(minutes(35)).toEqual([3, 10, 10, 9, 3]);
});

test('[R-PLAN-2] whatever the segments, they add up to the lesson', () => {
  const any = fc.record({
    kind: fc.constantFrom('settlingIn', 'recap', 'revisit', 'work', 'extension', 'open', 'practice'),
    minutes: fc.integer({ min: 1, max: 40 }),
    outcome: fc.constantFrom(null, 'finished', 'partly', 'skipped'),
    seconds: fc.option(fc.integer({ min: 0, max: 3000 })),
    note: fc.constantFrom('', 'a note'),
  });
  fc.assert(
    fc.property(
      fc.array(any, { minLength: 1, maxLength: 9 }),
      fc.integer({ min: 10, max: 240 }),
      (parts, minutes) => {
        const segments = parts.map((p, n) => segment(n, p as Partial<SegmentRecord>));
        const fitted = fitSegments(segments, minutes);
        expect(fitted.reduce((sum, s) => sum + s.minutes, 0)).toBe(minutes);
        for (const s of fitted) expect(s.minutes).toBeGreaterThanOrEqual(0);
        // What was logged or written is never thrown away.
        for (const s of segments)
          if (s.outcome !== null || s.note !== '') expect(fitted.some((f) => f.id === s.id)).toBe(true);
      },
    ),
    { seed: 2 },
  );
});
