// Melodic studies over a chart.

import { createSeededRandom, err, ok, present, type Random, type Result } from '#core';
import { type ChartBar, unfoldRepeats } from '../../chart/chart.ts';
import { guideTones } from '../../chord/chord.ts';
import type { WrittenRange } from '../../instrument/instrument.ts';
import { letters, pitchClass, pitchToMidi, staffStep, type WrittenPitch } from '../../pitch/pitch.ts';
import { type Metre, parseMetre } from '../../rhythm/metre.ts';
import { note, swingMark, words } from '../../score/create-score.ts';
import type { Articulation, Direction } from '../../score/score.ts';
import { type SheetFor, type StudentShape, shapeFor, staffRange } from '../../shape/student-shape.ts';
import type { LineSpec } from '../../spec/material-spec.ts';
import { symbolsOf } from '../chart/chord-symbols.ts';
import { type ChordSpan, chordTimeline, spanAt } from '../chart/chord-timeline.ts';
import { slashBar } from '../chart/slash-bar.ts';
import { hasSevenths, type StudentChart, studentCharts } from '../chart/student-chart.ts';
import type { Slot } from '../rhythm/beat-figure.ts';
import { barTicks } from '../rhythm/beat-grid.ts';
import { fingeringsFor } from '../run/run-fingering.ts';
import { assembleLines, barsAcrossFor, type LineBar } from '../sheet/assemble-lines.ts';
import { chooseClef, comfortableMiddle } from '../sheet/choose-clef.ts';
import { ladder } from '../sheet/ladder.ts';
import { noteName } from '../sheet/note-name.ts';
import type { Draft, ShapingNote, SheetRefused } from '../sheet/sheet.ts';
import { tempoIn } from '../sheet/tempo.ts';
import { printName } from '../sheet/title.ts';
import { type TimedEvent, writeLine } from '../sheet/write-line.ts';
import { composeLine, type LineContent, type LineOptions, silenceWithoutChord } from './compose-line.ts';
import { handPositions } from './hand-positions.ts';
import { type LineRhythm, type LineValue, lineRhythm, strikeAgain } from './line-rhythm.ts';
import { callBars, motifBars } from './motif-bars.ts';

const titles: Readonly<Record<LineSpec['content'], string>> = {
  guide_tones: 'Guide tones',
  chord_tones: 'Chord tones',
  approach_notes: 'Approach notes',
  enclosures: 'Enclosures',
  call_and_response: 'Call and response',
  motif: 'A motif through the chords',
};

/** Most bars a line sheet is written out over. */
const mostBars = 96;

/** Bars that `fit` fills with choruses: three or four systems of four (common practice, no source). */
const fitBars = { least: 12, most: 16 } as const;

/** As many choruses as make a sheet worth its page. `4` bars → 3 times, `8` → 2, `13` → once */
function fitChoruses(chorus: number): number {
  const enough = Math.ceil(fitBars.least / chorus);
  return enough * chorus <= fitBars.most ? enough : Math.max(1, enough - 1);
}

interface PlayedChart {
  /** The bars as they are played, choruses one after the other, sections kept on their first bar. */
  readonly bars: readonly ChartBar[];
  /** Bars of one chorus. */
  readonly chorus: number;
}

function playChart(spec: LineSpec, chart: StudentChart): PlayedChart {
  const once = unfoldRepeats(chart.chart.bars);
  const chorus = once.length;
  const choruses = spec.choruses === 'fit' ? fitChoruses(chorus) : spec.choruses;
  const all = Array.from({ length: choruses }, () => once).flat();
  return { bars: all.slice(0, Math.max(chorus, Math.min(all.length, mostBars))), chorus };
}

/** Bars of a line of its own: a chorus, or several short ones. */
const lineBars = (chorus: number): number => chorus * Math.ceil(4 / chorus);

/** Choruses as lines of their own, each on a new system; short ones share one. */
function byChorus(bars: readonly LineBar[], chorus: number): readonly (readonly LineBar[])[] {
  const size = lineBars(chorus);
  const count = Math.ceil(bars.length / size);
  return Array.from({ length: count }, (_, i) => bars.slice(i * size, (i + 1) * size));
}

/** The value a line runs in: what the spec says, or what the stage is used to. */
function runningValue(spec: LineSpec, shape: StudentShape): LineValue {
  if (spec.value !== 'fit') return spec.value;
  return shape.rhythmGrade >= 5 || spec.content === 'enclosures' ? 'quaver' : 'crotchet';
}

/** One note for each chord. */
function chordRhythm(spans: readonly ChordSpan[]): readonly Slot[] {
  return spans.map(({ from, to }) => ({ at: from, length: to - from, isRest: false, tuplet: null }));
}

