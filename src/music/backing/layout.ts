// From a spec to bars in time: repeats unfolded, choruses in their keys and tempos, count-in, who plays when.

import { modulo, present } from '#core';
import { type ChartBar, unfoldRepeats } from '../chart/chart.ts';
import { chartKey } from '../chart/transpose-chart.ts';
import { type Chord, transposeChord } from '../chord/chord.ts';
import type { Interval } from '../pitch/interval.ts';
import { pitchClass } from '../pitch/pitch.ts';
import type { ArrangedBar, BarRole, SoundingChord } from './arrangement.ts';
import { type BackingSpec, keyMoveOf } from './backing-spec.ts';
import { barTicks, type Feel, ticksPerCrotchet } from './feel.ts';

export interface Layout {
  readonly bars: readonly ArrangedBar[];
  readonly chords: readonly SoundingChord[];
  readonly tempos: readonly { readonly tick: number; readonly perMinute: number }[];
  /** The end of the last bar. */
  readonly end: number;
}

/** Lays the choruses out in time. */
export function layOut(spec: BackingSpec, feel: Feel): Layout {
  const length = barTicks(feel);
  const bars: ArrangedBar[] = [];
  const chords: SoundingChord[] = [];
  const tempos: { tick: number; perMinute: number }[] = [];
  const played = unfoldRepeats(spec.chart.bars);
  const hasSections = played.some((bar, at) => at > 0 && bar.section !== null);
  const ending = endingChord(played);
  const counted = spec.countIn ?? usualCountIn(spec, feel);
  const tuned = spec.tuning === null ? 0 : barsToTune(spec, feel);
  for (let at = 0; at < tuned + counted; at++)
    bars.push({
      tick: at * length,
      ticks: length,
      role: at < tuned ? 'tuning' : 'count-in',
      chorus: -1,
      written: 0,
      section: null,
      endsSection: false,
      isLast: false,
      intensity: 0,
    });
  for (let chorus = 0; chorus < spec.choruses; chorus++) {
    const perMinute = crotchetsPerMinute(tempoOf(spec, chorus), feel);
    if (tempos.at(-1)?.perMinute !== perMinute)
      tempos.push({ tick: chorus === 0 ? 0 : bars.length * length, perMinute });
    const up = keyInterval(keyMoveOf(spec, chorus));
    played.forEach((bar, at) => {
      const next = played[at + 1];
      const tick = bars.length * length;
      const isLast = chorus === spec.choruses - 1 && next === undefined;
      const nth = chorus * played.length + at;
      for (const { chord, at: from, share } of bar.chords)
        chords.push({
          chord: chord === null ? null : transposed(chord, up),
          tick: tick + Math.round((length * from.n) / from.d),
          ticks: Math.round((length * share.n) / share.d),
          bar: bars.length,
        });
      bars.push({
        tick,
        ticks: length,
        role: roleOf(spec, nth),
        chorus,
        written: bar.number,
        section: bar.section,
        endsSection: next === undefined || next.section !== null || (!hasSections && (at + 1) % 8 === 0),
        isLast: isLast && ending === null && roleOf(spec, nth) === 'play',
        intensity: intensityOf(spec, chorus),
      });
    });
  }
  const last = spec.choruses - 1;
  if (ending !== null && roleOf(spec, spec.choruses * played.length) === 'play') {
    const tick = bars.length * length;
    const up = keyInterval(keyMoveOf(spec, last));
    chords.push({ chord: transposed(ending, up), tick, ticks: length, bar: bars.length });
    bars.push({
      tick,
      ticks: length,
      role: 'play',
      chorus: last,
      written: 1,
      section: null,
      endsSection: true,
      isLast: true,
      intensity: intensityOf(spec, last),
    });
  }
  return { bars, chords, tempos, end: bars.length * length };
}

const intensityOf = ({ grows, choruses }: BackingSpec, chorus: number): number =>
  grows && choruses > 1 ? chorus / (choruses - 1) : 0.4;

/**
 * The chord for a bar of its own in which the band ends, where the chart's last bar would leave it hanging: a chord of the
 * key's tonic that the chart has, or its first. Null where the last bar is the end already. Common practice, no source.
 */
function endingChord(played: readonly ChartBar[]): Chord | null {
  const chords = played.flatMap((bar) => bar.chords.flatMap(({ chord }) => (chord === null ? [] : [chord])));
  const last = played.at(-1)?.chords;
  const tonic = pitchClass(chartKey({ bars: played }).tonic);
  const isHome = (chord: Chord | null | undefined) => chord != null && pitchClass(chord.root) === tonic;
  if (last?.length === 1 && isHome(last[0]?.chord)) return null;
  return chords.find(isHome) ?? chords[0] ?? null;
}

/** One bar, or two where the beat is fast (common practice, no source). */
function usualCountIn(spec: BackingSpec, feel: Feel): number {
  return spec.tempo * (feel.metre.beats > 3 && feel.metre.unit === 4 ? 1 : 1.3) >= 130 ? 2 : 1;
}

/** Whole bars that a tuning tone needs to be heard for four seconds. */
const barsToTune = (spec: BackingSpec, feel: Feel): number =>
  Math.ceil((4 * spec.tempo * feel.beatTicks) / 60 / barTicks(feel));

/** Beats a minute in a chorus. */
export function tempoOf({ tempo, tempoStep }: BackingSpec, chorus: number): number {
  if (tempoStep === null) return tempo;
  const reached = tempo + chorus * tempoStep.by;
  return tempoStep.by >= 0
    ? Math.min(reached, Math.max(tempo, tempoStep.limit))
    : Math.max(reached, Math.min(tempo, tempoStep.limit));
}

const crotchetsPerMinute = (beats: number, feel: Feel) => (beats * feel.beatTicks) / ticksPerCrotchet;

function roleOf({ gate, trade }: BackingSpec, nth: number): BarRole {
  if (trade !== null && Math.floor(nth / trade) % 2 === 1) return 'free';
  if (gate !== null && nth % (gate.play + gate.rest) >= gate.play) return gate.isSilent ? 'free' : 'time';
  return 'play';
}

/** The spelling of a number of semitones in which most keys stay readable: 6 up is an augmented fourth, 1 a minor second. */
export function keyInterval(semitones: number): Interval {
  const steps = [0, 1, 1, 2, 2, 3, 3, 4, 5, 5, 6, 6];
  const up = modulo(semitones, 12);
  const octaves = Math.floor(semitones / 12);
  return { diatonic: present(steps[up], 'a semitone of the octave') + 7 * octaves, chromatic: semitones };
}

const transposed = (chord: Chord, up: Interval): Chord =>
  up.chromatic === 0 ? chord : transposeChord(chord, up);
