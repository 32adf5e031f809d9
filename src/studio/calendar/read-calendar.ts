// Reads an iCalendar file (RFC 5545) as stretches of days, with ical.js. The file may come from
// anywhere, so every loop has an end: rules that repeat more than daily are left out, and steps are counted, because a
// rule can be written that never matches (30 February each day).

import ICAL from 'ical.js';
import { addDays, daysBetween, err, isDate, ok, type PlainDate, type Result } from '#core';
import { formatCount } from '../sentence/amounts.ts';
import {
  dropWildZones,
  findUnknownZone,
  inZoneOf,
  isInstant,
  toFloating,
  toZone,
  wallDay,
  wallIn,
} from './calendar-zone.ts';

export interface CalendarEntry {
  readonly name: string;
  readonly starts: PlainDate;
  /** Last day, included. */
  readonly ends: PlainDate;
  /** UID of the event; for a repeating one with its day, `uid#2026-10-26`. */
  readonly source: string;
}

export interface ReadCalendar {
  readonly entries: readonly CalendarEntry[];
  /** Sentences about events that could not be taken. */
  readonly faults: readonly string[];
}

export type CalendarUnreadable = { readonly kind: 'CalendarUnreadable'; readonly message: string };

export interface CalendarWindow {
  readonly from: PlainDate;
  readonly to: PlainDate;
  /** IANA zone of the studio: instants fall on this zone's days. */
  readonly timeZone: string;
}

const mostEvents = 20_000;
/** Steps of all repetitions in one file together, about a second's work; daily for a century takes 36,525. */
const mostSteps = 60_000;
/** Times within a day are of no use here, and would be millions. */
const tooOften = new Set(['SECONDLY', 'MINUTELY', 'HOURLY']);
const longestInterval = 1000;

/** The events of a calendar file that touch the window, in date order. */
export function readCalendar(text: string, window: CalendarWindow): Result<ReadCalendar, CalendarUnreadable> {
  const parsed = parseFile(text);
  if (!parsed.ok) return parsed;
  const faults: string[] = [];
  const unknownZones: UnknownZones = new Map();
  const events = parsed.value;
  if (events.length > mostEvents)
    return unreadable(
      `The file holds ${events.length} events; at most ${mostEvents} are read. Export a shorter stretch.`,
    );
  const budget = { left: mostSteps };
  const entries: CalendarEntry[] = [];
  for (const series of groupByUid(events))
    entries.push(...expandSeries(series, window, budget, faults, unknownZones));
  entries.sort((a, b) => (a.starts < b.starts ? -1 : a.starts > b.starts ? 1 : a.name < b.name ? -1 : 1));
  return ok({ entries, faults: [...sayUnknownZones(unknownZones), ...faults].slice(0, 50) });
}

/** The names of the events taken that are given in a zone nobody knows, by that zone. */
type UnknownZones = Map<string, Set<string>>;

const sayUnknownZones = (zones: UnknownZones): readonly string[] =>
  [...zones].map(([zone, names]) => {
    const [first = '', ...others] = names;
    const more = others.length === 0 ? '' : ` and ${formatCount(others.length, 'other')}`;
    return `“${first}”${more}: the file does not say what its time zone “${zone}” is, and it is none we know. Times are taken as they are written; look whether the days are right.`;
  });

type Component = InstanceType<typeof ICAL.Component>;
type Time = InstanceType<typeof ICAL.Time>;
type Recur = InstanceType<typeof ICAL.Recur>;
type Property = InstanceType<typeof ICAL.Property>;

