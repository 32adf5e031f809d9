// The planning problem as two arrays, in the order in which `kernel/model.ts` reads them.

import type { LastPlan } from './last-plan.ts';
import type { Model } from './model.ts';

export interface PackedModel {
  readonly ints: Int32Array;
  readonly reals: Float64Array;
}

export function packModel(model: Model, last: LastPlan | null, gapWeight: number): PackedModel {
  const limits = tables(model.squareLimit);
  const preds = lists(model.preds);
  const succs = lists(model.succs);
  const head = [
    model.lessonCount,
    model.activityCount,
    model.strandCount,
    model.reviewCount,
    model.maxRun,
    model.parkGap,
    last === null ? 0 : 1,
    limits.all.length,
    preds.all.length,
    succs.all.length,
  ];
  return {
    ints: Int32Array.from(
      [
        head,
        model.capacity,
        model.recap,
        model.reviewMax,
        model.maxBlocks,
        model.maxStrands,
        model.dueAfter,
        limits.starts,
        limits.all,
        model.strand,
        model.demand,
        model.minChunk,
        model.maxChunk,
        model.maxPartial,
        model.first,
        model.last,
        model.carries,
        model.reviewOf,
        model.runStart,
        preds.starts,
        preds.all,
        succs.starts,
        succs.all,
        model.reviewMinutes,
        model.reviewDue,
        model.reviewActivity,
        last?.minutes ?? [],
        last?.reviewAt ?? [],
      ].flatMap((part) => [...part]),
    ),
    reals: Float64Array.from([
      model.lateWeight,
      model.soloWeight,
      model.splitWeight,
      gapWeight,
      ...model.weight,
      ...model.value,
      ...model.reviewWeight,
    ]),
  };
}

interface Packed {
  readonly starts: readonly number[];
  readonly all: readonly number[];
}

/** Lists one after the other; the n-th from `starts[n]` up to, not including, `starts[n + 1]`. */
function lists(parts: readonly Int32Array[]): Packed {
  const starts = [0];
  const all: number[] = [];
  for (const part of parts) {
    all.push(...part);
    starts.push(all.length);
  }
  return { starts, all };
}

/** As `lists`, but a table that several share stands once, and there is a start for each only. */
function tables(parts: readonly Int32Array[]): Packed {
  const startOf = new Map<Int32Array, number>();
  const all: number[] = [];
  const starts = parts.map((part) => {
    const known = startOf.get(part);
    if (known !== undefined) return known;
    const start = all.length;
    startOf.set(part, start);
    all.push(...part);
    return start;
  });
  return { starts, all };
}
