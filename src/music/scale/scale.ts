// Scales as degrees above a tonic, spelled from it.

import { present } from '#core';
import { signatureAlters } from '../key/key.ts';
import { degreeToInterval, type Interval, transposeName } from '../pitch/interval.ts';
import { fifthsToName, nameToFifths, type PitchName } from '../pitch/pitch.ts';
import { scaleTable } from './scale.data.ts';

export type ScaleId = (typeof scaleTable)[number]['id'];

export interface Scale {
  readonly id: ScaleId;
  /** The usual name first. */
  readonly names: readonly string[];
  /** Intervals above the tonic, rising, the first a unison. */
  readonly steps: readonly Interval[];
  /** Its signature in fifths from its tonic's major key; null when it is written without one. */
  readonly signature: number | null;
}

const scales: readonly Scale[] = scaleTable.map(({ id, names, degrees, signature }) => ({
  id,
  names,
  steps: degrees.split(' ').map(degreeToInterval),
  signature,
}));
const scalesById = new Map<string, Scale>(scales.map((scale) => [scale.id, scale]));

/** All 24 scales. */
export function listScales(): readonly Scale[] {
  return scales;
}

/** The scale with this id, or null. */
export function findScale(id: string): Scale | null {
  return scalesById.get(id) ?? null;
}

/** The scale with this id, which the type already promises. */
export function scaleOf(id: ScaleId): Scale {
  return present(scalesById.get(id), 'the scale of a known id');
}

/** The scale's names from its tonic up. `spellScale(E flat, 'dorian')` → E♭ F G♭ A♭ B♭ C D♭ */
export function spellScale(tonic: PitchName, id: ScaleId): readonly PitchName[] {
  return scaleOf(id).steps.map((step) => transposeName(tonic, step));
}

/** Sharps or flats of the scale's signature; 0 where the scale is written without one or it would pass seven. */
export function scaleFifths(tonic: PitchName, id: ScaleId): number {
  const { signature } = scaleOf(id);
  const fifths = signature === null ? 0 : nameToFifths(tonic) + signature;
  return Math.abs(fifths) > 7 ? 0 : fifths;
}

/** What a spelling costs to read: double accidentals, then a signature past seven, then accidentals and its size. */
function readingCost(tonic: PitchName, id: ScaleId): number {
  const alters = signatureAlters(scaleFifths(tonic, id));
  const { signature } = scaleOf(id);
  const size = signature === null ? Math.abs(tonic.alter) : Math.abs(nameToFifths(tonic) + signature);
  let cost = size + (size > 7 ? 100 : 0);
  for (const name of spellScale(tonic, id)) {
    if (Math.abs(name.alter) > 1) cost += 1000;
    if (alters[name.letter] !== name.alter) cost += 1;
  }
  return cost;
}

/** The tonic itself or its enharmonic twin, whichever the scale reads better on. G sharp major → A flat */
export function easiestTonic(tonic: PitchName, id: ScaleId): PitchName {
  const fifths = nameToFifths(tonic);
  return [fifths, fifths - 12, fifths + 12]
    .map(fifthsToName)
    .filter((name) => Math.abs(name.alter) <= 1)
    .reduce((best, name) => (readingCost(name, id) < readingCost(best, id) ? name : best));
}
