// Sight-reading sheets.

import { chooseOne, createSeededRandom, err, ok, present, type Random, type Result } from '#core';
import {
  findInstrument,
  type Instrument,
  soundingToWritten,
  transpositionOf,
  writtenToSounding,
} from '../../instrument/instrument.ts';
import { type Key, keyFifths, transposeKey } from '../../key/key.ts';
import { type Pitch, pitchToMidi, type WrittenPitch } from '../../pitch/pitch.ts';
import { type Metre, parseMetre } from '../../rhythm/metre.ts';
import { note, part, partBar } from '../../score/create-score.ts';
import type { Part, PartBar } from '../../score/score.ts';
import { easyRegister } from '../../shape/easy-register.ts';
import { type SheetFor, shapeFor, staffRange } from '../../shape/student-shape.ts';
import type { ReadingSpec } from '../../spec/material-spec.ts';
import { ticksPerWhole } from '../rhythm/beat-figure.ts';
import { barTicks } from '../rhythm/beat-grid.ts';
import { composeRhythm, type RhythmLine } from '../rhythm/compose-rhythm.ts';
import { rhythmOptions } from '../rhythm/rhythm-plan.ts';
import { assembleLines, barsAcrossFor, type SheetLine } from '../sheet/assemble-lines.ts';
import { chooseClef, comfortableMiddle } from '../sheet/choose-clef.ts';
import { homeMiddle } from '../sheet/home-middle.ts';
import { noteName } from '../sheet/note-name.ts';
import type { Draft, ShapingNote, SheetRefused } from '../sheet/sheet.ts';
import { comfortableTuneKeys, namedTonic } from '../sheet/student-keys.ts';
import { tempoIn } from '../sheet/tempo.ts';
import { printName } from '../sheet/title.ts';
import { writeLine } from '../sheet/write-line.ts';
import { composeTune, type Tune } from './compose-tune.ts';
import type { HarmonyRoot } from './plan-harmony.ts';
import { breathsAfter, dynamicsFor, joinNotes } from './reading-marks.ts';
import { chooseWindow, type Window } from './reading-window.ts';
import { composeSecondPart } from './second-part.ts';

interface Written {
  readonly line: SheetLine;
  readonly second: readonly PartBar[];
}

/** The key and the notes of it; the first comfortable key that leaves room, or the named one. */
function chooseKey(spec: ReadingSpec, student: SheetFor) {
  const shape = shapeFor(student);
  const range = staffRange(student.instrument, student.stage);
  const clef = chooseClef(shape.readsClefs, [range.low, range.high]);
  const middle = homeMiddle(student, range, clef);
  const named = namedTonic(spec.key, spec.pitch, student.instrument);
  const wanted =
    spec.compass === 'fit' ? shape.readingNotes : spec.compass === 'five_notes' ? 5 : spec.compass;
  const keys =
    named === null ? comfortableTuneKeys(student, spec.mode) : usualKeys({ tonic: named, mode: spec.mode });
  const ledgers = spec.compass === 'fit' || wanted <= shape.readingNotes ? shape.ledgerLines : 6;
  const easy = easyRegister(student.instrument, student.stage);
  let best: { readonly key: Key; readonly window: Window } | null = null;
  for (const key of keys) {
    const window = chooseWindow({ key, range, clef, middle, count: wanted, ledgers, easy });
    if (window === null) continue;
    // Another comfortable key may hold the five notes from the tonic that the first one has no room for.
    if (
      window.notes.length >= Math.min(wanted, 5) &&
      (best === null || best.window.notes.length < window.notes.length)
    ) {
      const isHome = wanted > 6 || window.notes[0]?.degree === 0;
      if (isHome) return { key, window, clef, wanted };
    }
    best ??= { key, window };
  }
  return best === null ? null : { ...best, clef, wanted };
}

/** The key, or its enharmonic twin where it has more than seven sharps or flats. */
function usualKeys(key: Key): readonly Key[] {
  if (Math.abs(keyFifths(key)) <= 7) return [key];
  return [transposeKey(key, { diatonic: 0, chromatic: 0 })];
}

/** Bars: what fits the stage; a question and answer need eight. */
function barsOf(spec: ReadingSpec, shape: { readonly bars: number }): number {
  return spec.bars === 'fit' ? shape.bars : spec.bars;
}

