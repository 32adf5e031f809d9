// Where each weekly lesson stands on its day's line: minutes from the first hour, and a lane beside others it overlaps.

import type { TermView } from '#contract';
import { minutesOf, type Weekday, weekdays } from '#core';

export type WeekSlot = TermView['week'][number];

export interface PlacedSlot {
  readonly slot: WeekSlot;
  /** Minutes after the first hour drawn. */
  readonly top: number;
  /** 0 for the leftmost of those that overlap, and how many lanes they share. */
  readonly lane: number;
  readonly lanes: number;
}

export interface WeekDay {
  readonly weekday: Weekday;
  readonly slots: readonly PlacedSlot[];
}

export interface WeekLayout {
  /** First and last hour drawn, 0..24. */
  readonly fromHour: number;
  readonly toHour: number;
  readonly days: readonly WeekDay[];
}

/** Slots of one day in lanes, so that none covers another: the first free lane, as in interval partitioning. */
function placeDay(slots: readonly WeekSlot[], fromHour: number): readonly PlacedSlot[] {
  const inOrder = slots.toSorted(
    (a, b) => minutesOf(a.time) - minutesOf(b.time) || a.slot.localeCompare(b.slot),
  );
  const placed: { slot: WeekSlot; top: number; lane: number; cluster: number }[] = [];
  const lanesOfCluster: number[] = [];
  let laneEnds: number[] = [];
  let clusterEnd = Number.NEGATIVE_INFINITY;
  for (const slot of inOrder) {
    const start = minutesOf(slot.time);
    if (start >= clusterEnd) {
      laneEnds = [];
      lanesOfCluster.push(0);
    }
    const free = laneEnds.findIndex((end) => end <= start);
    const lane = free === -1 ? laneEnds.length : free;
    laneEnds[lane] = start + slot.minutes;
    clusterEnd = Math.max(...laneEnds);
    const cluster = lanesOfCluster.length - 1;
    lanesOfCluster[cluster] = laneEnds.length;
    placed.push({ slot, top: start - fromHour * 60, lane, cluster });
  }
  return placed.map(({ cluster, ...rest }) => ({ ...rest, lanes: lanesOfCluster[cluster] ?? 1 }));
}

/** The week's lines: Monday to Friday always, Saturday and Sunday where something stands on them. */
export function layoutWeek(week: readonly WeekSlot[]): WeekLayout {
  const starts = week.map((s) => minutesOf(s.time));
  const ends = week.map((s) => Math.min(1440, minutesOf(s.time) + s.minutes));
  const fromHour = Math.floor(Math.min(...starts, 14 * 60) / 60);
  const toHour = Math.ceil(Math.max(...ends, 18 * 60) / 60);
  return {
    fromHour,
    toHour,
    days: weekdays
      .map((weekday) => ({
        weekday,
        slots: placeDay(
          week.filter((s) => s.weekday === weekday),
          fromHour,
        ),
      }))
      .filter(({ weekday, slots }) => weekday <= 5 || slots.length > 0),
  };
}
