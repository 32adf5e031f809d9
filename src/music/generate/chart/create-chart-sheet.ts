// Chord charts and lead sheets in the student's own key.

import { err, ok, present, type Result } from '#core';
import { type Fraction, minus, plus, zero } from '../../fraction/fraction.ts';
import type { Metre } from '../../rhythm/metre.ts';
import { barLength, parseMetre } from '../../rhythm/metre.ts';
import { writeEvent } from '../../rhythm/split-span.ts';
import { createScore, note, part, rest, scoreBar, swingMark, withSystems } from '../../score/create-score.ts';
import type { PartBar, ScoreBar, ScoreEvent } from '../../score/score.ts';
import { type SheetFor, shapeFor, staffRange } from '../../shape/student-shape.ts';
import type { ChartSpec } from '../../spec/material-spec.ts';
import { parseTune, type Tune } from '../../spec/melody-text.ts';
import { barTicks } from '../rhythm/beat-grid.ts';
import { chooseClef, comfortableMiddle } from '../sheet/choose-clef.ts';
import { firstHandMiddle, isFirstHand, rangeMiddle } from '../sheet/home-middle.ts';
import { noteName } from '../sheet/note-name.ts';
import type { Draft, ShapingNote, SheetRefused } from '../sheet/sheet.ts';
import { tempoIn } from '../sheet/tempo.ts';
import { capital, printName } from '../sheet/title.ts';
import { fillBars } from './bar-content.ts';
import { symbolsOf } from './chord-symbols.ts';
import { chordTimeline } from './chord-timeline.ts';
import { type StudentChart, studentCharts } from './student-chart.ts';
import { type PlacedTune, type PlacedTuneNote, placeTune, tuneFault } from './tune-bars.ts';

interface Chosen {
  readonly chart: StudentChart;
  readonly tune: PlacedTune | null;
}

/** The chart's first key whose range holds the tune; the first of all without one. */
function chooseChart(
  spec: ChartSpec,
  student: SheetFor,
  tune: Tune | null,
  length: Fraction,
): Result<Chosen, SheetRefused> {
  const charts = studentCharts(spec, student);
  const first = present(charts[0], 'an instrument has comfortable keys');
  if (tune === null) return ok({ chart: first, tune: null });
  const range = staffRange(student.instrument, student.stage);
  const middle = isFirstHand(student) ? firstHandMiddle(range) : rangeMiddle(range);
  for (const chart of charts) {
    const placed = placeTune(tune, length, chart.moved, range, middle);
    if (placed.ok) return ok({ chart, tune: placed.value });
  }
  const where =
    spec.key === 'fit' ? 'in any comfortable key' : 'in this key: let “key” be “fit” to try others';
  const message = `The tune does not fit the range of the ${student.instrument.name} at this stage ${where}.`;
  return err({ kind: 'TuneUnfit', message });
}

/** The written events of one bar of a tune. */
function tuneEvents(
  notes: readonly PlacedTuneNote[],
  metre: Metre,
  start: Fraction,
  key: StudentChart['key'],
  names: ChartSpec['names'],
): readonly ScoreEvent[] {
  let at = start;
  return notes.flatMap(({ pitch, length, isTied }) => {
    const event =
      pitch === null ? rest(length) : note(pitch, length, { isTied, lyric: noteName(pitch, key, names) });
    const written = writeEvent(metre, at, event);
    at = plus(at, length);
    return written.flat();
  });
}

/** A tie needs the same pitch after it: one that leads nowhere is dropped. */
function withSoundTies(tune: PlacedTune): PlacedTune {
  const all = [...tune.pickup, ...tune.bars.flat()];
  const sound = new Set(
    all.filter((n, i) => {
      const next = all[i + 1]?.pitch;
      const { pitch } = n;
      return (
        n.isTied &&
        pitch !== null &&
        next != null &&
        next.letter === pitch.letter &&
        next.alter === pitch.alter &&
        next.octave === pitch.octave
      );
    }),
  );
  const mend = (notes: readonly PlacedTuneNote[]) => notes.map((n) => ({ ...n, isTied: sound.has(n) }));
  return { pickup: mend(tune.pickup), bars: tune.bars.map(mend) };
}

