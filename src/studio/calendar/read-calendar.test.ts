import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { PlainDate } from '#core';
import { previewHolidays } from './preview-holidays.ts';
import { readCalendar } from './read-calendar.ts';

const window = { from: '2026-09-01' as PlainDate, to: '2027-08-31' as PlainDate, timeZone: 'Europe/Lisbon' };
const file = (...lines: readonly string[]) =>
  ['BEGIN:VCALENDAR', 'VERSION:2.0', 'BEGIN:VEVENT', 'UID:a', ...lines, 'END:VEVENT', 'END:VCALENDAR'].join(
    '\r\n',
  );
const read = (text: string) => readCalendar(text, window);

describe('[R-ICS-1] what is no calendar, or a broken one, is refused in words', () => {
  test.each([
    ['', 'does not begin with BEGIN:VCALENDAR'],
    ['<html><body>Sign in</body></html>', 'does not begin with BEGIN:VCALENDAR'],
    ['BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nSUMMARY:Half', 'broken'],
    ['BEGIN:VCALENDAR\r\nnonsense\r\nEND:VCALENDAR', 'broken'],
  ])('%j', (text, said) => {
    const result = read(text);
    expect(result.ok ? '' : result.error.message).toContain(said);
  });
});

describe('[R-ICS-2] an event at fault is left out and named; the others are taken', () => {
  test.each([
    ['no start', ['SUMMARY:Half-term'], 'no readable start'],
    ['a start that is no date', ['SUMMARY:Half-term', 'DTSTART;VALUE=DATE:20261399'], 'no readable start'],
    ['hourly', ['SUMMARY:X', 'DTSTART:20260901T090000', 'RRULE:FREQ=HOURLY'], 'more than once a day'],
    ['a rule that is none', ['SUMMARY:X', 'DTSTART;VALUE=DATE:20260901', 'RRULE:FREQ=NEVER'], ''],
  ])('%s', (_, lines, said) => {
    const result = read(file(...lines));
    if (!result.ok) return expect(said).toBe(''); // ical.js may refuse the whole file; that is said too
    expect(result.value.faults.join(' ')).toContain(said);
    return expect(result.value.entries.length).toBeLessThanOrEqual(1);
  });

  test('a cancelled event is no holiday', () => {
    const result = read(file('SUMMARY:Off', 'DTSTART;VALUE=DATE:20261026', 'STATUS:CANCELLED'));
    expect(result).toEqual({ ok: true, value: { entries: [], faults: [] } });
  });
});

describe('a name longer than a holiday may have is cut with a mark, in whole characters', () => {
  test.each([
    ['x'.repeat(120), 'x'.repeat(120)],
    ['x'.repeat(121), `${'x'.repeat(119)}…`],
    [`${'x'.repeat(118)}🎄🎄`, `${'x'.repeat(118)}…`],
  ])('%s', (name, read_) => {
    const result = read(file(`SUMMARY:${name}`, 'DTSTART;VALUE=DATE:20261026'));
    expect(result.ok && result.value.entries[0]?.name).toBe(read_);
  });
});

test('a file without events in the days looked at is told with the days', () => {
  const asked = { ...window, text: file('SUMMARY:Long ago', 'DTSTART;VALUE=DATE:19960918') };
  expect(previewHolidays(asked, [])).toEqual({
    holidays: [],
    faults: ['The file has no events from 1 September 2026 to 31 August 2027.'],
  });
});