/** A reading sheet for a student, or why there is none. */
export function createReadingSheet(spec: ReadingSpec, student: SheetFor): Result<Draft, SheetRefused> {
  const { instrument } = student;
  const shape = shapeFor(student);
  const chosen = chooseKey(spec, student);
  if (chosen === null) {
    const message = `No key leaves room for three notes around its tonic in the range of the ${instrument.name} at this stage.`;
    return err({ kind: 'NoKeyFits', message });
  }
  const { key, window, clef, wanted } = chosen;
  const random = createSeededRandom(student.seed);
  const bars = barsOf(spec, shape);
  // Six systems of two staves fill a page.
  const fitLines = isForBothHands(spec, student) && bars > 4 ? Math.min(3, shape.lines) : shape.lines;
  const lines = spec.lines === 'fit' ? fitLines : spec.lines;
  const notes: ShapingNote[] = [];
  if (spec.compass !== 'fit' && window.notes.length < wanted)
    notes.push({
      kind: 'CompassCut',
      text: `${wanted} notes became ${window.notes.length}: range of the stage.`,
    });
  const written: Written[] = [];
  let isWidened = false;
  // Lines of a bar or two share systems, and so a metre.
  let first: Metre | null = null;
  for (let line = 0; line < lines; line++) {
    const metre: Metre = bars <= 2 && first !== null ? first : metreFor(random, spec, student);
    first ??= metre;
    const options = rhythmOptions(spec, shape, metre, bars, { line, lines });
    const made = composeLine(random, spec, student, { key, window, clef, metre, line, lines, options });
    if (made === null) {
      const message = `The notes in reach leave no way to a tune in ${printName(key.tonic)} ${key.mode} with leaps up to ${leapOf(spec, shape)}.`;
      return err({ kind: 'RangeTooSmall', message });
    }
    isWidened ||= made.isWidened;
    written.push(made);
  }
  if (isWidened)
    notes.push({
      kind: 'ValuesWidened',
      text: 'The note values asked for do not fill a beat of this metre alone; the beat itself was added.',
    });
  const hands =
    isForBothHands(spec, student) && written.every(({ line, second }) => second.length === line.bars.length);
  const sheetLines = written.map((made) => (hands ? withLeftHand(made) : made.line));
  const score = assembleLines(
    {
      title: `Reading in ${printName(key.tonic)} ${key.mode}`,
      instrument,
      tempo: tempoIn(
        present(first, 'at least one line'),
        spec.tempo === 'fit' ? shape.tempo.reading : spec.tempo,
      ),
      swing: null,
      barsAcross: barsAcrossFor(sheetLines),
      opensSystems: bars > 2,
    },
    sheetLines,
  );
  const second = written.flatMap((line) => line.second);
  if (hands || spec.second === 'none' || second.length !== score.bars.length) return ok({ score, notes });
  return ok({
    score: { ...score, parts: [...withName(score.parts, spec), secondPart(spec, instrument, second)] },
    notes,
  });
}

/**
 * Whether a pianist reads on two staves: from elementary on, unless a compass is named, which is one hand's (common
 * practice, no source).
 */
function isForBothHands(spec: ReadingSpec, student: SheetFor): boolean {
  return (
    shapeFor(student).isKeyboard &&
    student.stage !== 'beginner' &&
    spec.compass === 'fit' &&
    spec.second === 'none'
  );
}

/** The line with its second part as the left hand, under the same braces. */
function withLeftHand({ line, second }: Written): SheetLine {
  return {
    ...line,
    clefs: [...line.clefs, 'bass'],
    bars: line.bars.map((bar, i) => ({
      ...bar,
      staves: [...bar.staves, present(second[i]?.voices[0], 'a left hand in every bar').events],
    })),
  };
}

function withName(parts: readonly Part[], spec: ReadingSpec): readonly Part[] {
  return parts.map((p) => ({ ...p, name: spec.second === 'bass' ? 'Student' : '1', abbreviation: '' }));
}

const pianoOf = () => present(findInstrument('piano'), 'the piano is an instrument');

function secondPart(spec: ReadingSpec, instrument: Instrument, bars: readonly PartBar[]): Part {
  if (spec.second === 'bass') return part(pianoOf(), bars, { name: 'Teacher' });
  return part(instrument, bars, { name: '2' });
}

/** 4/4 first; three in a bar, and from intermediate on compound time, as the seed has it. */
function metreFor(random: Random, spec: ReadingSpec, { stage }: SheetFor): Metre {
  if (spec.metre !== 'fit') return present(parseMetre(spec.metre), 'a metre of the list');
  const usual = stage === 'beginner' ? ['4/4', '4/4', '3/4'] : ['4/4', '3/4', '2/4'];
  const more = stage === 'intermediate' || stage === 'advanced' ? ['6/8'] : [];
  return present(parseMetre(chooseOne(random, [...usual, ...more])), 'a usual metre');
}

function leapOf(spec: ReadingSpec, shape: { readonly largestLeap: number }): number {
  return spec.leap === 'fit' ? shape.largestLeap : spec.leap;
}

interface LinePlace {
  readonly key: Key;
  readonly window: Window;
  readonly clef: ReturnType<typeof chooseClef>;
  readonly metre: Metre;
  readonly line: number;
  readonly lines: number;
  readonly options: Parameters<typeof composeRhythm>[1];
}

