// What scale and arpeggio sheets share: which keys, how far up, in which metre and values, for which hands.

import { err, ok, present, type Result } from '#core';
import { type PitchName, pitchToMidi } from '../../pitch/pitch.ts';
import { type Metre, parseMetre } from '../../rhythm/metre.ts';
import { type SheetFor, type StudentShape, shapeFor } from '../../shape/student-shape.ts';
import { barTicks } from '../rhythm/beat-grid.ts';
import type { Draft, ShapingNote, SheetRefused } from '../sheet/sheet.ts';
import { namedTonic, tonicsFrom } from '../sheet/student-keys.ts';
import { printName } from '../sheet/title.ts';
import { placeKey } from './place-key.ts';
import { type PlacedRun, runPitch } from './place-run.ts';
import { fingeringsFor } from './run-fingering.ts';
import { cellIn, chooseRunMetre, type RunValue } from './run-metre.ts';
import { type Passage, writePassages } from './run-study.ts';
import type { RunSpec, Study } from './run-study-spec.ts';
import { type Cell, dottedCell, timeRun, turnedCells } from './time-run.ts';

/** The tonics to try, in order, and how many of them are wanted. */
function wantedTonics(
  spec: RunSpec,
  study: Study,
  student: SheetFor,
  shape: StudentShape,
): { readonly tonics: readonly PitchName[]; readonly count: number; readonly isNamed: boolean } {
  const named = namedTonic(spec.start, spec.pitch, student.instrument);
  const count =
    spec.keys === 'fit' ? (named === null && study.rhythm !== 'turned' ? shape.keys : 1) : spec.keys;
  const start = named === null ? study.comfortable[0] : study.respell(named);
  const first = present(start, 'an instrument has comfortable keys');
  if (spec.order !== 'comfortable')
    return { tonics: tonicsFrom(first, spec.order, study.orderId), count, isNamed: named !== null };
  const others = study.comfortable.filter((tonic) => printName(tonic) !== printName(first));
  // Beyond the comfortable keys the circle goes on, for whoever asks for twelve.
  const rest = tonicsFrom(first, 'fourths', study.orderId);
  const names = [first, ...others, ...rest];
  const unique = names.filter((tonic, i) => names.findIndex((t) => samePitch(t, tonic)) === i);
  return { tonics: unique, count, isNamed: named !== null };
}

function samePitch(a: PitchName, b: PitchName): boolean {
  const midi = (name: PitchName) => pitchToMidi({ ...name, octave: 4 });
  return (midi(a) - midi(b)) % 12 === 0;
}

/** The metre and cells of a passage; a named metre the value does not fill takes another value. */
function timeOf(spec: RunSpec, study: Study, shape: StudentShape, run: PlacedRun) {
  const wanted: RunValue = spec.value === 'fit' ? valueFor(shape, run) : spec.value;
  const named = spec.metre === 'fit' ? null : parseMetre(spec.metre);
  const metre: Metre = named ?? chooseRunMetre(wanted, run.run.notes.length, study.figure.offsets.length);
  const bar = barTicks(metre);
  const tryValues: readonly RunValue[] = [wanted, 'quaver', 'crotchet', 'semiquaver'];
  const value = present(
    tryValues.find((v) => cellIn(metre, v) !== null),
    'quavers or semiquavers fill any bar',
  );
  const even = present(cellIn(metre, value), 'the value fills the bar');
  const isSimple = metre.unit < 8;
  const cells = ((): readonly Cell[] => {
    if (study.rhythm === 'even' || !isSimple) return [even];
    if (study.rhythm === 'turned') return turnedCells;
    return [dottedCell(value, study.rhythm === 'long_short')];
  })();
  const lengths = (cell: Cell) => cell.lengths.reduce((a, b) => a + b, 0);
  const fitting = cells.filter((cell) => bar % lengths(cell) === 0);
  return { metre, cells: fitting.length > 0 ? fitting : [even], isWidened: value !== wanted };
}

