// Whether a take is one player's notes at all: what share of its loud moments has a clear pitch, whether the pitches
// hold still, what sounds between the notes, whether the recording was cut off at full scale. The limits lie between
// what takes of music give (dry or in a room, soft or with noise) and what noise and talking give; see SPEC.md, L8.

import { candidateCount } from '../pitch-track/candidates.ts';
import { hop, type Observation } from '../pitch-track/observe-take.ts';
import { quantile } from '../signal/spans.ts';
import type { HeardNote } from './heard-note.ts';
import type { Problem } from './problem.ts';

/** Moments at most this far below the loud ones are judged, dB. */
const loudReach = 20;
/** Periodicity of a clear pitch. */
const clearStrength = 0.75;
/** Below this share of clear moments a take is noise; music gives 0.78 and more. */
const leastClear = 0.3;
/** Below these, pitches glide as in talking; music gives 0.78 and 0.85 and more. */
const clearOfSpeech = 0.78;
const steadyOfSpeech = 0.75;
/** Moments after and before a note that do not count as between notes. */
const afterNote = 30;
const beforeNote = 10;
/** Fewest moments between notes that tell of a backing, and how far below the notes it should stay, dB. */
const fewestBetween = 40;
const backingMargin = 8;

/** What stands in the way of trusting these notes. `discards` says that the notes are no notes. */
export interface Judgement {
  readonly problems: readonly Problem[];
  readonly discards: boolean;
}

/** Judges the notes heard in an observed take; `path` is the candidate chosen at each moment. */
export function judgeTake(observation: Observation, path: Int8Array, notes: readonly HeardNote[]): Judgement {
  const clear = clearShare(observation, path);
  if (clear < leastClear) return { problems: [{ kind: 'MostlyNoise', share: 1 - clear }], discards: true };
  const steady = steadiness(notes);
  if (notes.length > 0 && clear < clearOfSpeech && steady < steadyOfSpeech)
    return { problems: [{ kind: 'SpeechLike', share: 1 - steady }], discards: true };
  const problems: Problem[] = [];
  const margin = marginOverBetween(observation, notes);
  if (margin !== null && margin < backingMargin) problems.push({ kind: 'BackingTooLoud', db: margin });
  return { problems, discards: false };
}

/** The share of loud moments with a clear pitch, 0 … 1. */
function clearShare(observation: Observation, path: Int8Array): number {
  const threshold = quantile(observation.level, 0.95) - loudReach;
  let loud = 0;
  let clear = 0;
  for (let t = 0; t < observation.count; t++) {
    if ((observation.level[t] ?? -120) < threshold) continue;
    loud++;
    const k = path[t] ?? -1;
    if (k >= 0 && (observation.strength[t * candidateCount + k] ?? 0) > clearStrength) clear++;
  }
  return loud === 0 ? 0 : clear / loud;
}

/** The mean confidence of the notes, by time. */
function steadiness(notes: readonly HeardNote[]): number {
  let sum = 0;
  let time = 0;
  for (const note of notes) {
    sum += note.confidence * (note.offset - note.onset);
    time += note.offset - note.onset;
  }
  return time === 0 ? 0 : sum / time;
}

/** How far the notes' median level lies over what sounds between them, dB; null where too little is between. */
function marginOverBetween(observation: Observation, notes: readonly HeardNote[]): number | null {
  const between: number[] = [];
  for (let i = 1; i < notes.length; i++) {
    const from = Math.round((notes[i - 1]?.offset ?? 0) / hop) + afterNote;
    const to = Math.round((notes[i]?.onset ?? 0) / hop) - beforeNote;
    for (let t = from; t < to; t++) between.push(observation.level[t] ?? -120);
  }
  if (between.length < fewestBetween) return null;
  const levels = Float32Array.from(notes, (note) => note.db);
  return quantile(levels, 0.5) - quantile(Float32Array.from(between), 0.8);
}
