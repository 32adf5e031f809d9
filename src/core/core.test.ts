import { expect, test } from 'vitest';
import {
  addDays,
  addMinutes,
  createId,
  createSeededRandom,
  daysBetween,
  isDate,
  isId,
  type PlainDate,
  type PlainTime,
} from '#core';

test('a date must exist and be written in full', () => {
  for (const good of '2024-02-29 1999-12-31 2026-11-25'.split(' ')) expect(isDate(good), good).toBe(true);
  for (const bad of '2026-02-29 2026-13-01 26-01-01 2026-1-1 20260101 2026-01-01T00:00'.split(' '))
    expect(isDate(bad), bad).toBe(false);
});

test('days add across month ends and leap days, and are counted back', () => {
  const from = '2024-02-28' as PlainDate;
  expect(addDays(from, 2)).toBe('2024-03-01');
  expect(daysBetween(from, addDays(from, 400))).toBe(400);
});

// Source: the days as temporal-polyfill counts them, which `addDays` stands on.
test('days are counted right from every day of three hundred years to the next', () => {
  const first = '1900-01-01' as PlainDate;
  let day = first;
  let wrong: PlainDate | null = null;
  for (let count = 0; day < '2200' && wrong === null; count++) {
    if (daysBetween(first, day) !== count || daysBetween(day, first) !== 0 - count) wrong = day;
    day = addDays(day, 1);
  }
  expect(wrong).toBeNull();
  expect(day).toBe('2200-01-01');
});

test('times wrap at midnight', () => {
  expect(addMinutes('23:50' as PlainTime, 25)).toBe('00:15');
});

test('ids carry their kind, and the same seed mints the same id', () => {
  const id = createId('student', createSeededRandom(7));
  expect(isId('student', id)).toBe(true);
  expect(isId('lesson', id)).toBe(false);
  expect(createId('student', createSeededRandom(7))).toBe(id);
});