/** A single octave stays in the slower value: it is over in a bar otherwise. */
function valueFor(shape: StudentShape, run: PlacedRun): RunValue {
  return shape.scaleValue === 'semiquaver' && run.run.notes.length < 20 ? 'quaver' : shape.scaleValue;
}

/** A sheet of runs, or why there is none. */
export function createRunSheet(spec: RunSpec, study: Study, student: SheetFor): Result<Draft, SheetRefused> {
  const shape = shapeFor(student);
  const notes: ShapingNote[] = [];
  const { tonics, count } = wantedTonics(spec, study, student, shape);
  const passages: Passage[] = [];
  let keys = 0;
  for (const [i, tonic] of tonics.entries()) {
    if (keys >= count) break;
    const placed = placeKey(spec, study, student, shape, tonic);
    const label = study.label(tonic);
    if (placed === null) {
      if (i < count) {
        const text = `${label} is left out: the range of this stage has no room for it.`;
        notes.push({ kind: 'KeyLeftOut', key: label, text });
      }
      continue;
    }
    keys++;
    const first = present(placed.staves[0], 'a staff').run;
    const cut = cutNote(spec, first, label, study);
    if (cut !== null) notes.push(cut);
    const { metre, cells, isWidened } = timeOf(spec, study, shape, first);
    if (isWidened && !notes.some((note) => note.kind === 'ValuesWidened'))
      notes.push({
        kind: 'ValuesWidened',
        text: 'The note value asked for does not fill this metre; another one stands in.',
      });
    const steps = study.steps(tonic);
    for (const [c, cell] of cells.entries()) {
      const timed = timeRun(first.run, cell, barTicks(metre));
      const staves = placed.staves.map(({ clef, run }) => ({
        clef: shape.isKeyboard ? clef : present(shape.readsClefs[0], 'an instrument has a clef'),
        clefs: shape.readsClefs,
        pitches: timed.map(({ note }) => runPitch(run.tonic, steps, note)),
      }));
      const fingerings = spec.fingerings
        ? staves.map(({ pitches, clef }) =>
            fingeringsFor(
              student,
              pitches,
              shape.isKeyboard ? { hand: clef === 'bass' ? 'left' : 'right' } : {},
            ),
          )
        : [];
      const name = cells.length > 1 ? (c === 0 ? `${label}: six rhythms` : `${c + 1}`) : label;
      passages.push({ label: name, key: study.keyOf(tonic), metre, timed, staves, fingerings });
    }
  }
  if (passages.length === 0) {
    // No key with room for two hands an octave apart: one hand, then.
    if (shape.isKeyboard && spec.hands !== 'right' && spec.hands !== 'left')
      return createRunSheet({ ...spec, hands: 'right' }, study, student);
    return err({
      kind: 'NoKeyFits',
      message: `${study.title}: no key asked for has room in the range of the ${student.instrument.name} at this stage.`,
    });
  }
  const marks = {
    articulation: spec.articulation,
    names: spec.names,
    tempo: spec.tempo === 'fit' ? shape.tempo.scale : spec.tempo,
    title: study.title,
  };
  return ok({ score: writePassages(student, passages, marks), notes });
}

function cutNote(spec: RunSpec, run: PlacedRun, key: string, study: Study): ShapingNote | null {
  if (!study.repeats) {
    if (run.octaves > 0) return null;
    return { kind: 'OctavesCut', key, text: `${key}: the highest tones are left out: range of the stage.` };
  }
  if (typeof spec.octaves !== 'number' || run.octaves >= spec.octaves) return null;
  const wanted = spec.octaves === 1 ? 'One octave' : `${spec.octaves} octaves`;
  const became =
    run.octaves === 0 ? 'what the range holds' : run.octaves === 1 ? 'one octave' : `${run.octaves} octaves`;
  return { kind: 'OctavesCut', key, text: `${key}: ${wanted} became ${became}: range of the stage.` };
}
