// Valved brass, computed: a tube's harmonic series lowered by what each valve adds. First valve two semitones, second one,
// third three, fourth five; 1 and 2 together stand for 3. Usual is the fewest semitones of tube from partials that are in
// tune (common practice: the seventh, ninth, eleventh, thirteenth to fifteenth are left out while another gives the note).

import type { Stage } from '#core';
import type { Instrument } from '../instrument/instrument.ts';
import type { ValveFingering } from './fingering.ts';
import { partialCents, partialSemitones, tubeShortfallCents } from './harmonic-series.ts';

interface Brass {
  /** Key number of the sounding fundamental of the open tube. */
  readonly fundamental: number;
  readonly highestPartial: number;
  readonly fourthValve: boolean;
  /** The other side of a double horn. */
  readonly thumbFundamental: number | null;
}

const bb1 = 34;
const trumpet: Brass = {
  fundamental: bb1 + 12,
  highestPartial: 10,
  fourthValve: false,
  thumbFundamental: null,
};
const euphonium: Brass = { fundamental: bb1, highestPartial: 10, fourthValve: true, thumbFundamental: null };
const brassById: Readonly<Record<string, Brass>> = {
  trumpet_bb: trumpet,
  cornet_bb: trumpet,
  flugelhorn_bb: trumpet,
  horn_f: { fundamental: 29, highestPartial: 16, fourthValve: false, thumbFundamental: bb1 },
  euphonium_bc: euphonium,
  euphonium_tc: euphonium,
  tuba: { fundamental: bb1 - 12, highestPartial: 12, fourthValve: true, thumbFundamental: null },
};

/** Sounding C sharp 4, written G sharp 4: from here up the double horn's B flat side is usual (common practice). */
const thumbFrom = 61;
const outOfTune: ReadonlySet<number> = new Set([7, 9, 11, 13, 14, 15]);
/** The double horn's B flat side: its flat thirds are avoided, its ninth is used (from memory of horn charts). */
const outOfTuneOnThumb: ReadonlySet<number> = new Set([5, 7, 10]);
const semitonesByValve: Readonly<Record<number, number>> = { 1: 2, 2: 1, 3: 3, 4: 5 };
const combinations: readonly (readonly number[])[] = [[], [2], [1], [1, 2], [2, 3], [1, 3], [1, 2, 3]];
const fourthCombinations: readonly (readonly number[])[] = [
  [4],
  [2, 4],
  [1, 4],
  [1, 2, 4],
  [2, 3, 4],
  [1, 3, 4],
  [1, 2, 3, 4],
];

function tubes(valves: readonly number[]): readonly number[] {
  return valves.map((valve) => semitonesByValve[valve] ?? 0);
}

/** Semitones the valves add. */
function drop(valves: readonly number[]): number {
  return tubes(valves).reduce((sum, s) => sum + s, 0);
}

function takenFrom(brass: Brass, midi: number, thumb: boolean): readonly ValveFingering[] {
  const fundamental = thumb ? brass.thumbFundamental : brass.fundamental;
  if (fundamental === null) return [];
  const all = brass.fourthValve ? [...combinations, ...fourthCombinations] : combinations;
  const found: ValveFingering[] = [];
  for (let partial = 2; partial <= brass.highestPartial; partial++) {
    for (const valves of all) {
      if (fundamental + partialSemitones(partial) - drop(valves) !== midi) continue;
      const cents = partialCents(partial) + tubeShortfallCents(tubes(valves));
      found.push({ kind: 'valves', valves, thumb, partial, cents });
    }
  }
  return found;
}

/** Out-of-tune partials last, the fourth valve after three, then the least tube. */
function rank(fingering: ValveFingering, thumbUsual: boolean): number {
  return (
    (fingering.thumb === thumbUsual ? 0 : 1000) +
    ((fingering.thumb ? outOfTuneOnThumb : outOfTune).has(fingering.partial) ? 100 : 0) +
    (fingering.valves.includes(4) ? 50 : 0) +
    drop(fingering.valves)
  );
}

/**
 * Every fingering of a sounding key number, the usual first, then those more in tune; empty when the instrument has no valves or the note lies
 * outside its tubes. From the intermediate stage on, a horn is a double horn. Trumpet sounding D4 (written E4) → 12
 */
export function valveFingerings(
  instrument: Instrument,
  midi: number,
  stage: Stage,
): readonly ValveFingering[] {
  const brass = brassById[instrument.id];
  if (brass === undefined) return [];
  const double = stage === 'intermediate' || stage === 'advanced';
  const thumbUsual = double && midi >= thumbFrom;
  const [usual, ...others] = [...takenFrom(brass, midi, false), ...takenFrom(brass, midi, true)].toSorted(
    (a, b) => rank(a, thumbUsual) - rank(b, thumbUsual),
  );
  if (usual === undefined) return [];
  const sameSide = (way: ValveFingering) => (way.thumb === usual.thumb && !way.valves.includes(4) ? 0 : 1000);
  return [
    usual,
    ...others.toSorted((a, b) => sameSide(a) + Math.abs(a.cents) - sameSide(b) - Math.abs(b.cents)),
  ];
}
