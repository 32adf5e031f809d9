import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addDays, type Weekday, weekdayOf } from '#core';
import { day } from '../testing/open-studio.contract.ts';
import { lessonDates } from './lesson-dates.ts';

const term = { starts: day('2026-09-01'), ends: day('2026-09-30') };

test('[R-LESSON-1] Tuesdays of a term without its holidays, from a day on', () => {
  const slot = { weekday: 2 as const, starts: day('2026-01-01'), ends: null };
  const holiday = { starts: day('2026-09-07'), ends: day('2026-09-08') };
  expect(lessonDates(slot, [term], [holiday], day('2026-08-01'))).toEqual(
    '2026-09-01 2026-09-15 2026-09-22 2026-09-29'.split(' '),
  );
  expect(lessonDates(slot, [term], [], day('2026-09-22'))).toEqual(['2026-09-22', '2026-09-29']);
  expect(lessonDates({ ...slot, ends: day('2026-09-14') }, [term], [], day('2026-09-02'))).toEqual([
    '2026-09-08',
  ]);
  expect(lessonDates(slot, [term, { ...term, ends: day('2026-09-08') }], [], day('2026-09-01'))).toHaveLength(
    5,
  );
});

test('[R-LESSON-1] the same days as walking through the calendar day by day', () => {
  const offset = fc.integer({ min: 0, max: 120 });
  const span = fc.tuple(offset, offset).map(([a, b]) => ({
    starts: addDays(day('2027-12-01'), Math.min(a, b)),
    ends: addDays(day('2027-12-01'), Math.max(a, b)),
  }));
  fc.assert(
    fc.property(
      fc.array(span, { maxLength: 3 }),
      fc.array(span, { maxLength: 3 }),
      span,
      fc.integer({ min: 1, max: 7 }),
      offset,
      (terms, holidays, own, weekday, from) => {
        const start = addDays(day('2027-12-01'), from);
        const expected: string[] = [];
        for (let n = 0; n <= 120; n++) {
          const date = addDays(day('2027-12-01'), n);
          const within = (s: { starts: string; ends: string }) => s.starts <= date && date <= s.ends;
          if (
            date >= start &&
            weekdayOf(date) === weekday &&
            within(own) &&
            terms.some(within) &&
            !holidays.some(within)
          )
            expected.push(date);
        }
        expect(lessonDates({ ...own, weekday: weekday as Weekday }, terms, holidays, start)).toEqual(
          expected,
        );
      },
    ),
    { seed: 3, numRuns: 60 },
  );
});
