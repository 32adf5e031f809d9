// Play-and-rest studies: a few bars to play, a few to listen, over chords or a held one, with the notes to choose from.

import { createSeededRandom, err, ok, present, type Random, type Result } from '#core';
import type { ChartBar } from '../../chart/chart.ts';
import { unfoldRepeats } from '../../chart/chart.ts';
import type { Chord } from '../../chord/chord.ts';
import { type ChordQualityId, qualityOf } from '../../chord/quality.ts';
import { fraction } from '../../fraction/fraction.ts';
import { fifthsToKey, type Key } from '../../key/key.ts';
import { type PitchName, pitchClass, pitchToMidi, staffStep } from '../../pitch/pitch.ts';
import { type Metre, parseMetre } from '../../rhythm/metre.ts';
import { easiestTonic, type ScaleId, scaleFifths, scaleOf, spellScale } from '../../scale/scale.ts';
import { note, slash, swingMark, words } from '../../score/create-score.ts';
import type { Direction } from '../../score/score.ts';
import { type SheetFor, shapeFor, staffRange } from '../../shape/student-shape.ts';
import { noteValues } from '../../spec/material-fields.ts';
import type { PhraseSpec } from '../../spec/material-spec.ts';
import { symbolsOf } from '../chart/chord-symbols.ts';
import { type ChordSpan, chordTimeline } from '../chart/chord-timeline.ts';
import { slashBar } from '../chart/slash-bar.ts';
import { barsPlayed, chartOnTonic, type StudentChart, studentCharts } from '../chart/student-chart.ts';
import { composeLine, silenceWithoutChord } from '../line/compose-line.ts';
import { usualPitch } from '../line/line-notes.ts';
import { type Slot, ticksToFraction } from '../rhythm/beat-figure.ts';
import { barTicks } from '../rhythm/beat-grid.ts';
import { composeRhythm } from '../rhythm/compose-rhythm.ts';
import { rhythmOptions } from '../rhythm/rhythm-plan.ts';
import { assembleLines, type LineBar, type SheetLine } from '../sheet/assemble-lines.ts';
import { chooseClef, ledgerLines } from '../sheet/choose-clef.ts';
import { homeMiddle } from '../sheet/home-middle.ts';
import { ladder, type Rung } from '../sheet/ladder.ts';
import type { Draft, ShapingNote, SheetRefused } from '../sheet/sheet.ts';
import { comfortableTonics, modeOfScale, namedTonic } from '../sheet/student-keys.ts';
import { tempoIn } from '../sheet/tempo.ts';
import { printName } from '../sheet/title.ts';
import { type TimedEvent, writeLine } from '../sheet/write-line.ts';
import { barsOf, turnsOver } from './turns.ts';

/** Neighbouring notes of the scale from a tonic up; null where the range has no room for three. */
function notesToUse(student: SheetFor, names: readonly PitchName[], count: number): readonly Rung[] | null {
  const range = staffRange(student.instrument, student.stage);
  const clef = chooseClef(shapeFor(student).readsClefs, [range.low, range.high]);
  const rungs = ladder(names, range);
  const middle = homeMiddle(student, range, clef);
  for (let size = Math.min(count, rungs.length); size >= Math.min(3, count); size--) {
    const found = rungs.flatMap(({ degree }, i) => {
      const notes = rungs.slice(i, i + size);
      if (degree !== 0 || notes.length < size) return [];
      const average = notes.reduce((sum, { pitch }) => sum + staffStep(pitch), 0) / size;
      const ledgers = notes.reduce((sum, { pitch }) => sum + ledgerLines(clef, pitch), 0) / size;
      return [{ notes, cost: Math.abs(average - middle) + 4 * ledgers }];
    });
    const best = found.sort((a, b) => a.cost - b.cost)[0];
    if (best !== undefined) return best.notes;
  }
  // No tonic with room above it: the notes around one.
  const tonic = rungs.findIndex(({ degree }) => degree === 0);
  if (tonic < 0) return null;
  const from = Math.max(0, Math.min(tonic - Math.floor(count / 2), rungs.length - count));
  return rungs.slice(from, from + count);
}

/** The chord held under a scale when no chart is given. */
function homeChord(tonic: PitchName, id: ScaleId): Chord {
  const has = (semitones: number) => scaleOf(id).steps.some(({ chromatic }) => chromatic === semitones);
  const quality: ChordQualityId =
    id === 'blues' || id === 'major_blues' || id === 'altered'
      ? 'dominant_7'
      : !has(7) && has(3) && has(6)
        ? 'half_diminished'
        : modeOfScale(id) === 'minor'
          ? has(10)
            ? 'minor_7'
            : 'minor'
          : has(7)
            ? has(10) && !has(11)
              ? 'dominant_7'
              : 'major'
            : 'augmented';
  return { root: tonic, quality: qualityOf(quality), bass: null };
}

