// The keys of a sheet, in the student's own writing.

import { comfortableKeys } from '../../instrument/comfortable-keys.ts';
import { type Instrument, transpositionOf } from '../../instrument/instrument.ts';
import { foldFifths, type Key, keyFifths } from '../../key/key.ts';
import { invertDirection, transposeName } from '../../pitch/interval.ts';
import { fifthsToName, nameToFifths, type PitchName, parsePitchName } from '../../pitch/pitch.ts';
import { easiestTonic, type ScaleId, scaleOf } from '../../scale/scale.ts';
import type { SheetFor } from '../../shape/student-shape.ts';

/** A tonic named in a spec, as the student writes it; null for `fit`. */
export function namedTonic(
  name: string,
  pitch: 'written' | 'concert',
  instrument: Instrument,
): PitchName | null {
  const tonic = parsePitchName(name);
  if (tonic === null || pitch === 'written') return tonic;
  const away = transposeName(tonic, invertDirection(transpositionOf(instrument)));
  return fifthsToName(foldFifths(nameToFifths(away)));
}

/**
 * Signatures in the order they come on the instrument. In minor the plain ones come forward: a violinist's A major comes
 * before its relative, but F sharp minor does not come before A minor (common practice, no source).
 */
function signatures({ instrument, stage }: SheetFor, mode: Key['mode']): readonly number[] {
  const fifths = comfortableKeys(instrument, stage, 'major').map(keyFifths);
  if (mode === 'major') return fifths;
  const cost = (f: number, i: number) => Math.abs(f) + i / 2;
  return fifths
    .map((f, i) => ({ f, cost: cost(f, i) }))
    .sort((a, b) => a.cost - b.cost)
    .map(({ f }) => f);
}

/** Whether a scale is minor in kind: its third is a minor third. */
export function modeOfScale(id: ScaleId): Key['mode'] {
  const third = scaleOf(id).steps.find((step) => step.diatonic === 2);
  return third?.chromatic === 3 ? 'minor' : 'major';
}

/** Tonics of a scale, the most comfortable first. */
export function comfortableTonics(student: SheetFor, id: ScaleId): readonly PitchName[] {
  const { signature } = scaleOf(id);
  return signatures(student, modeOfScale(id)).map((f) =>
    easiestTonic(fifthsToName(f - (signature ?? 0)), id),
  );
}

const stepsByOrder = { fourths: -1, fifths: 1, semitones: 7 } as const;

/** Up to twelve tonics from one on, by an interval upwards. */
export function tonicsFrom(
  start: PitchName,
  order: keyof typeof stepsByOrder,
  id: ScaleId,
): readonly PitchName[] {
  return Array.from({ length: 12 }, (_, i) =>
    easiestTonic(fifthsToName(foldFifths(nameToFifths(start) + stepsByOrder[order] * i)), id),
  );
}

/** Keys for tunes, the most comfortable first. */
export function comfortableTuneKeys(student: SheetFor, mode: Key['mode']): readonly Key[] {
  const id = mode === 'major' ? 'major' : 'natural_minor';
  return comfortableTonics(student, id).map((tonic) => ({ tonic, mode }));
}