/** One line: a rhythm, a tune on it, its marks, and the second part. */
function composeLine(
  random: Random,
  spec: ReadingSpec,
  student: SheetFor,
  { key, window, clef, metre, line, lines, options }: LinePlace,
): (Written & { readonly isWidened: boolean }) | null {
  const shape = shapeFor(student);
  const { instrument } = student;
  const rhythm = composeRhythm(random, options);
  const range = staffRange(instrument, student.stage);
  const tune = composeTune(random, rhythm, {
    key,
    metre,
    notes: window.notes,
    highest: pitchToMidi(range.high),
    leap: leapOf(spec, shape),
    grade: options.grade,
  });
  if (tune === null) return null;
  const marked = {
    slots: rhythm.slots,
    pitches: tune.pitches,
    bar: barTicks(metre),
    beat: ticksPerWhole / 4,
  };
  const hasMarks = spec.marks === 'some' || (spec.marks === 'fit' && options.grade >= 4);
  const joins = hasMarks ? joinNotes(random, marked) : [];
  const dynamics =
    hasMarks || (spec.marks === 'fit' && options.grade >= 3) ? dynamicsFor(random, rhythm.plan) : [];
  const breaths = shape.breathes ? breathsAfter(marked, rhythm.plan, shape.barsOnABreath) : new Set<number>();
  const events = rhythm.slots.map((slot, i) => {
    const pitch = tune.pitches[i] ?? null;
    if (slot.isRest || pitch === null) return { slot, event: null };
    const join = joins[i];
    const event = note(
      pitch,
      { n: 1, d: 1 },
      {
        slur: join?.slur ?? null,
        articulations: [...(join?.articulations ?? []), ...(breaths.has(i) ? (['breath'] as const) : [])],
        lyric: noteName(pitch, key, spec.names),
      },
    );
    return { slot, event };
  });
  const bars = writeLine(metre, options.bars, events).map((staff, i) => ({
    staves: [staff],
    directions: dynamics[i] ?? [],
  }));
  const label = lines > 1 ? String(line + 1) : null;
  const second =
    spec.second === 'none' && !isForBothHands(spec, student)
      ? []
      : secondBars(random, spec, student, { key, clef, metre, rhythm, tune, window });
  return { line: { key, metre, clefs: [clef], bars, label }, second, isWidened: rhythm.isWidened };
}

interface SecondPlace {
  readonly key: Key;
  readonly clef: ReturnType<typeof chooseClef>;
  readonly metre: Metre;
  readonly rhythm: RhythmLine;
  readonly tune: Tune;
  readonly window: Window;
}

/** The second part's bars; empty where none can be made. */
function secondBars(
  random: Random,
  spec: ReadingSpec,
  { instrument, stage }: SheetFor,
  { key, clef, metre, rhythm, tune, window }: SecondPlace,
): readonly PartBar[] {
  const isBass = spec.second !== 'duet';
  const piano = pianoOf();
  const isOwnHand = spec.second === 'none';
  const secondKey = isBass && !isOwnHand ? transposeKey(key, transpositionOf(instrument)) : key;
  const range = isBass
    ? staffRange(piano, isOwnHand ? stage : 'intermediate', 'left')
    : staffRange(instrument, stage);
  const secondClef = isBass ? 'bass' : clef;
  const notes = isBass
    ? chooseWindow({
        key: secondKey,
        range,
        clef: 'bass',
        middle: comfortableMiddle(range, 'bass'),
        count: 12,
        ledgers: 2,
        easy: null,
      })?.notes
    : window.notes;
  if (notes === undefined) return [];
  const heard = (pitch: WrittenPitch): Pitch =>
    isBass ? soundingToWritten(piano, writtenToSounding(instrument, pitch)) : pitch;
  const tuneAt = (ticks: number): Pitch | null => {
    const i = rhythm.slots.findIndex((slot) => slot.at <= ticks && ticks < slot.at + slot.length);
    const pitch = tune.pitches[i] ?? null;
    return pitch === null ? null : heard(pitch);
  };
  const harmony: readonly HarmonyRoot[] = tune.harmony;
  // Two hands on one keyboard: the left one keeps off the keys of the right.
  const keys = tune.pitches.flatMap((pitch) => (pitch === null ? [] : [pitchToMidi(pitch)]));
  const ceiling = isOwnHand ? Math.min(...keys) - 1 : Number.POSITIVE_INFINITY;
  const found = composeSecondPart(random, harmony, {
    metre,
    notes,
    isMinor: key.mode === 'minor',
    isBass,
    tuneAt,
    highest: Math.min(pitchToMidi(range.high), ceiling),
  });
  if (found === null) return [];
  const events = found.slots.map((slot, i) => ({
    slot,
    event: note(present(found.pitches[i], 'a pitch for every slot'), { n: 1, d: 1 }),
  }));
  return writeLine(metre, harmony.length, events).map((staff) =>
    partBar({ key: secondKey, clefs: [secondClef] }, staff),
  );
}
