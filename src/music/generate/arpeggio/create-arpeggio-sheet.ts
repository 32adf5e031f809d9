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
import { createRunSheet, type Study } from '../run/create-run-sheet.ts';
import type { RunFigure } from '../run/run-notes.ts';
import type { Draft, SheetRefused } from '../sheet/sheet.ts';
import { comfortableTonics, modeOfScale } from '../sheet/student-keys.ts';

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
  const symbol =
    quality.suffix === '' ? 'major triad' : quality.suffix === 'm' ? 'minor triad' : quality.suffix;
  const study: Study = {
    title: `Arpeggios: ${symbol}${spec.pattern === 'inversions' ? ', inversions' : ''}`,
    label: (root) => printChord(formatChord({ root, quality, bass: null })),
    steps: () => ({ rising: tones, falling: tones, repeats }),
    keyOf: (root) => fifthsToKey(scaleFifths(root, home), modeOfScale(home)),
    comfortable: comfortableTonics(student, home),
    respell: (tonic) => easiestTonic(tonic, home),
    orderId: home,
    figure: figures[spec.pattern],
    rhythm: 'even',
    repeats,
  };
  // Inversions take an octave more than the chord itself before each has been heard.
  const octaves = spec.pattern === 'inversions' && spec.octaves === 'fit' ? 2 : spec.octaves;
  return createRunSheet({ ...spec, octaves }, study, student);
}

/** A chord symbol with printed accidentals after its letters. */
function printChord(symbol: string): string {
  return symbol.replaceAll('b', '♭').replaceAll('#', '♯');
}
