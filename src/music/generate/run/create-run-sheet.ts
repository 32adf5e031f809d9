// What scale and arpeggio sheets share: which keys, how far up, in which metre and values, for which hands.

import { err, ok, present, type Result } from '#core';
import { type Clef, isInRange, rangeAtStage, type WrittenRange } from '../../instrument/instrument.ts';
import type { Key } from '../../key/key.ts';
import {
  type Pitch,
  type PitchName,
  pitchToMidi,
  staffStep,
  type WrittenPitch,
  written,
} from '../../pitch/pitch.ts';
import { type Metre, parseMetre } from '../../rhythm/metre.ts';
import { easyRegister } from '../../shape/easy-register.ts';
import { type SheetFor, type StudentShape, shapeFor } from '../../shape/student-shape.ts';
import type { ScaleSpec } from '../../spec/material-spec.ts';
import { barTicks } from '../rhythm/beat-grid.ts';
import { chooseClef, ledgerLines } from '../sheet/choose-clef.ts';
import type { Draft, ShapingNote, SheetRefused } from '../sheet/sheet.ts';
import { namedTonic, tonicsFrom } from '../sheet/student-keys.ts';
import { printName } from '../sheet/title.ts';
import { type PlacedRun, placeRun, runPitch, type Steps } from './place-run.ts';
import { fingeringsFor } from './run-fingering.ts';
import { cellIn, chooseRunMetre, type RunValue } from './run-metre.ts';
import type { RunFigure } from './run-notes.ts';
import { type Passage, writePassages } from './run-study.ts';
import { type Cell, dottedCell, timeRun, turnedCells } from './time-run.ts';

/** The fields scale and arpeggio specs share. */
export type RunSpec = Pick<
  ScaleSpec,
  | 'keys'
  | 'order'
  | 'start'
  | 'pitch'
  | 'octaves'
  | 'direction'
  | 'value'
  | 'metre'
  | 'articulation'
  | 'fingerings'
  | 'hands'
  | 'names'
  | 'tempo'
>;

/** What is studied: a scale or a chord, on any tonic. */
export interface Study {
  readonly title: string;
  readonly label: (tonic: PitchName) => string;
  readonly steps: (tonic: PitchName) => Steps;
  readonly keyOf: (tonic: PitchName) => Key;
  /** Most comfortable tonics first. */
  readonly comfortable: readonly PitchName[];
  /** The usual spelling of a tonic. */
  readonly respell: (tonic: PitchName) => PitchName;
  /** Tonics by an interval from one on. */
  readonly orderId: Parameters<typeof tonicsFrom>[2];
  readonly figure: RunFigure;
  readonly rhythm: ScaleSpec['rhythm'];
  /** Whether the notes repeat at the octave; chords past it do not. */
  readonly repeats: boolean;
}

/** What a place in the range costs: ledger lines, distance from the middle, and notes outside a beginner's easy register. */
function placeCost(student: SheetFor, range: WrittenRange, clefs: readonly Clef[]) {
  const middle = (staffStep(range.low) + staffStep(range.high)) / 2;
  const easy = easyRegister(student.instrument, student.stage);
  return (pitches: readonly WrittenPitch[]): number => {
    const clef = chooseClef(clefs, pitches);
    const average = pitches.reduce((sum, pitch) => sum + staffStep(pitch), 0) / pitches.length;
    const ledgers = pitches.reduce((sum, pitch) => sum + ledgerLines(clef, pitch), 0) / pitches.length;
    const strained =
      easy === null ? 0 : pitches.filter((pitch) => !isInRange(easy, pitch)).length / pitches.length;
    return ledgers * 4 + Math.abs(average - middle) + strained * 20;
  };
}

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

interface Placed {
  readonly tonic: PitchName;
  readonly staves: readonly { readonly clef: Clef; readonly run: PlacedRun }[];
}

/** Places one key on the staff, or the staves of both hands. */
function placeKey(
  spec: RunSpec,
  study: Study,
  student: SheetFor,
  shape: StudentShape,
  tonic: PitchName,
): Placed | null {
  const { instrument, stage } = student;
  const steps = study.steps(tonic);
  const range = rangeAtStage(instrument, stage);
  const fitOctaves = Math.min(shape.octaves, shape.isKeyboard ? 2 : 4);
  const octaves = spec.octaves === 'fit' ? fitOctaves : spec.octaves;
  const wanted = { name: tonic, steps, figure: study.figure, direction: spec.direction, octaves };
  if (!shape.isKeyboard) {
    const run = placeRun({ ...wanted, range, cost: placeCost(student, range, shape.readsClefs) });
    if (run === null) return null;
    const clef = chooseClef(shape.readsClefs, pitchesOf(run, steps));
    return { tonic, staves: [{ clef, run }] };
  }
  const hands = spec.hands === 'fit' ? (student.stage === 'beginner' ? 'right' : 'both') : spec.hands;
  if (hands !== 'both') {
    const clef: Clef = hands === 'right' ? 'treble' : 'bass';
    const half = halfOf(range, clef);
    const run =
      placeRun({ ...wanted, range: half, cost: placeCost(student, half, [clef]) }) ??
      placeRun({ ...wanted, range, cost: placeCost(student, range, [clef]) });
    return run === null ? null : { tonic, staves: [{ clef, run }] };
  }
  const most = typeof octaves === 'number' ? octaves : 1;
  for (let tried = most; tried >= 0; tried--) {
    const span = tried === 0 ? ('five_notes' as const) : octaves === 'five_notes' ? octaves : tried;
    const right = placeRun({ ...wanted, octaves: span, range, cost: placeCost(student, range, ['treble']) });
    if (right === null) continue;
    for (const down of [1, 2, 3]) {
      const left = { ...right, tonic: written({ ...right.tonic, octave: right.tonic.octave - down }) };
      if (!pitchesOf(left, steps).every((pitch) => isInRange(range, pitch))) continue;
      if (down < 3 && ledgersOf('bass', left, steps) > 1.2 && ledgersOf('treble', right, steps) < 1) {
        const lower = { ...left, tonic: written({ ...left.tonic, octave: left.tonic.octave - 1 }) };
        if (pitchesOf(lower, steps).every((pitch) => isInRange(range, pitch))) continue;
      }
      return {
        tonic,
        staves: [
          { clef: 'treble', run: right },
          { clef: 'bass', run: left },
        ],
      };
    }
  }
  const run = placeRun({ ...wanted, range, cost: placeCost(student, range, ['treble']) });
  return run === null ? null : { tonic, staves: [{ clef: 'treble', run }] };
}

const middleC: Pitch = { letter: 'C', alter: 0, octave: 4 };

/** The part of a keyboard's range that belongs to a clef. */
function halfOf(range: WrittenRange, clef: Clef): WrittenRange {
  const c = written(middleC);
  if (clef === 'bass') {
    const top = written({ letter: 'E', alter: 0, octave: 4 });
    return { low: range.low, high: isInRange(range, top) ? top : range.high };
  }
  return { low: isInRange(range, c) ? c : range.low, high: range.high };
}

function pitchesOf({ tonic, run }: PlacedRun, steps: Steps): readonly WrittenPitch[] {
  return [...run.notes, run.last].map((note) => runPitch(tonic, steps, note));
}

function ledgersOf(clef: Clef, run: PlacedRun, steps: Steps): number {
  const pitches = pitchesOf(run, steps);
  return pitches.reduce((sum, pitch) => sum + ledgerLines(clef, pitch), 0) / pitches.length;
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
        clef,
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
  const only = passages[0];
  if (only === undefined) {
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
