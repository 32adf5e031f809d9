// A take from sound to evidence: notes, grid, rhythm, evidence, and what stood in the way.

import { type Alignment, alignTake } from './alignment/align-take.ts';
import type { TakeContext } from './context/take-context.ts';
import { type Evidence, gatherEvidence } from './evidence/gather-evidence.ts';
import { type Hearing, hearNotes } from './notes/hear-notes.ts';
import { findLetGo } from './notes/let-go.ts';

/** Everything heard in a take. */
export interface Listening extends Hearing {
  /** Length of the take in seconds. */
  readonly seconds: number;
  /** Null when too few notes were heard to find the beat. */
  readonly alignment: Alignment | null;
  readonly evidence: Evidence;
}

/** Listens to a take: `samples` are mono, -1 to 1. Never throws on any recording; see `hearNotes`. */
export function listen(samples: Float32Array, sampleRate: number, context: TakeContext): Listening {
  const hearing = hearNotes(samples, sampleRate, context);
  const ends = findLetGo(samples, sampleRate, hearing.notes);
  const alignment = alignTake(hearing.notes, context, ends);
  const evidence = gatherEvidence(
    { samples, sampleRate, context, notes: hearing.notes, ends, f0: hearing.f0, alignment },
    hearing.problems,
  );
  return { ...hearing, seconds: samples.length / Math.max(1, sampleRate), alignment, evidence };
}
