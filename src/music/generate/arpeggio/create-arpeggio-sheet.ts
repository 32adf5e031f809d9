// Arpeggio studies.

import type { Result } from '#core';
import { formatChord } from '../../chord/chord.ts';
import { suggestScales } from '../../chord/chord-scale.ts';
import { type ChordQuality, qualityOf } from '../../chord/quality.ts';
import { fifthsToKey } from '../../key/key.ts';
import type { Interval } from '../../pitch/interval.ts';
import { easiestTonic, type ScaleId, scaleFifths, scaleOf } from '../../scale/scale.ts';
import type { SheetFor } from '../../shape/student-shape.ts';
import type { ArpeggioSpec } from '../../spec/material-spec.ts';
import { createRunSheet } from '../run/create-run-sheet.ts';
import type { RunFigure } from '../run/run-notes.ts';
import type { Study } from '../run/run-study-spec.ts';
import type { Draft, SheetRefused } from '../sheet/sheet.ts';
import { comfortableTonics, modeOfScale } from '../sheet/student-keys.ts';
import { capital } from '../sheet/title.ts';

/** The chord's tones from the root up; those past the seventh stand above it. */
function stack(quality: ChordQuality): readonly Interval[] {
  return quality.tones.toSorted((a, b) => a.chromatic - b.chromatic);
}

/** The scale whose signature the chord is written in: the first that goes with it and has one. */
function homeScale(quality: ChordQuality): ScaleId {
  const home = suggestScales(quality.id).find((id) => scaleOf(id).signature !== null);
  if (quality.id === 'minor') return 'natural_minor'; // a study of minor chords stands in the minor key
  if (quality.id === 'dominant_7' || home === undefined) return 'mixolydian';
  return home;
}

/** An arpeggio sheet for a student, or why there is none. */
export function createArpeggioSheet(spec: ArpeggioSpec, student: SheetFor): Result<Draft, SheetRefused> {
  const quality = qualityOf(spec.quality);
  const tones = stack(quality);
  const repeats = tones.every((tone) => tone.chromatic < 12);
  const home = homeScale(quality);
  const group = Array.from({ length: Math.min(4, tones.length) }, (_, i) => i);
  const figures: Readonly<Record<ArpeggioSpec['pattern'], RunFigure>> = {
    straight: { offsets: [0], stride: 1 },
    inversions: { offsets: group, stride: 1 },
    alternating: { offsets: [0, 2], stride: 1 },
  };
  const study: Study = {
    title: `${capital(qualityName(quality))} arpeggios${spec.pattern === 'inversions' ? ', inversions' : ''}`,
    label: (root) => printChord(formatChord({ root, quality, bass: null })),
    steps: () => ({ rising: tones, falling: tones, repeats }),
    keyOf: (root) => fifthsToKey(scaleFifths(root, home), modeOfScale(home)),
    comfortable: comfortableTonics(student, home),
    respell: (tonic) => easiestTonic(tonic, home),
    orderId: home,
    figure: figures[spec.pattern],
    rhythm: 'even',
    // Each inversion is heard once the chord goes an octave further.
    leastOctaves: spec.pattern === 'inversions' ? 2 : 1,
    repeats,
  };
  return createRunSheet(spec, study, student);
}

/** A quality in words. `dominant_7` → dominant 7th */
function qualityName({ id }: ChordQuality): string {
  return id.replaceAll('_', ' ').replace(/ (7|9|11|13)\b/, ' $1th');
}

/** A chord symbol with printed accidentals after its letters. */
function printChord(symbol: string): string {
  return symbol.replaceAll('b', '♭').replaceAll('#', '♯');
}
