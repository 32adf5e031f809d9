// What evidence is gathered from.

import { modulo } from '#core';
import type { Alignment } from '../alignment/align-take.ts';
import { ticksPerBeat } from '../alignment/slots.ts';
import { beatFrame, type TakeContext } from '../context/take-context.ts';
import type { HeardNote } from '../notes/heard-note.ts';
import type { Passage } from './figure.ts';

export interface EvidenceInput {
  readonly samples: Float32Array;
  readonly sampleRate: number;
  readonly context: TakeContext;
  readonly notes: readonly HeardNote[];
  /** When each note was let go, seconds: before its ringing ends. */
  readonly ends: readonly number[];
  readonly f0: { readonly hop: number; readonly midi: readonly (number | null)[] };
  /** Null when no grid was found, or the playing does not fit it. */
  readonly alignment: Alignment | null;
}

/** Bar number from 1 of a tick; 0 and less before bar 1. */
export function barOfTick(tick: number, context: TakeContext): number {
  return Math.floor(tick / (beatFrame(context.metre).beatsPerBar * ticksPerBeat)) + 1;
}

/** Beat of the bar from 1, with fractions. */
export function beatOfTick(tick: number, context: TakeContext): number {
  const bar = beatFrame(context.metre).beatsPerBar * ticksPerBeat;
  return modulo(tick, bar) / ticksPerBeat + 1;
}

/** Notes in a hundred that are missed, or heard where there are none, even in a clear take (from the take set). */
const misheardShare = 0.03;

/** How many notes of the rhythm may be wrong: those in doubt, and the few every hearing gets wrong. */
export function doubtfulNotes(alignment: Alignment): number {
  return alignment.rhythm.filter((note) => note.isDoubtful).length + misheardShare * alignment.rhythm.length;
}

/** A passage from one note to another. */
export function notePassage(input: EvidenceInput, first: number, last: number, shows: string): Passage {
  const tick = input.alignment?.rhythm[first]?.tick;
  return {
    from: input.notes[first]?.onset ?? 0,
    to: input.notes[last]?.offset ?? 0,
    bar: tick === undefined ? null : barOfTick(tick, input.context),
    shows,
  };
}
