// Source: RFC 5545, September 2009; see README.md.
import { describe, expect, test } from 'vitest';
import { addDays, isoWeekOf, type PlainDate, weekdayOf } from '#core';
import { readCalendar } from '#studio';
import { data } from './calendar-data.ts';

const day = (text: string) => text as PlainDate;

const file = (...events: readonly string[]) =>
  ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Levare//checks//EN', ...events, 'END:VCALENDAR'].join('\r\n');
const event = (...lines: readonly string[]) => ['BEGIN:VEVENT', ...lines, 'END:VEVENT'].join('\r\n');

function startsOf(text: string, from: string, to: string, timeZone = 'UTC'): readonly string[] {
  const read = readCalendar(text, { from: day(from), to: day(to), timeZone });
  if (!read.ok) throw new Error(read.error.message);
  expect(read.value.faults).toEqual([]);
  return read.value.entries.map((e) => e.starts);
}

describe('RFC 5545, 3.8.5.3: recurrence rule examples', () => {
  test('all sixteen examples are here', () => expect(data.icalendar.examples).toHaveLength(16));

  test.each(data.icalendar.examples)(
    '$name',
    ({ tzid, dtstart, rrule, exdate, expected_dates, complete }) => {
      const text = file(
        event(
          'UID:example',
          'SUMMARY:Example',
          `DTSTART;TZID=${tzid}:${dtstart}`,
          `RRULE:${rrule}`,
          ...(exdate === null ? [] : [`EXDATE;TZID=${tzid}:${exdate}`]),
        ),
      );
      const last = expected_dates.at(-1) ?? '';
      // A complete list is looked at far beyond its end, so that one date too many shows.
      const to = complete ? addDays(day(last), 800) : last;
      expect(startsOf(text, '1997-01-01', to)).toEqual(expected_dates);
    },
  );
});

describe('RFC 5545: clauses', () => {
  test('3.6.1: the end of an all-day event is exclusive; without an end it takes one day', () => {
    const read = readCalendar(
      file(
        event('UID:a', 'SUMMARY:Half-term', 'DTSTART;VALUE=DATE:20261026', 'DTEND;VALUE=DATE:20261031'),
        event('UID:b', 'SUMMARY:Founders day', 'DTSTART;VALUE=DATE:20261109'),
        event('UID:c', 'SUMMARY:Trip', 'DTSTART;VALUE=DATE:20261116', 'DURATION:P2D'),
      ),
      { from: day('2026-09-01'), to: day('2026-12-31'), timeZone: 'Europe/London' },
    );
    expect(read.ok && read.value.entries.map(({ starts, ends }) => [starts, ends])).toEqual([
      ['2026-10-26', '2026-10-30'],
      ['2026-11-09', '2026-11-09'],
      ['2026-11-16', '2026-11-17'],
    ]);
  });

  test('3.1: folded lines are joined without the fold', () => {
    const read = readCalendar(
      file(event('UID:a', 'SUMMARY:Half-te\r\n rm of the aut\r\n\tumn', 'DTSTART;VALUE=DATE:20261026')),
      { from: day('2026-09-01'), to: day('2026-12-31'), timeZone: 'UTC' },
    );
    expect(read.ok && read.value.entries[0]?.name).toBe('Half-term of the autumn');
  });

  test('3.8.4.4: a changed instance takes the place of the one its RECURRENCE-ID names', () => {
    const text = file(
      event('UID:a', 'SUMMARY:Day off', 'DTSTART;VALUE=DATE:20260907', 'RRULE:FREQ=WEEKLY;COUNT=4'),
      event('UID:a', 'SUMMARY:Day off', 'RECURRENCE-ID;VALUE=DATE:20260914', 'DTSTART;VALUE=DATE:20260916'),
      event(
        'UID:a',
        'SUMMARY:Day off',
        'RECURRENCE-ID;VALUE=DATE:20260921',
        'DTSTART;VALUE=DATE:20260921',
        'STATUS:CANCELLED',
      ),
    );
    expect(startsOf(text, '2026-09-01', '2026-12-31')).toEqual(['2026-09-07', '2026-09-16', '2026-09-28']);
  });

  test('3.8.5.1: EXDATE may list several dates', () => {
    const text = file(
      event(
        'UID:a',
        'SUMMARY:Off',
        'DTSTART;VALUE=DATE:20260907',
        'RRULE:FREQ=DAILY;COUNT=5',
        'EXDATE;VALUE=DATE:20260908,20260910',
      ),
    );
    expect(startsOf(text, '2026-09-01', '2026-12-31')).toEqual(['2026-09-07', '2026-09-09', '2026-09-11']);
  });
});

describe('daylight saving', () => {
  const stamp = (iso: string) => iso.slice(0, 19).replace(/[-:]/g, '');
  const rows = [
    ...data.icalendar.daylight_saving.rfc.map((row) => ({ zone: 'America/New_York', ...row })),
    ...data.icalendar.daylight_saving.more_computed,
  ];
  test.each(rows)('$utc is $local in $zone', ({ zone, local, utc }) => {
    // The end of an event shows the wall clock: exclusive at local midnight, so a day more or less tells the offset.
    const untilMidnight = 24 * 60 - (Number(local.slice(11, 13)) * 60 + Number(local.slice(14, 16)));
    const last = (minutes: number) => {
      const read = readCalendar(
        file(event('UID:a', 'SUMMARY:Lesson', `DTSTART:${stamp(utc)}Z`, `DURATION:PT${minutes}M`)),
        { from: day('1997-01-01'), to: day('2026-12-31'), timeZone: zone },
      );
      return read.ok ? read.value.entries.map((e) => e.ends) : read.error;
    };
    const date = day(local.slice(0, 10));
    expect(last(untilMidnight)).toEqual([date]);
    expect(last(untilMidnight + 1)).toEqual([addDays(date, 1)]);
  });
});

describe('ISO 8601 weeks', () => {
  test.each(Object.entries(data.iso_8601_weeks.rows))('%s is %s', (date, expected) => {
    const { year, week } = isoWeekOf(day(date));
    expect(`${year}-W${String(week).padStart(2, '0')}-${weekdayOf(day(date))}`).toBe(expected);
  });
});
