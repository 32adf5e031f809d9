// Scale studies.

import type { Result } from '#core';
import { fifthsToKey } from '../../key/key.ts';
import { type Interval, intervalUp } from '../../pitch/interval.ts';
import { fifthsToName, nameToFifths, type PitchName, pitchClass } from '../../pitch/pitch.ts';
import { easiestTonic, type ScaleId, scaleFifths, scaleOf, spellScale } from '../../scale/scale.ts';
import type { SheetFor } from '../../shape/student-shape.ts';
import type { ScaleSpec } from '../../spec/material-spec.ts';
import { createRunSheet } from '../run/create-run-sheet.ts';
import type { Steps } from '../run/place-run.ts';
import type { RunFigure } from '../run/run-notes.ts';
import type { Study } from '../run/run-study-spec.ts';
import type { Draft, SheetRefused } from '../sheet/sheet.ts';
import { comfortableTonics, modeOfScale } from '../sheet/student-keys.ts';
import { capital, printName } from '../sheet/title.ts';

const figures: Readonly<Record<ScaleSpec['pattern'], RunFigure>> = {
  steps: { offsets: [0], stride: 1 },
  thirds: { offsets: [0, 2], stride: 1 },
  turned_thirds: { offsets: [0, 2, 3, 1], stride: 2 },
  fourths: { offsets: [0, 3], stride: 1 },
  one_two_three_five: { offsets: [0, 1, 2, 4], stride: 1 },
  groups_of_three: { offsets: [0, 1, 2], stride: 1 },
  groups_of_four: { offsets: [0, 1, 2, 3], stride: 1 },
  neighbours: { offsets: [0, 1, 2, 1], stride: 1 },
};

const patternNames: Readonly<Record<ScaleSpec['pattern'], string>> = {
  steps: '',
  thirds: ' in thirds',
  turned_thirds: ' in turned thirds',
  fourths: ' in fourths',
  one_two_three_five: ', 1 2 3 5',
  groups_of_three: ' in groups of three',
  groups_of_four: ' in groups of four',
  neighbours: ' with neighbours',
};

/** A name as it is usually written: no double accidental where a plain name sounds the same. */
function plainName(name: PitchName): PitchName {
  const fifths = nameToFifths(name);
  if (name.alter > 1) return fifthsToName(fifths - 12);
  return name.alter < -1 ? fifthsToName(fifths + 12) : name;
}

/** The semitones between two tonics' octave in sharps on the way up and flats on the way down. */
function chromaticSteps(tonic: PitchName): Steps {
  const from = (fifthsOf: readonly number[]): readonly Interval[] =>
    Array.from({ length: 12 }, (_, semitone) => {
      const wanted = (pitchClass(tonic) + semitone) % 12;
      const name = fifthsOf.map(fifthsToName).find((n) => pitchClass(n) === wanted) ?? tonic;
      if (semitone === 0) return { diatonic: 0, chromatic: 0 };
      const interval = intervalUp(tonic, name);
      // The semitone under the octave, named as the lowered tonic, belongs to the octave above.
      return interval.chromatic === semitone
        ? interval
        : { diatonic: interval.diatonic + 7, chromatic: semitone };
    });
  const naturals = [-1, 0, 1, 2, 3, 4, 5];
  return {
    rising: from([...naturals, 6, 7, 8, 9, 10]),
    falling: from([...naturals, -2, -3, -4, -5, -6]),
    repeats: true,
  };
}

/** A scale's intervals from a tonic. Scales of other than seven notes drop double accidentals; seven letters keep them. */
function stepsOn(tonic: PitchName, id: ScaleId): readonly Interval[] {
  const names = spellScale(tonic, id);
  if (names.length === 7) return scaleOf(id).steps;
  return names.map((name) => intervalUp(tonic, plainName(name)));
}

function scaleSteps(tonic: PitchName, { scale, descent }: ScaleSpec): Steps {
  if (scale === 'chromatic') return chromaticSteps(tonic);
  const isClassical = scale === 'melodic_minor' && descent === 'classical';
  return {
    rising: stepsOn(tonic, scale),
    falling: stepsOn(tonic, isClassical ? 'natural_minor' : scale),
    repeats: true,
  };
}

/** A scale sheet for a student, or why there is none. */
export function createScaleSheet(spec: ScaleSpec, student: SheetFor): Result<Draft, SheetRefused> {
  const id = spec.scale;
  const [name = id] = scaleOf(id).names;
  const study: Study = {
    title: `${capital(name).replace(/ scales?$/, '')} scales${patternNames[spec.pattern]}`,
    label: (tonic) => `${printName(tonic)} ${name}`,
    steps: (tonic) => scaleSteps(tonic, spec),
    keyOf: (tonic) => fifthsToKey(scaleFifths(tonic, id), modeOfScale(id)),
    comfortable: comfortableTonics(student, id),
    respell: (tonic) => easiestTonic(tonic, id),
    orderId: id,
    figure: figures[spec.pattern],
    rhythm: spec.rhythm,
    leastOctaves: 1,
    repeats: true,
  };
  return createRunSheet(spec, study, student);
}
