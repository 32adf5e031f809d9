// A second part under a tune: a bass for the teacher, or a lower part for the same instrument. Chord tones, one or two to
// a bar, moving as little as they can and keeping out of the tune's way.

import { modulo, present, type Random } from '#core';
import { type Pitch, pitchToMidi, type WrittenPitch } from '../../pitch/pitch.ts';
import type { Metre } from '../../rhythm/metre.ts';
import { cheapestMelody } from '../melody/cheapest-melody.ts';
import type { Slot } from '../rhythm/beat-figure.ts';
import { barTicks, beatGrid } from '../rhythm/beat-grid.ts';
import { type HarmonyRoot, isChordDegree } from './plan-harmony.ts';

export interface SecondPart {
  readonly slots: readonly Slot[];
  readonly pitches: readonly WrittenPitch[];
}

interface SecondNote {
  readonly pitch: WrittenPitch;
  readonly midi: number;
  readonly degree: number;
  readonly rung: number;
  readonly own: number;
  /** Semitones under the tune's note that sounds with it; null where the tune rests. */
  readonly under: number | null;
}

export interface SecondPartOptions {
  readonly metre: Metre;
  readonly notes: readonly { readonly pitch: WrittenPitch; readonly degree: number }[];
  readonly isMinor: boolean;
  readonly isBass: boolean;
  /** What sounds in the tune at some ticks from the start, at the second part's own pitch; null for silence. */
  readonly tuneAt: (ticks: number) => Pitch | null;
  /** Key number of the highest note in reach. */
  readonly highest: number;
}

/** Lengths of a bar's notes: whole bars at the end, halves or groups elsewhere. */
function slotsFor(metre: Metre, bars: number): readonly Slot[] {
  const length = barTicks(metre);
  const grid = beatGrid(metre);
  const mains = grid.filter((beat) => beat.isMain).map((beat) => beat.at);
  return Array.from({ length: bars }, (_, bar): readonly Slot[] => {
    const starts = bar === bars - 1 ? [0] : mains;
    return starts.map((at, i) => ({
      at: bar * length + at,
      length: (starts[i + 1] ?? length) - at,
      isRest: false,
      tuplet: null,
    }));
  }).flat();
}

const consonant = [0, 3, 4, 7, 8, 9];

/** The part, or null where the notes leave no way through. */
export function composeSecondPart(
  random: Random,
  harmony: readonly HarmonyRoot[],
  options: SecondPartOptions,
): SecondPart | null {
  const length = barTicks(options.metre);
  const slots = slotsFor(options.metre, harmony.length);
  const places = slots.map((slot, i) => {
    const root = present(harmony[Math.floor(slot.at / length)], 'a chord for every bar');
    const tune = options.tuneAt(slot.at);
    return options.notes.flatMap(({ pitch, degree }, rung): readonly SecondNote[] => {
      if (!isChordDegree(root, degree)) return [];
      const isLeading = options.isMinor && degree === 6 && root === 4;
      const sounding: WrittenPitch = isLeading ? { ...pitch, alter: pitch.alter + 1 } : pitch;
      const midi = pitchToMidi(sounding);
      if (midi > options.highest) return [];
      const under = tune === null ? null : pitchToMidi(tune) - midi;
      let own = random.next() * 0.6;
      const isBarStart = slot.at % length === 0;
      if (options.isBass && isBarStart && degree !== root) own += 2.5;
      if ((i === 0 || i === slots.length - 1) && options.isBass && degree !== root) own += 8;
      if (i === slots.length - 1 && degree !== 0 && degree !== 2) own += 8;
      if (under !== null) {
        if (under < 0) own += 6;
        if (!consonant.includes(modulo(under, 12))) own += 2;
        if (!options.isBass && under % 12 === 0) own += 1.5;
        if (!options.isBass && under > 16) own += 1;
      }
      return [{ pitch: sounding, midi, degree, rung, own, under }];
    });
  });
  const path = cheapestMelody<SecondNote>(
    places,
    {
      first: (to) => to.own,
      step(to, from) {
        const size = Math.abs(to.rung - from.rung);
        const moved = size === 0 ? 0.6 : size <= 2 ? 0 : size <= 4 ? 0.4 : size === 7 ? 1 : 0.4 * size;
        const [a, b] = [from.under, to.under];
        const isParallel =
          a !== null && b !== null && size > 0 && a % 12 === b % 12 && (b % 12 === 0 || b % 12 === 7);
        return to.own + moved + (isParallel ? 3 : 0);
      },
      turn: () => 0,
    },
    16,
  );
  return path === null ? null : { slots, pitches: path.notes.map(({ pitch }) => pitch) };
}