describe('[R-ICS-3] no rule keeps the reader busy for ever', () => {
  test.each([
    'FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30',
    'FREQ=YEARLY;BYMONTH=2;BYMONTHDAY=31',
    'FREQ=YEARLY;BYMONTH=4;BYDAY=1MO;BYMONTHDAY=15,16,17,18,19,20,21',
    'FREQ=MONTHLY;BYMONTHDAY=31;BYMONTH=4',
    'FREQ=DAILY;INTERVAL=999999999',
    'FREQ=WEEKLY;INTERVAL=1000;BYMONTH=2;BYMONTHDAY=30',
    'FREQ=DAILY;COUNT=999999999',
    'FREQ=SECONDLY',
    'FREQ=YEARLY;BYYEARDAY=366;BYMONTH=1',
    'FREQ=YEARLY;BYWEEKNO=53;BYMONTH=6;BYDAY=MO',
    'FREQ=MONTHLY;BYSETPOS=200;BYDAY=MO',
    'FREQ=DAILY;UNTIL=99991231',
    'FREQ=YEARLY;INTERVAL=1000;BYMONTHDAY=29;BYMONTH=2',
  ])('%s', (rule) => {
    const result = read(file('SUMMARY:X', 'DTSTART;VALUE=DATE:19010101', `RRULE:${rule}`));
    if (result.ok) expect(result.value.entries.length).toBeLessThanOrEqual(366);
  });

  test('a file full of endless rules shares one budget', () => {
    const events = Array.from({ length: 300 }, (_, i) =>
      [
        'BEGIN:VEVENT',
        `UID:${i}`,
        'DTSTART;VALUE=DATE:19010101',
        'RRULE:FREQ=DAILY;BYMONTH=2;BYMONTHDAY=30',
        'END:VEVENT',
      ].join('\r\n'),
    );
    const result = read(['BEGIN:VCALENDAR', ...events, 'END:VCALENDAR'].join('\r\n'));
    expect(result.ok && result.value.entries).toEqual([]);
    expect(result.ok && result.value.faults.length).toBe(50);
  });

  test('any rule, any start: an answer, never a crash', () => {
    const list = (low: number, high: number) =>
      fc.array(fc.integer({ min: low, max: high }), { minLength: 1, maxLength: 4 }).map((a) => a.join(','));
    const part = fc.oneof(
      list(-40, 40).map((v) => `BYMONTHDAY=${v}`),
      list(0, 13).map((v) => `BYMONTH=${v}`),
      list(-400, 400).map((v) => `BYYEARDAY=${v}`),
      list(-60, 60).map((v) => `BYWEEKNO=${v}`),
      list(-9, 9).map((v) => `BYSETPOS=${v}`),
      fc.constantFrom('MO', '1MO', '-1SU', 'TU,TH', '53FR', '-6WE,SA', 'XX').map((v) => `BYDAY=${v}`),
      fc.constantFrom(
        'WKST=SU',
        'COUNT=5',
        'COUNT=-1',
        'COUNT=1e9',
        'UNTIL=20270101',
        'UNTIL=x',
        'INTERVAL=0',
        'INTERVAL=7',
        'BYHOUR=25',
        'BYHOUR=1,2,3',
        'BYSECOND=70',
      ),
    );
    fc.assert(
      fc.property(
        fc.constantFrom('DAILY', 'WEEKLY', 'MONTHLY', 'YEARLY', 'HOURLY'),
        fc.array(part, { maxLength: 5 }),
        fc.constantFrom('19960229', '20260901', '19000101', '20261231', '20260931'),
        (frequency, parts, start) => {
          const rule = [`FREQ=${frequency}`, ...parts].join(';');
          const result = read(file('SUMMARY:X', `DTSTART;VALUE=DATE:${start}`, `RRULE:${rule}`));
          if (!result.ok) return;
          for (const { starts, ends } of result.value.entries)
            expect(starts <= ends && starts <= window.to && ends >= window.from, rule).toBe(true);
        },
      ),
      { numRuns: 150, seed: 5545 },
    );
  });

  test.each(['SECONDLY', 'MINUTELY', 'HOURLY', 'DAILY'])(
    'a zone that changes its time %s holds nothing up',
    (freq) => {
      const zone = `BEGIN:VTIMEZONE\r\nTZID:Odd\r\nBEGIN:STANDARD\r\nDTSTART:19700101T000000\r\nRRULE:FREQ=${freq}\r\nTZOFFSETFROM:+0100\r\nTZOFFSETTO:+0200\r\nEND:STANDARD\r\nEND:VTIMEZONE`;
      const event = 'BEGIN:VEVENT\r\nUID:a\r\nDTSTART;TZID=Odd:20260901T000000\r\nRRULE:FREQ=DAILY;COUNT=2';
      const moved =
        'BEGIN:VEVENT\r\nUID:a\r\nRECURRENCE-ID:20260901T230000Z\r\nDTSTART;TZID=Odd:20260905T000000';
      const text = ['BEGIN:VCALENDAR', zone, event, 'END:VEVENT', moved, 'END:VEVENT', 'END:VCALENDAR'];
      expect(read(text.join('\r\n')).ok).toBe(true);
    },
  );

  test('any bytes: an answer, never a crash', () => {
    const line = fc.constantFrom(
      'BEGIN:VEVENT',
      'END:VEVENT',
      'BEGIN:VTIMEZONE',
      'END:VTIMEZONE',
      'DTSTART:20260901T090000Z',
      'DTEND:2026',
      'EXDATE:,,,',
      'RDATE;VALUE=PERIOD:20260901T090000Z/PT1H',
      'DURATION:PXX',
      'SUMMARY:\\n\\,;:',
      'TZID:',
      'RECURRENCE-ID:20260901',
      ';;;:::',
      ' folded',
      'X-A;B="c:d":e',
    );
    fc.assert(
      fc.property(fc.array(fc.oneof(line, fc.string()), { maxLength: 14 }), (lines) => {
        read(['BEGIN:VCALENDAR', ...lines, 'END:VCALENDAR'].join('\r\n'));
      }),
      { numRuns: 500, seed: 2445 },
    );
  });
});

