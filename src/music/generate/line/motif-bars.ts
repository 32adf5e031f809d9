// Rhythms whose bars come back: a motif through the chords, and calls with room for an answer.

import { chooseOne, present, type Random } from '#core';
import type { Metre } from '../../rhythm/metre.ts';
import type { Slot } from '../rhythm/beat-figure.ts';
import { barTicks, beatGrid } from '../rhythm/beat-grid.ts';
import { beatValues, type LineRhythm, slotsFrom } from './line-rhythm.ts';

/** One-bar rhythms a motif can have in four: they leave room to hear it (common practice, no source). */
const motifsInFour: readonly (readonly [lengths: readonly number[], rest: number])[] = [
  [[24, 24, 48, 48], 48],
  [[48, 24, 24, 48], 48],
  [[72, 24, 48], 48],
  [[24, 24, 24, 24, 48], 48],
  [[48, 48, 96], 0],
];

/** A motif's bar, with a rest at its end where the metre has four beats. */
function motifRhythm(random: Random, metre: Metre): readonly Slot[] {
  const grid = beatGrid(metre);
  if (barTicks(metre) === 192 && grid.length === 4) {
    const [lengths, rest] = chooseOne(random, motifsInFour);
    const sounds = slotsFrom(lengths, 0);
    return rest === 0 ? sounds : [...sounds, ...slotsFrom([rest], 192 - rest, true)];
  }
  const held = grid.length - 1;
  return grid.flatMap((beat, i) =>
    slotsFrom(
      i === held ? [beat.length] : beatValues(beat, random.next() < 0.5 ? 'quaver' : 'crotchet'),
      beat.at,
    ),
  );
}

const fullBar = (metre: Metre, isRest: boolean): Slot => ({
  at: 0,
  length: barTicks(metre),
  isRest,
  tuplet: null,
});

const soundsOf = (bars: readonly (readonly Slot[])[]): number =>
  bars.flat().filter((slot) => !slot.isRest).length;

const moveTo = (slots: readonly Slot[], at: number): readonly Slot[] =>
  slots.map((slot) => ({ ...slot, at: slot.at + at }));

/** Bars of one motif, another for every `size` bars; the last bar is a long note. */
export function motifBars(random: Random, metre: Metre, bars: number, size: number): LineRhythm {
  const slots: Slot[] = [];
  const models: (number | null)[] = [];
  let motif: readonly Slot[] = [];
  let model = 0;
  for (let bar = 0; bar < bars; bar++) {
    const isNew = bar % size === 0;
    const isFinal = bar === bars - 1;
    if (isNew) [motif, model] = [motifRhythm(random, metre), models.length];
    const now = isFinal ? [fullBar(metre, false)] : motif;
    slots.push(...moveTo(now, bar * barTicks(metre)));
    for (let i = 0; i < soundsOf([now]); i++) models.push(isNew || isFinal ? null : model + i);
  }
  return { slots, models, contrasts: [] };
}

/**
 * Calls of two bars, two bars free after each. Every other call is the first one again; those between have its rhythm and
 * go another way.
 */
export function callBars(random: Random, metre: Metre, bars: number): LineRhythm {
  const call = [motifRhythm(random, metre), motifRhythm(random, metre)];
  const count = soundsOf(call);
  const slots: Slot[] = [];
  const models: (number | null)[] = [];
  const contrasts: (number | null)[] = [];
  for (let bar = 0; bar < bars; bar++) {
    const now = bar % 4 >= 2 ? [fullBar(metre, true)] : present(call[bar % 4], 'a bar of the call');
    slots.push(...moveTo(now, bar * barTicks(metre)));
    const isNew = Math.floor(bar / 4) % 2 === 1;
    for (let i = 0; i < soundsOf([now]); i++) {
      const first = models.length < count ? null : models.length % count;
      models.push(isNew ? null : first);
      contrasts.push(isNew ? first : null);
    }
  }
  return { slots, models, contrasts };
}
