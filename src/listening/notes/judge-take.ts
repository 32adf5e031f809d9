// Whether a take is one player's notes at all: what share of its loud moments has a clear pitch, whether the pitches
// hold still, what sounds between the notes, whether the recording was cut off at full scale. The limits lie between
// what takes of music give (dry or in a room, soft or with noise) and what noise and talking give; see SPEC.md, L8.

import { candidateCount } from '../pitch-track/candidates.ts';
import { hop, type Observation } from '../pitch-track/observe-take.ts';
import { greatest, least, quantile } from '../signal/spans.ts';
import type { HeardNote } from './heard-note.ts';
import type { Moments } from './moments.ts';
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
/** Clear or not, talking rests on no pitch: at most 0.16 of the time (music, in a room and fast: 0.3 and more). */
const restingOfSpeech = 0.22;
const steadyOfClearSpeech = 0.8;
/** A moment rests when within so many moments on either side the pitch moves by no more than this, in semitones. */
const restReach = 3;
const restRange = 0.25;
/** Moments after and before a note that do not count as between notes. */
const afterNote = 30;
const beforeNote = 10;
/** Fewest moments between notes that tell of a backing, and how far below the notes it should stay, dB. */
const fewestBetween = 40;
const backingMargin = 8;
/** A pitch between notes that is this near to one of them, in semitones, is the player's. */
const ownReach = 2.5;

/** What stands in the way of trusting these notes. `discards` says that the notes are no notes. */
export interface Judgement {
  readonly problems: readonly Problem[];
  readonly discards: boolean;
}

/** Judges the notes heard in an observed take; `path` is the candidate chosen at each moment, `moments` what came of it. */
export function judgeTake(
  observation: Observation,
  path: Int8Array,
  moments: Moments,
  notes: readonly HeardNote[],
): Judgement {
  const clear = clearShare(observation, path);
  if (clear < leastClear) return { problems: [{ kind: 'MostlyNoise', share: 1 - clear }], discards: true };
  const steady = steadiness(notes);
  const isMumbled = clear < clearOfSpeech && steady < steadyOfSpeech;
  if (
    notes.length > 0 &&
    (isMumbled || (steady < steadyOfClearSpeech && restingShare(moments) < restingOfSpeech))
  )
    return { problems: [{ kind: 'SpeechLike', share: 1 - steady }], discards: true };
  const problems: Problem[] = [];
  const margin = marginOverBetween(observation, path, notes);
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

/** The share of the loud moments with a pitch in which it holds still, or swings evenly, 0 … 1. */
function restingShare({ count, midi, swing, level }: Moments): number {
  const threshold = quantile(level, 0.95) - loudReach;
  let pitched = 0;
  let resting = 0;
  for (let t = restReach; t < count - restReach; t++) {
    if ((level[t] ?? -120) < threshold) continue;
    const low = least(midi, t - restReach, t + restReach);
    if (low === 0) continue;
    pitched++;
    if ((swing[t] ?? 0) > 0 || greatest(midi, t - restReach, t + restReach) - low < restRange) resting++;
  }
  return pitched === 0 ? 1 : resting / pitched;
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
function marginOverBetween(
  observation: Observation,
  path: Int8Array,
  notes: readonly HeardNote[],
): number | null {
  const between: number[] = [];
  for (let i = 1; i < notes.length; i++) {
    const [before, after] = [notes[i - 1], notes[i]];
    if (before === undefined || after === undefined) continue;
    const from = Math.round(before.offset / hop) + afterNote;
    const to = Math.round(after.onset / hop) - beforeNote;
    for (let t = from; t < to; t++) {
      const pitch = observation.midi[t * candidateCount + (path[t] ?? -1)] ?? 0;
      if ((path[t] ?? -1) >= 0 && (isOwn(pitch, before) || isOwn(pitch, after))) continue;
      between.push(observation.level[t] ?? -120);
    }
  }
  if (between.length < fewestBetween) return null;
  const levels = Float32Array.from(notes, (note) => note.db);
  return quantile(levels, 0.5) - quantile(Float32Array.from(between), 0.8);
}

/** Whether a pitch is the player's note itself, ringing on or heard only in part. */
function isOwn(pitch: number, note: HeardNote): boolean {
  return Math.abs(pitch - note.midi) < ownReach;
}