interface Ground {
  readonly tonic: PitchName;
  readonly key: Key;
  readonly notes: readonly Rung[];
  /** One chart bar for each bar of the study. */
  readonly bars: readonly ChartBar[];
}

const wholeBar = { at: fraction(0), share: fraction(1) };
const crotchet = fraction(1, 4);

function heldBars(chord: Chord, count: number): readonly ChartBar[] {
  return Array.from({ length: count }, (_, i) => ({
    number: i + 1,
    section: null,
    chords: [{ chord, ...wholeBar }],
    isSame: i > 0,
    repeatStart: false,
    repeatEnd: false,
    ending: null,
  }));
}

/** The chart's bars as played, from the start again as often as the study needs them. */
function loopedBars(chart: StudentChart, count: number): readonly ChartBar[] {
  const played = unfoldRepeats(chart.chart.bars);
  return Array.from({ length: count }, (_, i) => {
    const bar = present(played[i % played.length], 'a chart has bars');
    return i > 0 && i % played.length === 0 ? { ...bar, isSame: false } : bar;
  });
}

/** Tonic, key, notes and chords: the first comfortable tonic that leaves room, or the named one. */
function findGround(spec: PhraseSpec, student: SheetFor, bars: number, count: number): Ground | null {
  const id = spec.scale;
  const named = namedTonic(spec.start, spec.pitch, student.instrument);
  const tonics = named === null ? comfortableTonics(student, id) : [easiestTonic(named, id)];
  for (const tonic of tonics) {
    const notes = notesToUse(student, spellScale(tonic, id), count);
    if (notes === null) continue;
    const scaleKey = fifthsToKey(scaleFifths(tonic, id), modeOfScale(id));
    if (spec.chart === null)
      return { tonic, key: scaleKey, notes, bars: heldBars(homeChord(tonic, id), bars) };
    const chart = chartFor(spec, spec.chart, student, tonic);
    return { tonic, key: chart.key, notes, bars: loopedBars(chart, bars) };
  }
  return null;
}

/** The chart on the tonic of the scale, if both can share one; else as near to it as its own mode allows. */
function chartFor(spec: PhraseSpec, chart: string, student: SheetFor, tonic: PitchName): StudentChart {
  const onTonic = chartOnTonic(chart, tonic);
  if (pitchClass(onTonic.key.tonic) === pitchClass(tonic)) return onTonic;
  return studentCharts({ chart, pitch: spec.pitch, key: 'fit' }, student)[0] ?? onTonic;
}

/** The rhythm of a turn, without rests at its start. */
function turnRhythm(
  random: Random,
  spec: PhraseSpec,
  student: SheetFor,
  metre: Metre,
  bars: number,
): readonly Slot[] {
  const shape = shapeFor(student);
  const fields = {
    grade: spec.grade,
    // What swings is quavers: semiquavers would be played straight between them.
    values: spec.feel === 'swing' ? noteValues.filter((value) => value !== 'semiquaver') : ('fit' as const),
    rests: 'fit',
    ties: 'fit',
    syncopation: 'fit',
    harder: false,
  } as const;
  const options = rhythmOptions(fields, shape, metre, bars, { line: 0, lines: 1 });
  return composeRhythm(random, options).slots;
}

