// Marks on a reading line: a dynamic where a phrase starts, slurs over stepwise quavers, dots on repeated ones, and
// places to breathe.

import { chooseOne, type Random } from '#core';
import { staffStep, type WrittenPitch } from '../../pitch/pitch.ts';
import { dynamic } from '../../score/create-score.ts';
import type { Articulation, Direction, Dynamic, SlurPlace } from '../../score/score.ts';
import type { Slot } from '../rhythm/beat-figure.ts';
import type { PlannedBar } from '../rhythm/compose-rhythm.ts';

export interface NoteMarks {
  readonly slur: SlurPlace;
  readonly articulations: readonly Articulation[];
}

interface Marked {
  readonly slots: readonly Slot[];
  readonly pitches: readonly (WrittenPitch | null)[];
  readonly bar: number;
  readonly beat: number;
}

/** Slurs over stepwise short notes inside a beat or two, dots on short repeated ones. */
export function joinNotes(random: Random, { slots, pitches, beat }: Marked): readonly NoteMarks[] {
  const marks: { slur: SlurPlace; articulations: Articulation[] }[] = slots.map(() => ({
    slur: null,
    articulations: [],
  }));
  const isShort = (i: number) => {
    const slot = slots[i];
    return slot !== undefined && !slot.isRest && slot.length <= 24 && slot.tuplet === null;
  };
  const step = (i: number) => {
    const [a, b] = [pitches[i], pitches[i + 1]];
    return a === null || b === null || a === undefined || b === undefined
      ? null
      : Math.abs(staffStep(a) - staffStep(b));
  };
  for (let i = 0; i < slots.length; ) {
    let end = i;
    const start = slots[i]?.at ?? 0;
    while (
      isShort(end) &&
      isShort(end + 1) &&
      step(end) === 1 &&
      (slots[end + 1]?.at ?? 0) < start + 2 * beat
    )
      end++;
    const isOnBeat = start % beat === 0;
    if (end > i && isOnBeat && random.next() < 0.6) {
      const [first, last] = [marks[i], marks[end]];
      if (first !== undefined && last !== undefined) [first.slur, last.slur] = ['start', 'stop'];
      i = end + 1;
      continue;
    }
    if (isShort(i) && step(i) === 0 && isShort(i + 1)) marks[i]?.articulations.push('staccato');
    i++;
  }
  return marks;
}

const firstDynamics: readonly Dynamic[] = ['mf', 'p', 'f', 'mp'];
const answers: Readonly<Record<string, readonly Dynamic[]>> = {
  mf: ['p', 'f'],
  p: ['mf', 'f'],
  f: ['p', 'mf'],
  mp: ['f', 'mf'],
};

/** A dynamic at the start of each phrase, by bar. */
export function dynamicsFor(random: Random, plan: readonly PlannedBar[]): readonly (readonly Direction[])[] {
  let last: Dynamic | null = null;
  return plan.map((_, i) => {
    const starts = i === 0 || plan[i - 1]?.close === 'half';
    if (!starts) return [];
    const mark: Dynamic = chooseOne(random, last === null ? firstDynamics : (answers[last] ?? firstDynamics));
    last = mark;
    return [dynamic(mark)];
  });
}

/** Slots after which a breath is marked: phrase ends, and else the longest note near every few bars. */
export function breathsAfter(
  { slots, bar }: Marked,
  plan: readonly PlannedBar[],
  every: number,
): ReadonlySet<number> {
  const found = new Set<number>();
  let last = 0;
  for (const [b, planned] of plan.entries()) {
    if (b === plan.length - 1) break;
    // A breath just before the last bar would part the last note from what leads to it.
    const isDue = planned.close === 'half' || (b + 1 - last >= every && b < plan.length - 2);
    if (!isDue) continue;
    const inBar = slots.flatMap((slot, i) => (Math.floor(slot.at / bar) === b ? [i] : []));
    const ends = inBar.at(-1);
    const slot = ends === undefined ? undefined : slots[ends];
    if (ends === undefined || slot === undefined) continue;
    if (slot.isRest) last = b + 1;
    else if (slot.length >= 48 && slot.at + slot.length <= (b + 1) * bar) {
      found.add(ends);
      last = b + 1;
    }
  }
  return found;
}
