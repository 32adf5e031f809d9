// The zone in which a time of a calendar file stands (RFC 5545, 3.2.19): the file's own definition of it, else the IANA zone
// of that name. A time without a zone floats: it is that wall-clock time wherever one is (3.3.5).

import ICAL from 'ical.js';
import { isTimeZone, secondsAt, wallAt } from '#core';

type Component = InstanceType<typeof ICAL.Component>;
type Time = InstanceType<typeof ICAL.Time>;
type Property = InstanceType<typeof ICAL.Property>;
type Zone = InstanceType<typeof ICAL.Timezone>;

const floating = ICAL.Timezone.localTimezone;

const two = (n: number) => String(n).padStart(2, '0');
/** The day of the wall-clock time, as it is written. */
export const wallDay = (time: Time): string =>
  `${String(time.year).padStart(4, '0')}-${two(time.month)}-${two(time.day)}`;
const wallOf = (time: Time): string =>
  `${wallDay(time)}T${two(time.hour)}:${two(time.minute)}:${two(time.second)}`;

/** A zone that the file names and does not define. */
class IanaZone extends ICAL.Timezone {
  readonly #offsetByWall = new Map<string, number>();

  /** Seconds east of UTC at a wall-clock time of this zone. */
  override utcOffset(time: Time): number {
    const wall = wallOf(time);
    if (!isNear(time)) return 0;
    const known = this.#offsetByWall.get(wall) ?? secondsAt(wall, 'UTC') - secondsAt(wall, this.tzid);
    this.#offsetByWall.set(wall, known);
    return known;
  }
}

const ianaZones = new Map<string, IanaZone | null>();

/** The IANA zone of a name, also behind a maker's prefix: `/example.org/2026/Europe/London` (common practice, no source). */
function findIanaZone(tzid: string): IanaZone | null {
  const known = ianaZones.get(tzid);
  if (known !== undefined) return known;
  const parts = tzid.replace(/^"|"$/g, '').split('/');
  const tails = tzid.startsWith('/') ? [-3, -2, -1].map((from) => parts.slice(from).join('/')) : [tzid];
  const name = tails.find(isTimeZone);
  const zone = name === undefined ? null : new IanaZone({ tzid: name });
  // A file may name any number of zones; the first few hundred are kept.
  if (ianaZones.size < 500) ianaZones.set(tzid, zone);
  return zone;
}

/** The name of the zone that a time is given in, where neither the file nor this machine knows it; null for all others. */
export function findUnknownZone(property: Property | null, time: Time): string | null {
  const tzid: unknown = property?.getParameter('tzid');
  return !time.isDate && time.zone === floating && typeof tzid === 'string' && tzid !== '' ? tzid : null;
}

/** The time in its zone: what ical.js left floating, because the file does not define the zone, gets the IANA one. */
export function toZone(property: Property, time: Time): Time {
  const tzid = findUnknownZone(property, time);
  const zone = tzid === null ? null : findIanaZone(tzid);
  // A quarter past twenty-five is one o'clock on the next day.
  if (!time.isDate) time.adjust(0, 0, 0, 0);
  if (zone !== null) time.zone = zone;
  return time;
}

/** Whether a time is an instant, and not a day or a wall-clock time anywhere. */
export const isInstant = (time: Time): boolean => !time.isDate && time.zone !== floating;

/** The wall-clock time (`YYYY-MM-DDTHH:MM:SS`) in an IANA zone, and of a floating time as written. */
export const wallIn = (time: Time, timeZone: string): string =>
  isInstant(time) && isNear(time) ? wallAt(time.toUnixTime(), timeZone) : wallOf(time);

/** Whether a year lies where zones matter: a duration may lead anywhere. */
const isNear = ({ year }: Time): boolean => year >= 1800 && year <= 2300;

/** An instant as the wall-clock time of another zone of the file. */
export function inZoneOf(time: Time, zone: Zone): Time {
  if (!isInstant(time) || zone === floating || zone === time.zone) return time;
  if (!(zone instanceof IanaZone)) return time.convertToZone(zone);
  const there = ICAL.Time.fromDateTimeString(wallAt(time.toUnixTime(), zone.tzid));
  there.zone = zone;
  return there;
}

/** The time as a floating one: the same on the clock. Rules are counted on the clock (3.3.10). */
export function toFloating(time: Time): Time {
  const there = time.clone();
  if (!there.isDate) there.zone = floating;
  return there;
}

/** Zones change their time a few times a year; a file holds a handful of zones. */
const mostZoneChanges = 500;

/**
 * Takes out definitions of time zones that are none (no name, no offset), or whose changes ical.js would list for ever: by
 * a rule that is not yearly, or far too many of them.
 */
export function dropWildZones(calendar: Component): void {
  let left = mostZoneChanges;
  for (const zone of calendar.getAllSubcomponents('vtimezone')) {
    const changes = zone.getAllSubcomponents();
    left -= changes.reduce((sum, change) => sum + change.getAllProperties().length, 0);
    const isYearly = changes.every((change) =>
      change.getAllProperties('rrule').every((property) => {
        const rule: unknown = property.getFirstValue();
        return rule instanceof ICAL.Recur && rule.freq === 'YEARLY';
      }),
    );
    const isOne = zone.hasProperty('tzid') && changes.some((change) => change.hasProperty('tzoffsetto'));
    if (!isYearly || !isOne || left < 0) calendar.removeSubcomponent(zone);
  }
}