/** A play-and-rest sheet for a student, or why there is none. */
export function createPhraseSheet(spec: PhraseSpec, student: SheetFor): Result<Draft, SheetRefused> {
  const shape = shapeFor(student);
  const metre = present(parseMetre(spec.metre === 'fit' ? '4/4' : spec.metre), 'a metre of the list');
  const turns = turnsOver({
    play: spec.play,
    rest: spec.rest,
    rounds: spec.rounds === 'fit' ? shape.rounds : spec.rounds,
    isFixed: spec.rounds !== 'fit',
    chart: spec.chart === null ? null : barsPlayed(spec.chart),
  });
  const bars = barsOf(turns);
  const wanted =
    spec.compass === 'fit' ? Math.min(shape.phraseNotes, scaleOf(spec.scale).steps.length + 1) : spec.compass;
  const ground = findGround(spec, student, bars, wanted);
  if (ground === null) {
    const message = `The range of the ${student.instrument.name} at this stage has no room for this scale’s tonic.`;
    return err({ kind: 'RangeTooSmall', message });
  }
  const random = createSeededRandom(student.seed);
  const { key, notes: rungs, tonic } = ground;
  const clef = chooseClef(
    shape.readsClefs,
    rungs.map(({ pitch }) => pitch),
  );
  const spans = chordTimeline(ground.bars, metre);
  const timed: TimedEvent[] = [];
  const labels = new Map<number, Direction>();
  for (const { bar, play, rest, goesOn } of turns) {
    labels.set(bar, words(spec.content === 'written' ? 'play' : 'your turn', { style: 'italic' }));
    timed.push(...playBars(random, spec, student, { ground, metre, spans, bar, bars: play }));
    const after = bar + play;
    if (goesOn > 0) labels.set(after - goesOn, words('to the end', { style: 'italic' }));
    if (rest > 0) labels.set(after, words('listen', { style: 'italic' }));
    for (let i = 0; i < rest; i++) {
      const slot = { at: (after + i) * barTicks(metre), length: barTicks(metre), isRest: true, tuplet: null };
      timed.push({ slot, event: null });
    }
  }
  const staff = writeLine(metre, bars, splitAtBars(timed, barTicks(metre)));
  const body = staff.map((events, i): LineBar => {
    const label = labels.get(i);
    return {
      staves: [events],
      chords: symbolsOf(spans, i, barTicks(metre)),
      directions: label === undefined ? [] : [label],
    };
  });
  const lines: SheetLine[] = [{ key, metre, clefs: [clef], bars: body, label: null }];
  if (spec.showScale)
    lines.unshift({
      key,
      metre,
      clefs: [clef],
      bars: [shownScale(rungs)],
      label: 'Notes to use',
      freeNotes: rungs.length,
    });
  const notes: ShapingNote[] =
    spec.compass !== 'fit' && rungs.length < spec.compass
      ? [{ kind: 'CompassCut', text: `${spec.compass} notes became ${rungs.length}: range of the stage.` }]
      : [];
  const [name = spec.scale] = scaleOf(spec.scale).names;
  const score = assembleLines(
    {
      title: `Play and listen: ${printName(tonic)} ${name}`,
      instrument: student.instrument,
      tempo: tempoIn(metre, spec.tempo === 'fit' ? shape.tempo.line : spec.tempo),
      swing: spec.feel === 'swing' ? swingMark() : null,
      barsAcross: 4,
      opensSystems: true,
    },
    lines,
  );
  return ok({ score, notes });
}

/** Long rests cut at barlines, so that each silent bar is one. */
function splitAtBars(timed: readonly TimedEvent[], length: number): readonly TimedEvent[] {
  return timed.flatMap((t): readonly TimedEvent[] => {
    const { at, length: held } = t.slot;
    if (t.event !== null || Math.floor(at / length) === Math.floor((at + held - 1) / length)) return [t];
    const border = (Math.floor(at / length) + 1) * length;
    const rest2 = { ...t, slot: { ...t.slot, at: border, length: at + held - border } };
    return [{ ...t, slot: { ...t.slot, length: border - at } }, ...splitAtBars([rest2], length)];
  });
}

interface PlayedTurn {
  readonly ground: Ground;
  readonly metre: Metre;
  readonly spans: readonly ChordSpan[];
  /** First bar, and how many. */
  readonly bar: number;
  readonly bars: number;
}

/** What stands in the bars to play. */
function playBars(
  random: Random,
  spec: PhraseSpec,
  student: SheetFor,
  turn: PlayedTurn,
): readonly TimedEvent[] {
  const { metre, bar, bars, ground, spans } = turn;
  const length = barTicks(metre);
  const from = bar * length;
  if (spec.content === 'slashes')
    return Array.from({ length: bars }, (_, i) => slashBar(metre, from + i * length)).flat();
  const slots = turnRhythm(random, spec, student, metre, bars).map((slot) => ({
    ...slot,
    at: slot.at + from,
  }));
  if (spec.content === 'rhythm') {
    return slots.map((slot) => ({
      slot,
      event: slot.isRest ? null : slash(ticksToFraction(slot.length), { hasStem: true }),
    }));
  }
  const shape = shapeFor(student);
  const lowest = present(ground.notes[0], 'notes to use').pitch;
  const highest = present(ground.notes.at(-1), 'notes to use').pitch;
  const audible = silenceWithoutChord(slots, spans);
  const allowed = new Set(ground.notes.map(({ pitch }) => pitchToMidi(pitch)));
  const options = {
    key: ground.key,
    metre,
    spans,
    range: { low: lowest, high: highest },
    content: 'melodic' as const,
    isChromatic: false,
    fromRoots: false,
    models: [],
    contrasts: [],
    among: allowed,
  };
  for (const leap of [Math.max(3, shape.largestLeap), 8, 15]) {
    const pitches = composeLine(random, audible, { ...options, leap });
    if (pitches === null) continue;
    return audible.map((slot, i) => {
      const pitch = pitches[i] ?? null;
      return { slot, event: pitch === null ? null : note(pitch, ticksToFraction(slot.length)) };
    });
  }
  // No tone of the chord among the few notes: the rhythm alone, on notes of the player's own.
  return slots.map((slot) => ({
    slot,
    event: slot.isRest ? null : slash(ticksToFraction(slot.length), { hasStem: true }),
  }));
}

/** The notes to choose from: heads alone, in a bar out of time. */
function shownScale(rungs: readonly Rung[]): LineBar {
  return { staves: [rungs.map(({ pitch }) => note(usualPitch(pitch), crotchet, { hasStem: false }))] };
}
