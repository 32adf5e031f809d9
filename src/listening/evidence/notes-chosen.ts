// Notes chosen: how much of the playing lies in the scale, what stands on strong beats, and whether notes from outside
// move on by step.

import { modulo } from '#core';
import { ticksPerBeat } from '../alignment/slots.ts';
import { beatFrame, createHarmony, type TakeContext } from '../context/take-context.ts';
import { doubtfulNotes, type EvidenceInput, notePassage } from './evidence-input.ts';
import { couldNotHear, type Figure, figure, type Row } from './figure.ts';

export type NotesChosenFigure =
  | 'inScale'
  | 'chordTonesOnStrongBeats'
  | 'outsideResolved'
  | 'differentPitches';
export type NotesChosenRow = Row<
  NotesChosenFigure,
  { readonly pitchClasses: readonly { readonly pitchClass: number; readonly timeShare: number }[] }
>;

/** Looks at the notes against scale and chords. */
export function hearNotesChosen(input: EvidenceInput): NotesChosenRow {
  const { notes, context } = input;
  if (notes.length < 4) return couldNotHear('Fewer than four notes were heard.');
  const times = new Map<number, number>();
  let total = 0;
  let unsure = 0;
  for (const note of notes) {
    const time = note.offset - note.onset;
    times.set(note.midi % 12, (times.get(note.midi % 12) ?? 0) + time);
    total += time;
    if (note.confidence < 0.5 || Math.abs(note.cents) > 38) unsure += time;
  }
  const doubt = Math.max(unsure / total, 0.5 / notes.length);
  const { scale } = context;
  const inScale = [...times].reduce((sum, [pc, time]) => sum + (scale?.has(pc) ? time : 0), 0);
  const outside = notes.flatMap((note, i) => (scale !== null && !scale.has(note.midi % 12) ? [i] : []));
  const resolved = outside.filter((i) => resolves(input, i));
  const strong = strongBeatFigure(input, doubt);
  return {
    heard: true,
    figures: {
      differentPitches: figure(
        new Set(notes.map((n) => n.midi)).size,
        Math.min(2, unsure > 0 ? 1 : 0),
        'count',
      ),
      ...(scale === null ? {} : { inScale: figure(inScale / total, doubt, 'share') }),
      ...(strong === null ? {} : { chordTonesOnStrongBeats: strong.figure }),
      ...(outside.length === 0
        ? {}
        : { outsideResolved: figure(resolved.length / outside.length, 0.5 / outside.length, 'share') }),
    },
    details: {
      pitchClasses: [...times]
        .map(([pitchClass, time]) => ({ pitchClass, timeShare: time / total }))
        .sort((a, b) => b.timeShare - a.timeShare),
    },
    passages: [
      ...outside.map((i) =>
        notePassage(
          input,
          i,
          i,
          resolves(input, i) ? 'outside the scale, moves on by step' : 'outside the scale',
        ),
      ),
      ...(strong?.others ?? []).map((i) => notePassage(input, i, i, 'on a strong beat, not of the chord')),
    ].slice(0, 16),
  };
}

/** Whether the next note lies a step away and inside the scale. */
function resolves({ notes, context }: EvidenceInput, i: number): boolean {
  const [note, next] = [notes[i], notes[i + 1]];
  if (note === undefined || next === undefined || next.onset - note.offset > 1) return false;
  const step = Math.abs(next.midi - note.midi);
  return step >= 1 && step <= 2 && (context.scale?.has(next.midi % 12) ?? false);
}

function strongBeatFigure(
  input: EvidenceInput,
  doubt: number,
): { readonly figure: Figure; readonly others: readonly number[] } | null {
  const { alignment, context, notes } = input;
  if (alignment === null || context.chart === null) return null;
  const harmony = createHarmony(context);
  let count = 0;
  const others: number[] = [];
  for (const [i, { tick }] of alignment.rhythm.entries()) {
    if (!isStrong(tick, context)) continue;
    const chord = harmony(tick / ticksPerBeat);
    if (chord === null) continue;
    count++;
    if (!chord.has((notes[i]?.midi ?? 0) % 12)) others.push(i);
  }
  if (count < 2) return null;
  return {
    figure: figure(
      1 - others.length / count,
      Math.max(doubt, (0.5 + doubtfulNotes(alignment) * (count / alignment.rhythm.length)) / count),
      'share',
    ),
    others,
  };
}

/** The first beat of the bar, and the middle one of a bar of four beats. */
function isStrong(tick: number, context: TakeContext): boolean {
  const { beatsPerBar } = beatFrame(context.metre);
  const bar = beatsPerBar * ticksPerBeat;
  const within = modulo(tick, bar);
  return within === 0 || (beatsPerBar % 4 === 0 && within % (2 * ticksPerBeat) === 0);
}