function parseFile(text: string): Result<readonly Component[], CalendarUnreadable> {
  const bare = text.replace(/^\uFEFF/, '').trimStart();
  if (!/^BEGIN:VCALENDAR/i.test(bare))
    return unreadable(
      'This is not a calendar file: it does not begin with BEGIN:VCALENDAR. Choose the .ics file that your calendar exports.',
    );
  try {
    const jcal: unknown = ICAL.parse(bare);
    // A file may hold several calendars one after the other.
    const roots: readonly unknown[] = Array.isArray(jcal) && Array.isArray(jcal[0]) ? jcal : [jcal];
    return ok(
      roots.flatMap((root) => {
        const calendar = new ICAL.Component(root as unknown[]);
        dropWildZones(calendar);
        return calendar.getAllSubcomponents('vevent');
      }),
    );
  } catch (error) {
    return unreadable(
      `The calendar file is broken (${messageOf(error)}). Export it again; if you edited it by hand, undo that.`,
    );
  }
}

interface Series {
  readonly uid: string;
  /** The event itself; null where the file holds only changed instances. */
  readonly main: Component | null;
  readonly changed: readonly Component[];
}

function groupByUid(events: readonly Component[]): readonly Series[] {
  const series = new Map<string, { uid: string; main: Component | null; changed: Component[] }>();
  events.forEach((event, at) => {
    const uid = textOf(event, 'uid') || `event ${at + 1}`;
    const changes = event.hasProperty('recurrence-id');
    const known = series.get(uid);
    // Two events of one UID that are no instances of a series are kept apart.
    const key = known === undefined || changes || known.main === null ? uid : `${uid} ${at}`;
    const own = series.get(key) ?? { uid, main: null, changed: [] };
    series.set(key, own);
    if (changes) own.changed.push(event);
    else own.main = event;
  });
  return [...series.values()];
}

interface Budget {
  left: number;
}

function expandSeries(
  { uid, main, changed }: Series,
  window: CalendarWindow,
  budget: Budget,
  faults: string[],
  unknownZones: UnknownZones,
): readonly CalendarEntry[] {
  const entries: CalendarEntry[] = [];
  const take = (event: Component, start: Time | null, source: string) => {
    const read = readEntry(event, start, source, window);
    if (typeof read === 'string') faults.push(read);
    else if (read !== null && read.starts <= window.to && read.ends >= window.from) {
      entries.push(read);
      const zone = zoneUnknownOf(event);
      if (zone !== null) unknownZones.set(zone, (unknownZones.get(zone) ?? new Set()).add(read.name));
    }
  };
  const begins = main === null ? null : timeOf(main, 'dtstart');
  const replaced = new Set(
    changed.flatMap((event) => {
      const id = timeOf(event, 'recurrence-id');
      return id === null ? [] : [momentOf(id, begins)];
    }),
  );
  if (main !== null) {
    const name = nameOf(main);
    if (begins === null) faults.push(`“${name}” has no readable start (DTSTART), so it was left out.`);
    else
      try {
        const starts = listStarts(main, begins, window, budget);
        const repeats = isRepeating(main) || changed.length > 0;
        for (const start of starts)
          if (!replaced.has(momentOf(start, begins)))
            take(main, start, repeats ? `${uid}#${wallDay(start)}` : uid);
      } catch (error) {
        faults.push(
          error instanceof TooManySteps
            ? `“${name}” repeats by a rule that does not come to an end, so it was left out. Add its days by hand.`
            : `“${name}” repeats by a rule that cannot be read (${messageOf(error)}), so it was left out. Add its days by hand.`,
        );
      }
  }
  for (const event of changed) {
    const id = timeOf(event, 'recurrence-id');
    take(event, null, id === null ? uid : `${uid}#${wallDay(id)}`);
  }
  return entries;
}

/** One entry from an event, or from one start of a repeating one; null when it was cancelled, a sentence when at fault. */
function readEntry(
  event: Component,
  at: Time | null,
  source: string,
  window: CalendarWindow,
): CalendarEntry | string | null {
  if (textOf(event, 'status').toUpperCase() === 'CANCELLED') return null;
  const name = nameOf(event);
  const begins = timeOf(event, 'dtstart');
  const start = at ?? begins;
  if (begins === null || start === null)
    return `“${name}” has no readable start (DTSTART), so it was left out.`;
  const end = endOf(event, begins, start);
  const starts = dayIn(start, window.timeZone);
  // The end is exclusive (RFC 5545, 3.6.1), for days and for midnight alike.
  const exclusive = dayIn(end, window.timeZone);
  const last = start.isDate || isMidnight(end, window.timeZone) ? previousDay(exclusive) : exclusive;
  if (starts === null || last === null)
    return `“${name}” lies outside the years 1900 to 2199, so it was left out.`;
  return { name, starts, ends: latest(starts, last), source: source.slice(0, 300) };
}

