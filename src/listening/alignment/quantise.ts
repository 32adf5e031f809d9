// Onsets put on the places they were meant for: the likeliest path through the slots of the beats (Viterbi), which weighs
// how far a note lies from a place, how usual the place is, and whether the time since the last note fits.

import { type Grid, secondsToBeat } from './grid.ts';
import { slotsOf, tickPlace, ticksPerBeat } from './slots.ts';

export interface Placed {
  /** Twelfths of a beat from bar 1. */
  readonly tick: number;
  /** Beats from the place it was put to where it sounded, along the (swung) grid; positive is late. */
  readonly late: number;
  /** Whether another place would have been nearly as likely. */
  readonly isDoubtful: boolean;
}

export interface Placement {
  readonly placed: readonly Placed[];
  /** Negative log likelihood per note, natural units; small is good. */
  readonly cost: number;
}

/** Spread of playing about the grid that is taken for granted, in seconds; common practice, no source. */
export function usualSpread(beatSeconds: number): number {
  return 0.016 + 0.025 * beatSeconds;
}

const reach = 0.34;
const farthest = 10;
const mixedDivisions = 3;
const outOfOrder = 25;
const tieGap = 1.5;

interface State {
  readonly tick: number;
  readonly late: number;
  readonly own: number;
  readonly total: number;
  readonly from: number;
  readonly isThird: boolean | null;
}

/** Places onsets (seconds, rising) on a grid. */
export function quantise(onsets: readonly number[], grid: Grid, isCompound: boolean): Placement {
  const slots = slotsOf(isCompound);
  const beatSeconds = 60 / grid.tempo;
  const spread = usualSpread(beatSeconds) / beatSeconds;
  const columns: State[][] = [];
  let before: { beat: number; states: readonly State[] } | null = null;
  for (const seconds of onsets) {
    const beat = secondsToBeat(grid, seconds);
    const states: State[] = [];
    for (let whole = Math.floor(beat) - 1; whole <= Math.floor(beat) + 1; whole++)
      for (const slot of slots) {
        const late = beat - whole - tickPlace(slot.tick, grid.swing, isCompound);
        if (Math.abs(late) > reach) continue;
        const own = Math.min(farthest, (late / spread) ** 2 / 2) - slot.prior;
        const tick = whole * ticksPerBeat + slot.tick;
        const isThird = isCompound || slot.tick === 0 ? null : slot.tick % 3 !== 0;
        const best = cheapest(before?.states ?? null, tick, late, spread, isThird);
        states.push({ tick, late, own, isThird, total: own + best.cost, from: best.index });
      }
    columns.push(states);
    before = { beat, states };
  }
  return trace(columns);
}

function cheapest(
  states: readonly State[] | null,
  tick: number,
  late: number,
  spread: number,
  isThird: boolean | null,
): { readonly cost: number; readonly index: number } {
  if (states === null) return { cost: 0, index: -1 };
  let cost = Number.POSITIVE_INFINITY;
  let index = -1;
  for (const [i, state] of states.entries()) {
    const step = (late - state.late) / (1.6 * spread);
    const mixes =
      isThird !== null &&
      state.isThird !== null &&
      isThird !== state.isThird &&
      Math.floor(state.tick / ticksPerBeat) === Math.floor(tick / ticksPerBeat);
    const total =
      state.total +
      Math.min(farthest, step * step * 0.25) +
      (mixes ? mixedDivisions : 0) +
      (state.tick >= tick ? outOfOrder : 0);
    if (total < cost) [cost, index] = [total, i];
  }
  return { cost, index };
}

function trace(columns: readonly (readonly State[])[]): Placement {
  const placed: Placed[] = [];
  let at = -1;
  let total = 0;
  for (let k = columns.length - 1; k >= 0; k--) {
    const states = columns[k] ?? [];
    if (at < 0) {
      at = states.reduce((best, state, i) => (state.total < (states[best]?.total ?? 0) ? i : best), 0);
      total = states[at]?.total ?? 0;
    }
    const state = states[at];
    if (state === undefined) break;
    const rival = states.some((other) => other.tick !== state.tick && other.own < state.own + tieGap);
    placed.push({ tick: state.tick, late: state.late, isDoubtful: rival });
    at = state.from;
  }
  return { placed: placed.reverse(), cost: columns.length === 0 ? 0 : total / columns.length };
}
