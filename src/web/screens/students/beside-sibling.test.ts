import { expect, test } from 'vitest';
import type { PlainTime } from '#core';
import { findBeside, placeAt } from './beside-sibling.ts';
import type { Stand } from './first-lessons-draft.ts';

const stand = (name: string, weekday: string, time: string, minutes: number): Stand => ({
  name,
  who: [name],
  weekday,
  time: time as PlainTime,
  minutes,
});
const places = (siblings: readonly string[], minutes: number, week: readonly Stand[]) =>
  findBeside(siblings, minutes, week).places.map(({ weekday, time, side, name }) =>
    [weekday, time, side, name].join(' '),
  );

// Siblings' lessons one after the other: common practice, no source. Worked by hand:
//   Tuesday   15:30-16:00 free | 16:00-16:30 Nell | 16:30-17:00 free | 17:00-17:45 Dag
//   a lesson of 30 minutes fits on both sides, one of 45 only before (15:15-16:00), for 16:30-17:15 runs into Dag.
const tuesday = [stand('Nell', '2', '16:00', 30), stand('Dag', '2', '17:00', 45)];

test('two siblings whose week leaves neighbouring times get them, after rather than before', () => {
  expect(places(['Nell'], 30, tuesday)).toEqual(['2 16:30 after Nell', '2 15:30 before Nell']);
  expect(places(['Nell'], 45, tuesday)).toEqual(['2 15:15 before Nell']);
});

test('where something stands on both sides there is no such time, and what only touches is no hindrance', () => {
  const full = [...tuesday, stand('Eva', '2', '16:30', 30), stand('Finn', '2', '15:00', 45)];
  expect(places(['Nell'], 30, full)).toEqual([]);
  // From 15:45 to 16:00 a quarter of an hour is left.
  expect(places(['Nell'], 15, full)).toEqual(['2 15:45 before Nell']);
  expect(findBeside(['Nell'], 30, full).stands.map(({ name }) => name)).toEqual(['Nell']);
});

test('a third sibling comes next to either; the place between two is named once', () => {
  const apart = [stand('Nell', '2', '16:00', 30), stand('Rory', '2', '17:00', 30)];
  expect(places(['Nell', 'Rory'], 30, apart)).toEqual([
    '2 16:30 after Nell',
    '2 17:30 after Rory',
    '2 15:30 before Nell',
  ]);
});

test('a day has an end, a length must be known, and nobody has a place beside a stranger', () => {
  expect(places(['Nell'], 30, [stand('Nell', '2', '00:15', 30)])).toEqual(['2 00:45 after Nell']);
  expect(places(['Nell'], 30, [stand('Nell', '2', '23:30', 30)])).toEqual(['2 23:00 before Nell']);
  expect(places(['Nell'], Number.NaN, tuesday)).toEqual([]);
  expect(places(['Ida'], 30, tuesday)).toEqual([]);
});

test('what is chosen is told as a place of these, or not', () => {
  const beside = findBeside(['Nell'], 30, tuesday);
  expect(placeAt(beside, { weekday: '2', time: '16:30' })?.side).toBe('after');
  expect(placeAt(beside, { weekday: '3', time: '16:30' })).toBeNull();
});
