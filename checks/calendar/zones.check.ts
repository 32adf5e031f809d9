// Sources: RFC 5545, September 2009 (clauses and definitions of zones quoted from memory, the examples of 3.8.5.3 from data/);
// offsets of the IANA time zone database. See README.md.
import { describe, expect, test } from 'vitest';
import { addDays, type PlainDate, secondsAt, wallAt } from '#core';
import { readCalendar } from '#studio';
import { data } from './calendar-data.ts';

const day = (text: string) => text as PlainDate;
const event = (...lines: readonly string[]) => ['BEGIN:VEVENT', 'UID:a', 'SUMMARY:A', ...lines, 'END:VEVENT'];
const file = (...lines: readonly string[]) =>
  ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Levare//checks//EN', ...lines, 'END:VCALENDAR'].join('\r\n');

function read(text: string, timeZone: string, from = '1997-01-01', to = '2026-12-31') {
  const found = readCalendar(text, { from: day(from), to: day(to), timeZone });
  if (!found.ok) throw new Error(found.error.message);
  return found.value;
}
const daysOf = (text: string, timeZone: string) => {
  const { entries, faults } = read(text, timeZone);
  expect(faults).toEqual([]);
  return entries.map(({ starts, ends }) => (starts === ends ? starts : `${starts} to ${ends}`));
};

describe('RFC 5545, 3.8.5.3: the examples in New York, in a studio where it is the next day by then', () => {
  // Nine in the morning in New York, 13:00 or 14:00 in UTC, is past midnight in Auckland all year (UTC+12, UTC+13).
  test.each(data.icalendar.examples)('$name', ({ tzid, dtstart, rrule, exdate, expected_dates }) => {
    const text = file(
      ...event(
        `DTSTART;TZID=${tzid}:${dtstart}`,
        `RRULE:${rrule}`,
        ...(exdate === null ? [] : [`EXDATE;TZID=${tzid}:${exdate}`]),
      ),
    );
    const next = expected_dates.map((date) => addDays(day(date), 1));
    const { entries } = read(text, 'Pacific/Auckland', '1997-01-01', next.at(-1));
    expect(entries.map(({ starts }) => starts)).toEqual(next);
  });
});

describe('RFC 5545, 3.3.5: the three forms of a time', () => {
  // 14 July 1997, half past one in New York, is 17:30 in UTC: 23:30 in Dhaka, midnight in Yangon.
  test.each([
    ['form 1, local: as written wherever one is', 'DTSTART:19970714T133000', '1997-07-14', '1997-07-14'],
    ['form 2, UTC', 'DTSTART:19970714T173000Z', '1997-07-14', '1997-07-15'],
    ['form 3, with a zone', 'DTSTART;TZID=America/New_York:19970714T133000', '1997-07-14', '1997-07-15'],
  ])('%s', (_, start, inDhaka, inYangon) => {
    expect(daysOf(file(...event(start)), 'Asia/Dhaka')).toEqual([inDhaka]);
    expect(daysOf(file(...event(start)), 'Asia/Yangon')).toEqual([inYangon]);
  });

  test('a day is that day in every zone', () => {
    for (const zone of ['Pacific/Auckland', 'America/New_York', 'UTC'])
      expect(daysOf(file(...event('DTSTART;VALUE=DATE:19970714')), zone)).toEqual(['1997-07-14']);
  });

  test('a time that comes twice is the first, one that is skipped goes by the offset before the gap', () => {
    // DTSTART;TZID=America/New_York:20071104T013000 is 1:30 EDT; …:20070311T023000 is 3:30 EDT, 2:30 by the old offset.
    const inUtc = (wall: string) => wallAt(secondsAt(wall, 'America/New_York'), 'UTC');
    expect(inUtc('2007-11-04T01:30:00')).toBe('2007-11-04T05:30:00');
    expect(inUtc('2007-03-11T02:30:00')).toBe('2007-03-11T07:30:00');
  });

  test.each([
    ...data.icalendar.daylight_saving.rfc.map((row) => ({ zone: 'America/New_York', ...row })),
    ...data.icalendar.daylight_saving.more_computed,
  ])('$local in $zone is $utc', ({ zone = 'UTC', local, utc }) => {
    const seconds = secondsAt(utc.slice(0, 19), 'UTC');
    expect(secondsAt(local.slice(0, 19), zone)).toBe(seconds);
    expect(wallAt(seconds, zone)).toBe(local.slice(0, 19));
  });
});