describe('[R-ICS-5] times in another zone than the studio’s', () => {
  const daysIn = (timeZone: string, ...lines: readonly string[]) => {
    const result = readCalendar(file(...lines), { ...window, timeZone });
    return result.ok ? result.value.entries.map(({ starts, ends }) => [starts, ends]) : result.error.message;
  };
  const lateInNewYork = ['DTSTART;TZID=America/New_York:20261031T200000', 'DURATION:PT1H'];

  test('fall on the studio’s day; an instance keeps its source', () => {
    expect(daysIn('Asia/Tokyo', ...lateInNewYork)).toEqual([['2026-11-01', '2026-11-01']]);
    expect(daysIn('America/New_York', ...lateInNewYork)).toEqual([['2026-10-31', '2026-10-31']]);
    const again = readCalendar(file(...lateInNewYork, 'RRULE:FREQ=DAILY;COUNT=1'), {
      ...window,
      timeZone: 'Asia/Tokyo',
    });
    expect(again.ok && again.value.entries[0]?.source).toBe('a#2026-10-31');
  });

  test('a zone behind its maker’s prefix is that zone', () => {
    const zone = '/example.org/2026/Europe/London';
    expect(
      daysIn('Europe/London', `DTSTART;TZID=${zone}:20261026T000000`, `DTEND;TZID=${zone}:20261027T000000`),
    ).toEqual([['2026-10-26', '2026-10-26']]);
  });

  test('zones nobody knows are told once each, with the events', () => {
    const event = (uid: string, zone: string) =>
      `BEGIN:VEVENT\r\nUID:${uid}\r\nSUMMARY:Day ${uid}\r\nDTSTART;TZID=${zone}:20261026T090000\r\nEND:VEVENT`;
    const events = [event('1', 'Harbour time'), event('2', 'Harbour time'), event('3', 'Europe/Paris')];
    const text = ['BEGIN:VCALENDAR', 'VERSION:2.0', ...events, 'END:VCALENDAR'].join('\r\n');
    const result = read(text);
    expect(result.ok && result.value.entries).toHaveLength(3);
    expect(result.ok && result.value.faults).toEqual([
      '“Day 1” and 1 other: the file does not say what its time zone “Harbour time” is, and it is none we know. Times are taken as they are written; look whether the days are right.',
    ]);
  });

  test('any time, zone and duration: an answer, never a crash', () => {
    const zones = fc.constantFrom(
      'Europe/Lisbon',
      'Asia/Tokyo',
      'America/New_York',
      'Nowhere',
      'UTC',
      '/x',
      '',
    );
    const time = fc.constantFrom(
      '20261025T013000',
      '20260329T010000',
      '20261026T250000',
      '20261026T246199',
      '20269926T000000',
      '00010101T000000',
      '99991231T235959',
    );
    fc.assert(
      fc.property(
        zones,
        time,
        zones,
        time,
        fc.constantFrom('PT1H', 'P9999999D', '-P9999999D', 'PT999999999999S'),
        fc.boolean(),
        (zone, start, endZone, end, duration, hasEnd) => {
          const until = hasEnd ? `DTEND;TZID=${endZone}:${end}` : `DURATION:${duration}`;
          for (const timeZone of ['Asia/Tokyo', 'America/New_York'])
            expect(Array.isArray(daysIn(timeZone, `DTSTART;TZID=${zone}:${start}`, until))).toBe(true);
        },
      ),
      { numRuns: 300, seed: 5545 },
    );
  });
});

describe('[R-ICS-4] the preview marks what was imported before, and says what does not fit', () => {
  const text = file('SUMMARY:Half-term', 'DTSTART;VALUE=DATE:20261026', 'DTEND;VALUE=DATE:20261031');
  const request = { text, from: '2026-09-01', to: '2027-08-31', timeZone: 'UTC' };

  test('known by its source', () => {
    expect(previewHolidays(request, [{ source: 'a' }]).holidays).toEqual([
      { name: 'Half-term', starts: '2026-10-26', ends: '2026-10-30', source: 'a', known: true },
    ]);
  });

  test('a holiday of years is left out', () => {
    const long = file('SUMMARY:Sabbatical', 'DTSTART;VALUE=DATE:20260101', 'DTEND;VALUE=DATE:20280101');
    const preview = previewHolidays({ ...request, text: long }, []);
    expect(preview.holidays).toEqual([]);
    expect(preview.faults[0]).toContain('730 days');
  });

  test.each([
    [{ from: 'x' }, 'YYYY-MM-DD'],
    [{ from: '2027-09-01' }, 'before the first'],
    [{ to: '2199-01-01' }, 'at most'],
  ])('%j', (change, said) => {
    expect(previewHolidays({ ...request, ...change }, []).faults[0]).toContain(said);
  });
});