/** A chart or lead sheet for a student, or why there is none. */
export function createChartSheet(spec: ChartSpec, student: SheetFor): Result<Draft, SheetRefused> {
  const { instrument } = student;
  const shape = shapeFor(student);
  const metre = present(parseMetre(spec.metre), 'a metre of the list');
  const length = barLength(metre);
  const read = spec.melody === null ? null : parseTune(spec.melody, '/melody');
  const tune = read === null ? null : present(read.ok ? read.value : null, 'a tune that has been read');
  const bars = present(studentCharts(spec, student)[0], 'a key').chart.bars.length;
  const fault = tune === null ? null : tuneFault(tune, bars, length);
  if (fault !== null) return err({ kind: 'TuneUnfit', message: fault });
  const chosen = chooseChart(spec, student, tune, length);
  if (!chosen.ok) return chosen;
  const { chart } = chosen.value;
  const placed = chosen.value.tune === null ? null : withSoundTies(chosen.value.tune);
  const spans = chordTimeline(chart.chart.bars, metre);
  const range = staffRange(instrument, student.stage);
  const usualClef = chooseClef(shape.readsClefs, [range.low, range.high]);
  const filled = fillBars(spec.bars, spans, bars, {
    metre,
    range,
    middle: comfortableMiddle(range, usualClef),
    key: chart.key,
    names: spec.names,
  });
  const written = (bar: number): readonly ScoreEvent[] => {
    const notes = placed?.bars[bar];
    if (notes === undefined || notes.every(({ pitch }) => pitch === null))
      return present(filled[bar], 'a bar');
    return tuneEvents(notes, metre, zero, chart.key, spec.names);
  };
  const sounding = placed === null ? [range.low, range.high] : pitchesOf(placed);
  const clef = chooseClef(shape.readsClefs, sounding);
  const scoreBars: ScoreBar[] = [];
  const partBars: PartBar[] = [];
  const tempo = tempoIn(
    metre,
    spec.tempo === 'fit' ? shape.tempo.line : spec.tempo,
    spec.style === null ? null : capital(spec.style),
  );
  const head = { tempo, swing: spec.feel === 'swing' ? swingMark() : null };
  const push = (bar: ScoreBar, events: readonly ScoreEvent[], chords: PartBar['chords']) => {
    scoreBars.push(bar);
    partBars.push({
      key: chart.key,
      clefs: [clef],
      clefChanges: [],
      voices: [{ id: 1, staff: 1, events }],
      chords,
      directions: [],
    });
  };
  if (placed !== null && placed.pickup.length > 0) {
    const short = placed.pickup.reduce((sum, n) => plus(sum, n.length), zero);
    const events = tuneEvents(placed.pickup, metre, minus(length, short), chart.key, spec.names);
    push(scoreBar(0, metre, { length: short, startsSystem: true, ...head }), events, []);
  }
  for (const [i, bar] of chart.chart.bars.entries()) {
    const isFirst = scoreBars.length === 0;
    const next = chart.chart.bars[i + 1];
    const { section, repeatStart, repeatEnd, ending } = bar;
    const barline = next === undefined ? 'final' : next.section !== null ? 'double' : 'single';
    push(
      scoreBar(i + 1, metre, {
        section,
        repeatStart,
        repeatEnd,
        ending,
        barline,
        startsSystem: isFirst,
        ...(isFirst ? head : {}),
      }),
      written(i),
      symbolsOf(spans, i, barTicks(metre)),
    );
  }
  const title = `${placed === null ? 'Chart' : 'Lead sheet'} in ${printName(chart.key.tonic)} ${chart.key.mode}`;
  const notes: ShapingNote[] = [];
  const score = createScore({ title, bars: scoreBars, parts: [part(instrument, partBars)] });
  return ok({ score: withSystems(score, 4), notes });
}

function pitchesOf(tune: PlacedTune) {
  return [...tune.pickup, ...tune.bars.flat()].flatMap(({ pitch }) => (pitch === null ? [] : [pitch]));
}
