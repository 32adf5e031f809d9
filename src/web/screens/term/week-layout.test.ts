import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addMinutes, type Id, minutesOf, type PlainTime, type Weekday } from '#core';
import { layoutWeek, type WeekSlot } from './week-layout.ts';

const slot = (n: number, weekday: Weekday, time: string, minutes: number): WeekSlot => ({
  slot: `slot:${n}` as Id<'slot'>,
  course: `course:${n}` as Id<'course'>,
  courseRevision: 1,
  learner: `Learner ${n}`,
  students: [],
  instrumentName: 'Flute',
  weekday,
  time: time as PlainTime,
  minutes,
  clash: false,
});

test('working days always, the weekend where something stands on it', () => {
  expect(layoutWeek([]).days.map((d) => d.weekday)).toEqual([1, 2, 3, 4, 5]);
  expect(layoutWeek([slot(1, 6, '10:00', 30)]).days.map((d) => d.weekday)).toEqual([1, 2, 3, 4, 5, 6]);
});

test('hours hold every lesson', () => {
  const { fromHour, toHour } = layoutWeek([slot(1, 1, '08:45', 30), slot(2, 1, '19:30', 45)]);
  expect([fromHour, toHour]).toEqual([8, 21]);
});

test('back to back shares a lane; overlap takes two', () => {
  const [day] = layoutWeek([slot(1, 1, '15:00', 30), slot(2, 1, '15:30', 30), slot(3, 1, '15:45', 30)]).days;
  expect(day?.slots.map((s) => [s.slot.slot, s.lane, s.lanes])).toEqual([
    ['slot:1', 0, 1],
    ['slot:2', 0, 2],
    ['slot:3', 1, 2],
  ]);
});

test('law: no two lessons of a day cover each other', () => {
  const any = fc.array(
    fc.record({ at: fc.integer({ min: 0, max: 260 }), minutes: fc.constantFrom(15, 30, 45, 60) }),
    { maxLength: 14 },
  );
  fc.assert(
    fc.property(any, (given) => {
      const week = given.map((g, n) => slot(n, 3, addMinutes('08:00' as PlainTime, g.at * 2), g.minutes));
      const slots = layoutWeek(week).days.find((d) => d.weekday === 3)?.slots ?? [];
      expect(slots).toHaveLength(week.length);
      for (const a of slots)
        for (const b of slots) {
          if (a === b || a.lane !== b.lane) continue;
          const [from, to] = [minutesOf(a.slot.time), minutesOf(b.slot.time)];
          expect(from + a.slot.minutes <= to || to + b.slot.minutes <= from).toBe(true);
        }
      for (const s of slots) expect(s.lane).toBeLessThan(s.lanes);
    }),
  );
});
