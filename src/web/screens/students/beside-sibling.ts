// Siblings come one after the other: one journey for the family. Where in the week a lesson fits next to a sibling's.

import { addMinutes, minutesOf, type PlainTime } from '#core';
import { findClash, type Stand } from './first-lessons-draft.ts';

export interface Place {
  readonly weekday: string;
  readonly time: PlainTime;
  /** Whose lesson it is next to. */
  readonly name: string;
  readonly side: 'after' | 'before';
}

export interface Beside {
  /** The siblings' lessons. */
  readonly stands: readonly Stand[];
  /** Directly after or before one of them, where nothing else stands; after comes first. */
  readonly places: readonly Place[];
}

const wholeDay = 24 * 60;

/** Places next to the lessons of `siblings` for one of `minutes`; none while the length is unknown. */
export function findBeside(siblings: readonly string[], minutes: number, stands: readonly Stand[]): Beside {
  const theirs = stands.filter(({ who }) => who.some((one) => siblings.includes(one)));
  const places: Place[] = [];
  for (const { name, weekday, time, minutes: length } of theirs)
    for (const side of ['after', 'before'] as const) {
      const start = minutesOf(time) + (side === 'after' ? length : -minutes);
      if (!(minutes > 0) || start < 0 || start + minutes > wholeDay || start >= wholeDay) continue;
      const place = { name, weekday, time: addMinutes('00:00' as PlainTime, start), side };
      const taken = findClash({ ...place, minutes, who: [] }, stands) !== null;
      const twice = places.some((one) => one.weekday === weekday && one.time === place.time);
      if (!taken && !twice) places.push(place);
    }
  const sides = ['after', 'before'];
  return { stands: theirs, places: places.sort((a, b) => sides.indexOf(a.side) - sides.indexOf(b.side)) };
}

/** The place of a weekday and a time, where it is one of them. */
export const placeAt = (
  { places }: Beside,
  at: { readonly weekday: string; readonly time: string },
): Place | null => places.find(({ weekday, time }) => weekday === at.weekday && time === at.time) ?? null;