function endOf(event: Component, begins: Time, start: Time): Time {
  const end = timeOf(event, 'dtend');
  const duration: unknown = event.getFirstPropertyValue('duration');
  const moved = start.clone();
  if (end !== null && isInstant(begins) && isInstant(end) && end.zone !== begins.zone)
    moved.adjust(0, 0, 0, end.toUnixTime() - begins.toUnixTime());
  else if (end !== null) {
    // In wall time: an event from nine to ten is that on both sides of a change of clocks.
    const days = daysBetweenTimes(begins, end);
    moved.adjust(days, end.hour - begins.hour, end.minute - begins.minute, end.second - begins.second);
  } else if (duration instanceof ICAL.Duration) moved.addDuration(duration);
  else if (start.isDate) moved.adjust(1, 0, 0, 0);
  return moved;
}

/** All starts up to the window's end: the first, those of the rules and the dates added, less the dates taken out. */
function listStarts(event: Component, begins: Time, window: CalendarWindow, budget: Budget): readonly Time[] {
  const out = new Set(timesOf(event, 'exdate').map((t) => momentOf(t, begins)));
  const outDays = new Set(
    timesOf(event, 'exdate')
      .filter((t) => t.isDate)
      .map(wallDay),
  );
  const starts = new Map<string, Time>();
  const add = (time: Time) => {
    const moment = momentOf(time, begins);
    if (!out.has(moment) && !outDays.has(wallDay(time)) && !starts.has(moment)) starts.set(moment, time);
  };
  add(begins);
  for (const property of event.getAllProperties('rrule')) {
    const rule: unknown = property.getFirstValue();
    if (rule instanceof ICAL.Recur) for (const time of expandRule(rule, begins, window, budget)) add(time);
  }
  for (const time of timesOf(event, 'rdate')) add(time);
  return [...starts.values()];
}

class TooManySteps extends Error {}

const budgets = new WeakMap<object, Budget>();

function countStep(rule: object): void {
  const budget = budgets.get(rule);
  if (budget !== undefined && budget.left-- <= 0) throw new TooManySteps('too many steps');
}

/** ical.js's iterator, counting its steps: its own loops call one of these methods each time round. */
class CountedIterator extends ICAL.RecurIterator {
  override check_contracting_rules(): boolean {
    countStep(this.rule);
    return super.check_contracting_rules();
  }
  override increment_month(): void {
    countStep(this.rule);
    super.increment_month();
  }
  override increment_year(inc: number): void {
    countStep(this.rule);
    super.increment_year(inc);
  }
}

function expandRule(given: Recur, begins: Time, window: CalendarWindow, budget: Budget): readonly Time[] {
  if (tooOften.has(given.freq)) throw new Error('it repeats more than once a day');
  if (given.interval > longestInterval) throw new Error(`its interval is more than ${longestInterval}`);
  const rule = given.clone();
  if (rule.until) rule.until = toFloating(inZoneOf(rule.until, begins.zone));
  // Beyond the window nothing is of use; two days of grace for time zones.
  const last = ICAL.Time.fromDateString(addDays(window.to, 2));
  if (rule.until === null || rule.until === undefined || rule.until.compare(last) > 0) rule.until = last;
  budgets.set(rule, budget);
  const iterator = new CountedIterator({ rule, dtstart: toFloating(begins) });
  // An occurrence that began before the window may reach into it, but not from two years away.
  const firstYear = Number(window.from.slice(0, 4)) - 2;
  const times: Time[] = [];
  for (let time: Time | null = iterator.next(); time !== null && time !== undefined; time = iterator.next()) {
    if (time.year < firstYear) continue;
    const there = time.clone();
    if (!there.isDate) there.zone = begins.zone;
    times.push(there);
  }
  return times;
}

