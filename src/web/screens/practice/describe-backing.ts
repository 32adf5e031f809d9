// A backing track as its student needs it on paper: key and chords as they read them, tempo, times through, count-in, who plays when.

import {
  arrange,
  type BackingMaterial,
  backingToSpec,
  type Chart,
  chartKey,
  findInstrument,
  formatChart,
  formatPitchName,
  type Instrument,
  type InstrumentId,
  type Key,
  readerChart,
  readsTransposed,
} from '#music';
import { words } from '../../words/index.ts';

const says = words.practice.backing;

/** What is said of it, in the order in which it is wanted; the fitted material, as the band plays it. */
export function describeBacking(backing: BackingMaterial, instrument: InstrumentId): readonly string[] {
  const { tempo, tempoStep, choruses, keys, rest, resting, play, trade } = backing;
  return [
    sayKey(backing, instrument),
    ...(keys === 'same' ? [] : [says.moves[typeof keys === 'string' ? keys : 'listed']]),
    says.tempo(tempo),
    ...(tempoStep === 0 || choruses === 1 ? [] : [says.steps(tempoStep)]),
    says.choruses(choruses),
    says.countIn(barsCountedIn(backing)),
    ...(rest > 0 ? [resting === 'time' ? says.gate(play, rest) : says.silentGate(play, rest)] : []),
    ...(trade > 0 ? [says.trade(trade)] : []),
  ];
}

/** Its chart as the student reads it, in house style, a line for each section. */
export function writeChart(backing: BackingMaterial, instrument: InstrumentId): string {
  return formatChart(readChart(backing, findInstrument(instrument)));
}

function readChart(backing: BackingMaterial, reader: Instrument | null): Chart {
  const { chart } = backingToSpec(backing);
  return reader === null ? chart : readerChart(chart, reader);
}

function sayKey(backing: BackingMaterial, id: InstrumentId): string {
  const reader = findInstrument(id);
  const key = nameKey(chartKey(readChart(backing, reader)));
  return reader !== null && readsTransposed(reader) ? says.written(key) : says.key(key);
}

function nameKey({ tonic, mode }: Key): string {
  return says[mode](formatPitchName(tonic).replaceAll('b', '♭').replaceAll('#', '♯'));
}

/** As many as the band counts, where the material leaves it to what is usual at the tempo. */
function barsCountedIn(backing: BackingMaterial): number {
  if (backing.countIn !== 'fit') return backing.countIn;
  const once = arrange(backingToSpec({ ...backing, choruses: 1 }), 0);
  return once.bars.filter(({ role }) => role === 'count-in').length;
}