describe('RFC 5545, 3.6.5: a zone is what the file says it is', () => {
  // The zone "Fictitious" of this section: two rules for daylight saving, the first until 1998.
  const fictitious = [
    'BEGIN:VTIMEZONE',
    'TZID:Fictitious',
    'BEGIN:STANDARD',
    'DTSTART:19671029T020000',
    'RRULE:FREQ=YEARLY;BYDAY=-1SU;BYMONTH=10',
    'TZOFFSETFROM:-0400',
    'TZOFFSETTO:-0500',
    'TZNAME:EST',
    'END:STANDARD',
    'BEGIN:DAYLIGHT',
    'DTSTART:19870405T020000',
    'RRULE:FREQ=YEARLY;BYDAY=1SU;BYMONTH=4;UNTIL=19980404T070000Z',
    'TZOFFSETFROM:-0500',
    'TZOFFSETTO:-0400',
    'TZNAME:EDT',
    'END:DAYLIGHT',
    'BEGIN:DAYLIGHT',
    'DTSTART:19990424T020000',
    'RRULE:FREQ=YEARLY;BYDAY=-1SU;BYMONTH=4',
    'TZOFFSETFROM:-0500',
    'TZOFFSETTO:-0400',
    'TZNAME:EDT',
    'END:DAYLIGHT',
    'END:VTIMEZONE',
  ];
  // Half past seven in the evening is half past midnight in UTC by EST, half past eleven by EDT.
  test.each([
    ['19980115T193000', '1998-01-16', 'winter'],
    ['19970715T193000', '1997-07-15', 'summer by the first rule'],
    ['19990410T193000', '1999-04-11', 'April before the second rule begins'],
    ['19990715T193000', '1999-07-15', 'summer by the second rule'],
  ])('%s is on %s in UTC: %s', (start, expected) => {
    expect(daysOf(file(...fictitious, ...event(`DTSTART;TZID=Fictitious:${start}`)), 'UTC')).toEqual([
      expected,
    ]);
  });

  test('the definition in the file goes before the IANA zone of the same name', () => {
    const here = fictitious.map((line) => line.replace('Fictitious', 'Asia/Tokyo'));
    const start = event('DTSTART;TZID=Asia/Tokyo:19980115T193000');
    expect(daysOf(file(...here, ...start), 'UTC')).toEqual(['1998-01-16']);
    expect(daysOf(file(...start), 'UTC')).toEqual(['1998-01-15']);
  });

  test('a zone that neither the file nor the database knows is told, and its times are taken as written', () => {
    const text = file(...event('DTSTART;TZID=Fictitious:19980115T193000'));
    const { entries, faults } = read(text, 'Pacific/Auckland');
    expect(entries.map(({ starts }) => starts)).toEqual(['1998-01-15']);
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatch(/“A”.*“Fictitious”.*as they are written/);
  });
});

describe('RFC 5545, 3.3.10 and 3.6.1', () => {
  test('an UNTIL in UTC counts in the zone of the start, the last instance included', () => {
    // 08:00 in Tokyo is 23:00 in UTC on the day before.
    const rule = 'RRULE:FREQ=DAILY;UNTIL=19970703T230000Z';
    const text = file(...event('DTSTART;TZID=Asia/Tokyo:19970702T080000', rule));
    expect(daysOf(text, 'Asia/Tokyo')).toEqual(['1997-07-02', '1997-07-03', '1997-07-04']);
  });

  test('an end in another zone is the instant it names', () => {
    // From 22:00 in London to 01:00 in Paris, which is midnight in London: one day, and two in Paris.
    const text = file(
      ...event('DTSTART;TZID=Europe/London:19971020T220000', 'DTEND;TZID=Europe/Paris:19971021T010000'),
    );
    expect(daysOf(text, 'Europe/London')).toEqual(['1997-10-20']);
    expect(daysOf(text, 'Europe/Paris')).toEqual(['1997-10-20 to 1997-10-21']);
  });

  test('3.8.4.4: an instance named in UTC is the one of that instant in the zone of the series', () => {
    const series = event('DTSTART;TZID=Asia/Tokyo:19970702T080000', 'RRULE:FREQ=DAILY;COUNT=3');
    const moved = event('RECURRENCE-ID:19970702T230000Z', 'DTSTART;TZID=Asia/Tokyo:19970709T080000');
    expect(daysOf(file(...series, ...moved), 'Asia/Tokyo')).toEqual([
      '1997-07-02',
      '1997-07-04',
      '1997-07-09',
    ]);
  });
});