const isRepeating = (event: Component) => event.hasProperty('rrule') || event.hasProperty('rdate');

/** What names one instance: its wall time in the zone of the series. */
const momentOf = (time: Time, series: Time | null): string =>
  (series === null ? time : inZoneOf(time, series.zone)).toString().replace(/Z$/, '');

function timeOf(event: Component, property: string): Time | null {
  const value: unknown = readValue(() => event.getFirstPropertyValue(property));
  const first = event.getFirstProperty(property);
  return value instanceof ICAL.Time && first !== null && isWritten(first, 0) ? toZone(first, value) : null;
}

function timesOf(event: Component, property: string): readonly Time[] {
  return event.getAllProperties(property).flatMap((p) => {
    const values: unknown = readValue(() => p.getValues());
    return (Array.isArray(values) ? values : []).flatMap((value: unknown, at) =>
      value instanceof ICAL.Time && isWritten(p, at)
        ? [toZone(p, value)]
        : value instanceof ICAL.Period && isDate(wallDay(value.start))
          ? [toZone(p, value.start)]
          : [],
    );
  });
}

/** Whether the day stands in the file as a day that exists: ical.js turns 31 September into 1 October. */
function isWritten(property: Property, at: number): boolean {
  const written: unknown = property.toJSON()[3 + at]; // jCal, RFC 7265: name, parameters, type, values
  return typeof written === 'string' && isDate(written.slice(0, 10));
}

/** ical.js throws on values it cannot read; they count as none. */
function readValue(read: () => unknown): unknown {
  try {
    return read();
  } catch {
    return null;
  }
}

function zoneUnknownOf(event: Component): string | null {
  for (const name of ['dtstart', 'dtend']) {
    const time = timeOf(event, name);
    const zone = time === null ? null : findUnknownZone(event.getFirstProperty(name), time);
    if (zone !== null) return zone.slice(0, 80);
  }
  return null;
}

const textOf = (event: Component, property: string): string => {
  const value: unknown = readValue(() => event.getFirstPropertyValue(property));
  return typeof value === 'string' ? value.trim() : '';
};

const mostNameLength = 120;

function nameOf(event: Component): string {
  const name = textOf(event, 'summary').replace(/\s+/g, ' ');
  if (name.length <= mostNameLength) return name === '' ? 'Holiday' : name;
  // Half of a character outside the basic plane goes too.
  const start = name.slice(0, mostNameLength - 1).replace(/[\uD800-\uDBFF]$/, '');
  return `${start.trim()}…`;
}

const latest = (a: PlainDate, b: PlainDate): PlainDate => (a > b ? a : b);

/** The day on which a time falls in the studio's zone; a day, or a time without a zone, as written. */
function dayIn(time: Time, timeZone: string): PlainDate | null {
  const day = wallIn(time, timeZone).slice(0, 10);
  return isDate(day) ? day : null;
}

const isMidnight = (time: Time, timeZone: string): boolean =>
  wallIn(time, timeZone).slice(11, 16) === '00:00';

const previousDay = (day: PlainDate | null): PlainDate | null =>
  day === null || day <= '1900-01-01' ? null : addDays(day, -1);

function daysBetweenTimes(a: Time, b: Time): number {
  const [from, to] = [wallDay(a), wallDay(b)];
  return isDate(from) && isDate(to) ? daysBetween(from, to) : 0;
}

const messageOf = (error: unknown): string =>
  (error instanceof Error ? error.message : 'unreadable').replace(/\s+/g, ' ').slice(0, 160);

const unreadable = (message: string) => err({ kind: 'CalendarUnreadable', message } as const);
