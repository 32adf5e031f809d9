// A backing track as its student needs it on paper: key as they read it, tempo, times through, count-in, who plays when.

import {
  arrange,
  type BackingMaterial,
  backingToSpec,
  chartKey,
  findInstrument,
  formatPitchName,
  type InstrumentId,
  invertDirection,
  type Key,
  transposeChart,
  transpositionOf,
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

function sayKey(backing: BackingMaterial, id: InstrumentId): string {
  const { chart } = backingToSpec(backing);
  const instrument = findInstrument(id);
  const toWritten = instrument === null ? null : invertDirection(transpositionOf(instrument));
  // An octave or two changes nothing in a key's name.
  if (toWritten === null || toWritten.chromatic % 12 === 0) return says.key(nameKey(chartKey(chart)));
  return says.written(nameKey(chartKey(transposeChart(chart, toWritten))));
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
