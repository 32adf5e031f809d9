// A first guess of tempo, phase and swing from the opening of a take: every combination is scored by how likely the onsets
// are, each drawn from the places of a beat with the usual spread, or from anywhere.

import { type Grid, steadyGrid } from './grid.ts';
import { usualSpread } from './quantise.ts';
import { slotsOf, tickPlace } from './slots.ts';

export interface CoarseWish {
  /** Beats a minute, when known. */
  readonly tempo: number | null;
  /** Share of the beat, when agreed. */
  readonly swing: number | null;
  readonly isCompound: boolean;
}

const bins = 240;
const phases = 48;
const straysShare = 0.03;
// Without a tempo, the places of a beat are believed more evenly, and notes count for less than one witness each (players
// err together): otherwise twice the tempo, where every note falls on a beat, would always win. Common practice, no source.
const evenShares: Readonly<Record<number, number>> = {
  0: 0.3,
  6: 0.26,
  3: 0.16,
  9: 0.17,
  4: 0.04,
  8: 0.04,
  2: 0.01,
  10: 0.01,
};
const openSpread = 0.026;
const openTrust = 0.4;
/** Beats between onsets that are usual, and how many octaves around them. */
const usualGap = { beats: 0.62, octaves: 0.7 };
const swings = [0.5, 0.55, 0.6, 0.64, 0.68, 0.73] as const;

/** Tempos closer than this part of an octave are one guess. */
const octaveParts = 14;

/**
 * The likeliest steady grids, best first, at most `most` and each of another tempo; their offsets lie within one beat before
 * the first onset.
 */
export function coarseGrids(onsets: readonly number[], wish: CoarseWish, most: number): readonly Grid[] {
  const first = onsets[0] ?? 0;
  const span = Math.max(0.5, (onsets.at(-1) ?? first) - first);
  const gaps = onsets.slice(1).map((onset, i) => onset - (onsets[i] ?? 0));
  const gap = gaps.sort((a, b) => a - b)[Math.floor(gaps.length / 2)] ?? 0.5;
  const best = new Map<number, { score: number; tempo: number; phase: number; swing: number }>();
  for (const tempo of temposToTry(wish.tempo, span))
    for (const swing of wish.isCompound ? [0.5] : swings) {
      const beat = 60 / tempo;
      const table = likelihoodTable(swing, beat, wish);
      const belief =
        tempoBelief(tempo, wish.tempo) +
        swingBelief(swing, wish.swing) +
        (wish.tempo === null ? gapBelief(gap / beat) : 0);
      const trust = wish.tempo === null ? openTrust : 1;
      for (let p = 0; p < phases; p++) {
        const phase = p / phases;
        let score = belief;
        for (const onset of onsets) {
          const place = (onset - first) / beat + phase;
          score += trust * ((table[Math.floor((place - Math.floor(place)) * bins)] ?? 0) - Math.log(beat));
        }
        const kind = wish.tempo === null ? Math.round(Math.log2(tempo) * octaveParts) : 0;
        if (score > (best.get(kind)?.score ?? Number.NEGATIVE_INFINITY))
          best.set(kind, { score, tempo, phase, swing });
      }
    }
  return [...best.values()]
    .sort((a, b) => b.score - a.score)
    .slice(0, most)
    .map(({ tempo, phase, swing }) => steadyGrid(first - (phase * 60) / tempo, tempo, swing, false));
}

/** Fine enough that the last onset moves by less than a sixteenth of a beat from one to the next. */
function temposToTry(known: number | null, span: number): readonly number[] {
  const [low, high] = known === null ? [40, 230] : [known * 0.94, known * 1.06];
  const tempos: number[] = [];
  for (let tempo = low; tempo <= high; tempo *= 1 + 0.06 / Math.max(4, (span * tempo) / 60))
    tempos.push(tempo);
  if (known !== null) tempos.push(known);
  return tempos;
}

/** How usual a tempo is (about a moderate one), or how near to the known one: natural log, 0 at best. */
export function tempoBelief(tempo: number, known: number | null): number {
  const octaves = Math.log2(tempo / (known ?? 105));
  return -((octaves / (known === null ? 0.45 : 0.025)) ** 2) / 2;
}

/** How usual this many beats between onsets are, natural log, 0 at best. */
export function gapBelief(beats: number): number {
  return -((Math.log2(beats / usualGap.beats) / usualGap.octaves) ** 2) / 2;
}

function swingBelief(swing: number, known: number | null): number {
  return known === null ? (swing === 0.5 ? 0 : -2.5) : -(((swing - known) / 0.05) ** 2) / 2;
}

function likelihoodTable(swing: number, beat: number, { tempo, isCompound }: CoarseWish): Float64Array {
  const spread = (tempo === null ? openSpread : usualSpread(beat)) / beat;
  const table = new Float64Array(bins);
  for (let b = 0; b < bins; b++) {
    const place = (b + 0.5) / bins;
    let sum = straysShare;
    for (const slot of slotsOf(isCompound)) {
      const share = tempo === null && !isCompound ? (evenShares[slot.tick] ?? 0) : Math.exp(slot.prior);
      let away = Math.abs(place - tickPlace(slot.tick, swing, isCompound));
      away = Math.min(away, 1 - away);
      sum += (share * Math.exp(-((away / spread) ** 2) / 2)) / (spread * Math.sqrt(2 * Math.PI));
    }
    table[b] = Math.log(sum);
  }
  return table;
}