/** The rhythm of the whole line. */
function rhythmFor(random: Random, spec: LineSpec, shape: StudentShape, place: RhythmPlace): LineRhythm {
  const { metre, bars, chorus, spans } = place;
  if (spec.content === 'guide_tones' && spec.value === 'fit')
    return { slots: chordRhythm(spans), models: [], contrasts: [] };
  if (spec.content === 'call_and_response') return callBars(random, metre, bars);
  // The figure of a motif stays whole; its last, long note does not.
  if (spec.content === 'motif')
    return strikeAgain(motifBars(random, metre, bars, lineBars(chorus)), spans, (bars - 1) * barTicks(metre));
  const phrase = Math.max(2, shape.barsOnABreath);
  const slots = lineRhythm(random, metre, bars, runningValue(spec, shape), phrase);
  return strikeAgain({ slots, models: [], contrasts: [] }, spans, 0);
}

interface RhythmPlace {
  readonly metre: Metre;
  readonly bars: number;
  readonly chorus: number;
  readonly spans: readonly ChordSpan[];
}

/** The part of the range a line stays in: two octaves at most, where hand, breath and staff are at ease. */
function lineRange(student: SheetFor, shape: StudentShape): WrittenRange {
  const range = staffRange(student.instrument, student.stage);
  const clef = chooseClef(shape.readsClefs, [range.low, range.high]);
  const middle = comfortableMiddle(range, clef);
  const rungs = ladder(
    letters.map((letter) => ({ letter, alter: 0 })),
    range,
  ).map(({ pitch }) => pitch);
  const inside = rungs.filter((pitch) => Math.abs(staffStep(pitch) - middle) <= 7);
  const [lowest, highest] = [inside[0], inside.at(-1)];
  if (lowest === undefined || highest === undefined) return range;
  // The range's own ends may be sharps or flats beyond the last natural.
  const low = lowest === rungs[0] ? range.low : lowest;
  const high = highest === rungs.at(-1) ? range.high : highest;
  return pitchToMidi(high) - pitchToMidi(low) < 12 ? range : { low, high };
}

interface Attempt {
  readonly student: SheetFor;
  readonly shape: StudentShape;
  readonly chart: StudentChart;
  readonly metre: Metre;
  readonly bars: number;
  readonly chorus: number;
  readonly spans: readonly ChordSpan[];
}

const contents: Readonly<Record<LineSpec['content'], LineContent>> = {
  guide_tones: 'guide_tones',
  chord_tones: 'chord_tones',
  approach_notes: 'approach_notes',
  enclosures: 'enclosures',
  call_and_response: 'melodic',
  motif: 'melodic',
};

/** Whether the player is the one whom the others hear the roots from (common practice, no source). */
const isBass = ({ instrument }: SheetFor): boolean =>
  instrument.id === 'bass_guitar' || instrument.id === 'double_bass';

/** The line itself. Leaps grow past the stage's largest only where the chords leave no other way. */
function compose(random: Random, spec: LineSpec, attempt: Attempt) {
  const { student, shape, chart, metre, bars, chorus, spans } = attempt;
  const { slots: rhythm, models, contrasts } = rhythmFor(random, spec, shape, { metre, bars, chorus, spans });
  const slots = silenceWithoutChord(rhythm, spans);
  const isEasy = student.stage === 'beginner' || student.stage === 'elementary';
  const arpeggiates = spec.content === 'chord_tones' || spec.content === 'guide_tones';
  const fitLeap = Math.max(shape.largestLeap, arpeggiates ? 5 : 4);
  const options: LineOptions = {
    key: chart.key,
    metre,
    spans,
    range: lineRange(student, shape),
    content: contents[spec.content],
    leap: spec.leap === 'fit' ? fitLeap : spec.leap,
    isChromatic: !isEasy || spec.content === 'enclosures',
    fromRoots: spec.content === 'chord_tones' && (student.stage === 'beginner' || isBass(student)),
    entries: guideEntries(spec, spans, { bars, chorus, metre }),
    models: alignModels(rhythm, slots, models),
    contrasts: alignModels(rhythm, slots, contrasts),
  };
  const isSlow = spec.content === 'guide_tones';
  for (const hand of isSlow ? [] : handPositions(student, chart.key, spans, options.range)) {
    const pitches = composeLine(random, slots, { ...options, ...hand, leap: Math.max(options.leap, 5) });
    if (pitches !== null) return { slots, pitches, isWider: false };
  }
  for (const leap of [options.leap, options.leap + 2, 8, 12]) {
    const pitches = composeLine(random, slots, { ...options, leap: Math.max(leap, options.leap) });
    if (pitches !== null) return { slots, pitches, isWider: leap > options.leap };
  }
  return null;
}

/** Guide-tone choruses begin on the third and on the seventh in turn: two thin lines through the same chords. */
function guideEntries(
  spec: LineSpec,
  spans: readonly ChordSpan[],
  { bars, chorus, metre }: Pick<Attempt, 'bars' | 'chorus' | 'metre'>,
): ReadonlyMap<number, number> {
  if (spec.content !== 'guide_tones') return new Map();
  const starts = Array.from({ length: Math.ceil(bars / chorus) }, (_, nth) => nth * chorus * barTicks(metre));
  const entries = starts.flatMap((at, nth): readonly (readonly [number, number])[] => {
    const chord = spanAt(spans, at)?.chord;
    const guides = chord == null ? [] : guideTones(chord);
    const guide = guides[nth % Math.max(1, guides.length)];
    return guide === undefined ? [] : [[at, pitchClass(guide)]];
  });
  return new Map(entries);
}

