// What a known tempo says of a moment before anything is heard there: notes begin on the places of the beat more often
// than between them. Weak on purpose: it tips what is in doubt, and a take that keeps to no grid, or to another, gets none.

import { modulo } from '#core';
import { fitGrid } from '../alignment/fit-grid.ts';
import { secondsToBeat } from '../alignment/grid.ts';
import { usualSpread } from '../alignment/quantise.ts';
import { slotsOf, tickPlace, ticksPerBeat } from '../alignment/slots.ts';
import { beatFrame, type TakeContext, unknownContext } from '../context/take-context.ts';
import { hop } from '../pitch-track/observe-take.ts';
import { quantile } from '../signal/spans.ts';
import type { HeardNote } from './heard-note.ts';

/** What of a take's context the hearing leans on. */
export type KnownGrid = Partial<Pick<TakeContext, 'tempo' | 'metre' | 'swing' | 'offsetS'>>;

/** Fewest notes that show whether the playing keeps to the grid. */
const fewestNotes = 8;
/** Cost of placing a note above which the playing does not keep to it: half-way from a good take to chance (see align-take). */
const mostCost = 1.9;
/** Share of onsets that are expected anywhere. */
const anywhere = 0.35;
/** Notes of the take's own for which a slot's usual share counts. */
const usualNotes = 12;
/** Notes err together, so that a place counts for half of its odds; and natural logs of odds beyond this are cut. */
const weight = 0.5;
const most = 0.7;
const bins = 240;

/**
 * The natural log of the odds that something begins at each moment beside the odds of any moment, or null where no tempo is
 * known or `notes`, heard without it, do not keep to it.
 */
export function leanOnGrid(
  notes: readonly HeardNote[],
  { tempo = null, metre = unknownContext.metre, swing = null, offsetS = null }: KnownGrid,
  count: number,
): Float32Array | null {
  if (tempo === null || notes.length < fewestNotes) return null;
  const onsets = notes.map((note) => note.onset);
  const fit = fitGrid(onsets, { ...unknownContext, tempo, metre, swing, offsetS });
  if (fit === null || fit.placement.cost > mostCost) return null;
  const { grid, placement } = fit;
  const late = quantile(
    Float32Array.from(placement.placed, (placed) => placed.late),
    0.5,
  );
  const { isCompound } = beatFrame(metre);
  const spread = usualSpread(60 / grid.tempo) * (grid.tempo / 60);
  const table = tabulate(slotShares(placement.placed, isCompound), spread, grid.swing, isCompound);
  return Float32Array.from({ length: count }, (_, t) => {
    const beat = secondsToBeat(grid, t * hop) - late;
    return table[Math.floor((beat - Math.floor(beat)) * bins)] ?? 0;
  });
}

/** How often notes begin on each place of the beat in this take, leaning on what is usual. */
function slotShares(
  placed: readonly { readonly tick: number }[],
  isCompound: boolean,
): ReadonlyMap<number, number> {
  const shares = new Map(slotsOf(isCompound).map(({ tick, prior }) => [tick, usualNotes * Math.exp(prior)]));
  for (const { tick } of placed) {
    const within = modulo(tick, ticksPerBeat);
    shares.set(within, (shares.get(within) ?? 0) + 1);
  }
  return new Map([...shares].map(([tick, count]) => [tick, count / (placed.length + usualNotes)]));
}

/** The log odds over one beat; `spread` in beats. */
function tabulate(
  shares: ReadonlyMap<number, number>,
  spread: number,
  swing: number,
  isCompound: boolean,
): Float64Array {
  return Float64Array.from({ length: bins }, (_, b) => {
    let sum = anywhere;
    for (const [tick, share] of shares) {
      let away = Math.abs((b + 0.5) / bins - tickPlace(tick, swing, isCompound));
      away = Math.min(away, 1 - away);
      const density = Math.exp(-((away / spread) ** 2) / 2) / (spread * Math.sqrt(2 * Math.PI));
      sum += (1 - anywhere) * share * density;
    }
    return Math.max(-most, Math.min(most, weight * Math.log(sum)));
  });
}
