// Syncopation: onsets off the beat held over the next beat, and the measure of Longuet-Higgins and Lee per bar (#music).

import { modulo } from '#core';
import { metreDivisions, syncopationByNote } from '#music';
import { ticksPerBeat } from '../alignment/slots.ts';
import { beatFrame } from '../context/take-context.ts';
import { barOfTick, doubtfulNotes, type EvidenceInput, notePassage } from './evidence-input.ts';
import { couldNotHear, figure, type Row, shareFigure } from './figure.ts';

export type SyncopationFigure = 'heldOffBeatShare' | 'perBar';
export type SyncopationRow = Row<
  SyncopationFigure,
  { readonly bars: readonly { readonly bar: number; readonly strength: number }[] }
>;

/** Measures syncopation. Bars with triplets have no place in the published measure and are left out of it. */
export function hearSyncopation(input: EvidenceInput): SyncopationRow {
  const { alignment } = input;
  if (alignment === null) return couldNotHear('Syncopation needs the beat, and it could not be found.');
  const { rhythm } = alignment;
  if (rhythm.length < 4) return couldNotHear('Fewer than four notes were heard.');
  const held = rhythm.map((note) => {
    const within = modulo(note.tick, ticksPerBeat);
    return within !== 0 && within + note.ticks > ticksPerBeat;
  });
  const doubtful = doubtfulNotes(alignment);
  const bars = strengthsByBar(input);
  const total = bars.reduce((sum, b) => sum + b.strength, 0);
  const heldCount = held.filter(Boolean).length;
  return {
    heard: true,
    figures: {
      heldOffBeatShare: shareFigure(heldCount, rhythm.length, doubtful / 2),
      ...(bars.length === 0
        ? {}
        : { perBar: figure(total / bars.length, Math.max(0.5, doubtful) / bars.length, 'strength') }),
    },
    details: { bars },
    passages: held
      .flatMap((isHeld, i) => (isHeld ? [notePassage(input, i, i, 'off the beat, held over the next')] : []))
      .slice(0, 12),
  };
}

function strengthsByBar(input: EvidenceInput): readonly { bar: number; strength: number }[] {
  const { alignment, context } = input;
  if (alignment === null) return [];
  const { beatsPerBar, isCompound } = beatFrame(context.metre);
  const step = isCompound ? 2 : 3;
  const stepsPerBar = (beatsPerBar * ticksPerBeat) / step;
  const divisions = metreDivisions(context.metre, stepsPerBar);
  if (divisions === null) return [];
  const { rhythm } = alignment;
  const first = rhythm[0]?.tick ?? 0;
  const startBar = barOfTick(first, context);
  const start = (startBar - 1) * stepsPerBar;
  const unfit = new Set(rhythm.flatMap((n) => (n.tick % step === 0 ? [] : [barOfTick(n.tick, context)])));
  const steps = [...new Set(rhythm.map((n) => Math.floor(n.tick / step) - start))];
  const lead = steps[0] ?? 0;
  const last = rhythm.at(-1);
  const over = last === undefined ? 0 : Math.round((last.tick + last.ticks) / step) - start;
  const ends = steps.map((at, i) => Math.max(1, (steps[i + 1] ?? over) - at));
  const gaps = [...(lead > 0 ? [lead] : []), ...ends];
  const strengths = syncopationByNote(gaps, divisions);
  const byBar = new Map<number, number>();
  for (const n of rhythm) byBar.set(barOfTick(n.tick, context), 0);
  // the measure tells only of notes longer than a step, in order
  let told = lead > 1 ? 1 : 0;
  for (const [i, gap] of ends.entries()) {
    if (gap <= 1) continue;
    const bar = startBar + Math.floor((steps[i] ?? 0) / stepsPerBar);
    byBar.set(bar, (byBar.get(bar) ?? 0) + (strengths[told] ?? 0));
    told++;
  }
  return [...byBar].filter(([bar]) => !unfit.has(bar)).map(([bar, strength]) => ({ bar, strength }));
}