/** Models for the slots that still sound once those without a chord are silent; copies of a silenced one go free. */
function alignModels(
  rhythm: readonly Slot[],
  slots: readonly Slot[],
  models: readonly (number | null)[],
): readonly (number | null)[] {
  const areSame =
    rhythm.length === slots.length && rhythm.every((slot, i) => slot.isRest === slots[i]?.isRest);
  return areSame ? models : [];
}

/** A line sheet for a student, or why there is none. */
export function createLineSheet(spec: LineSpec, student: SheetFor): Result<Draft, SheetRefused> {
  const shape = shapeFor(student);
  const metre = present(parseMetre(spec.metre), 'a metre of the list');
  const chart = present(studentCharts(spec, student)[0], 'an instrument has comfortable keys');
  const { bars: played, chorus } = playChart(spec, chart);
  const spans = chordTimeline(played, metre);
  const random = createSeededRandom(student.seed);
  const made = compose(random, spec, { student, shape, chart, metre, bars: played.length, chorus, spans });
  if (made === null || made.slots.every((slot) => slot.isRest)) {
    const message = spans.every(({ chord }) => chord === null)
      ? 'The chart has no chords to write a line over.'
      : `The range of the ${student.instrument.name} at this stage leaves no way through these chords.`;
    return err({ kind: 'RangeTooSmall', message });
  }
  const notes: ShapingNote[] = [];
  if (made.isWider)
    notes.push({
      kind: 'CompassCut',
      text: 'Some leaps are larger than usual at this stage: the chords lie far apart in the range.',
    });
  const bars = writeBars(spec, student, { chart, metre, played, spans, ...made });
  const clef = chooseClef(
    shape.readsClefs,
    made.pitches.filter((pitch) => pitch !== null),
  );
  const swings = spec.feel === 'swing' || (spec.feel === 'fit' && swingsByItself(spec, shape, metre, chart));
  const lines = byChorus(bars, chorus).map((some) => ({
    key: chart.key,
    metre,
    clefs: [clef],
    bars: some,
    label: null,
  }));
  const score = assembleLines(
    {
      title: `${titles[spec.content]} in ${printName(chart.key.tonic)} ${chart.key.mode}`,
      instrument: student.instrument,
      tempo: tempoIn(metre, spec.tempo === 'fit' ? shape.tempo.line : spec.tempo),
      swing: swings ? swingMark() : null,
      barsAcross: barsAcrossFor(lines),
      opensSystems: true,
    },
    lines,
  );
  return ok({ score, notes });
}

function swingsByItself(spec: LineSpec, shape: StudentShape, metre: Metre, chart: StudentChart): boolean {
  return spec.metre === '4/4' && metre.beats === 4 && shape.rhythmGrade >= 5 && hasSevenths(chart.chart);
}

interface LineToWrite {
  readonly chart: StudentChart;
  readonly metre: Metre;
  readonly played: readonly ChartBar[];
  readonly spans: readonly ChordSpan[];
  readonly slots: readonly Slot[];
  readonly pitches: readonly (WrittenPitch | null)[];
}

function writeBars(spec: LineSpec, student: SheetFor, line: LineToWrite): readonly LineBar[] {
  const { chart, metre, played, spans, slots, pitches } = line;
  const length = barTicks(metre);
  const breathes = shapeFor(student).breathes;
  const sounding = pitches.filter((pitch) => pitch !== null);
  const marks = spec.fingerings ? fingeringsFor(student, sounding) : [];
  const answers = spec.content === 'call_and_response';
  let sounded = 0;
  const timed = slots.flatMap((slot, i): readonly TimedEvent[] => {
    const pitch = pitches[i] ?? null;
    const bar = Math.floor(slot.at / length);
    if (pitch === null && answers && Math.floor(bar / 2) % 2 === 1 && slot.length === length)
      return slashBar(metre, slot.at);
    if (pitch === null) return [{ slot, event: null }];
    const next = slots[i + 1];
    // A line without rests still has to be breathed in: after a long note.
    const isBreath =
      breathes &&
      next !== undefined &&
      !next.isRest &&
      slot.length >= 96 &&
      next.at === (bar + 1) * length &&
      bar % 2 === 1;
    const articulations: readonly Articulation[] = isBreath ? ['breath'] : [];
    const event = note(
      pitch,
      { n: 1, d: 1 },
      {
        lyric: noteName(pitch, chart.key, spec.names),
        articulations,
        ...marks[sounded++],
      },
    );
    return [{ slot, event }];
  });
  const written = writeLine(metre, played.length, timed);
  return played.map((bar, b): LineBar => {
    const directions: readonly Direction[] =
      answers && b % 4 === 0
        ? [words('call', { style: 'italic' })]
        : answers && b % 4 === 2
          ? [words('your answer', { style: 'italic' })]
          : [];
    return {
      staves: [present(written[b], 'a bar')],
      chords: symbolsOf(spans, b, length),
      section: bar.section,
      directions,
    };
  });
}
