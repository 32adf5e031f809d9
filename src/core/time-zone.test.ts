import { expect, test } from 'vitest';
import { isTimeZone, secondsAt, wallAt } from './time-zone.ts';

// Source: IANA time zone database; offsets of Kathmandu (+05:45) and Lisbon (+01:00 in summer).
test('a wall-clock time and the instant it stands for', () => {
  expect(secondsAt('1970-01-01T05:30:00', 'Asia/Kolkata')).toBe(0);
  expect(wallAt(0, 'Asia/Tokyo')).toBe('1970-01-01T09:00:00');
  const noon = secondsAt('2026-07-01T12:00:00', 'UTC');
  expect(wallAt(noon, 'Asia/Kathmandu')).toBe('2026-07-01T17:45:00');
  expect(wallAt(noon, 'Europe/Lisbon')).toBe('2026-07-01T13:00:00');
});

test('a zone is one of the database, whole', () => {
  expect(['Europe/Lisbon', 'UTC', 'Lisbon', '', 'W. Europe Standard Time'].map(isTimeZone)).toEqual([
    true,
    true,
    false,
    false,
    false,
  ]);
});
