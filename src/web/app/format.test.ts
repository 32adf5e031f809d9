import { expect, test, vi } from 'vitest';
import type { PlainDate, PlainTime, Weekday } from '#core';
import {
  formatDay,
  formatDays,
  formatMinutes,
  formatMoment,
  formatShare,
  formatStretch,
  formatTime,
  formatWeekday,
} from './format.ts';

const date = (text: string) => text as PlainDate;
const time = (text: string) => text as PlainTime;

// Expected texts follow Unicode CLDR's patterns for en-GB, en-US and de-DE, typed from memory.
test('days by locale, whatever the zone of the browser', () => {
  for (const tz of ['Pacific/Auckland', 'America/Los_Angeles', 'UTC']) {
    vi.stubEnv('TZ', tz);
    expect(formatDay(date('2026-11-25'), 'en-GB', 'long')).toBe('25 November 2026');
    expect(formatDay(date('2026-11-25'), 'en-GB', 'weekday')).toBe('Wednesday');
  }
  vi.unstubAllEnvs();
  expect(formatDay(date('2026-11-25'), 'en-US', 'long')).toBe('November 25, 2026');
  expect(formatDay(date('2026-11-25'), 'de-DE', 'long')).toBe('25. November 2026');
});

test('a stretch of days says once what both share', () => {
  expect(formatDays(date('2026-12-19'), date('2026-12-19'), 'en-GB')).toBe('19 December 2026');
  expect(formatDays(date('2026-10-26'), date('2026-10-30'), 'en-GB')).toMatch(/^26\s?–\s?30 October 2026$/);
});

test('times by locale', () => {
  expect(formatTime(time('16:30'), 'en-GB')).toBe('16:30');
  expect(formatTime(time('16:30'), 'en-US')).toMatch(/^4:30\sPM$/);
});

test('weekdays count from Monday (ISO 8601)', () => {
  const names = ([1, 2, 3, 4, 5, 6, 7] as Weekday[]).map((d) => formatWeekday(d, 'en-GB', 'short'));
  expect(names).toEqual(['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun']);
});

test('a longer stretch in hours', () => {
  const said = [45, 119, 120, 375].map((minutes) => formatStretch(minutes, 'en-GB'));
  expect(said).toEqual(['45 min', '119 min', '2 hr', '6 hr 15 min']);
});

test('minutes, shares, moments', () => {
  expect(formatMinutes(45, 'en-GB')).toBe('45 min');
  expect(formatShare(0.784, 'en-GB')).toBe('78%');
  expect(formatMoment('2026-07-01T09:30:00Z', 'en-GB', 'Europe/Lisbon')).toBe('1 Jul, 10:30');
});
