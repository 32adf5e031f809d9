// Notes from a bare pitch track, for libraries that stop at pitch: pitch steps, gaps and rises of loudness part the notes.
// Plain and fair, with the settings that did best on the development takes.

import type { ScoredNote } from '../match-notes.ts';
import { midiToFrequency } from '../score-table.ts';

export interface PitchFrame {
  /** MIDI number, or null when unvoiced. */
  readonly midi: number | null;
  /** Level in dB. */
  readonly level: number;
}

export interface SegmentRule {
  /** Semitones from the running median that begin a new note. */
  readonly step: number;
  /** Frames a new pitch must last. */
  readonly hold: number;
  /** Unvoiced frames that end a note. */
  readonly gap: number;
  /** Rise in dB over four frames that begins a note on the same pitch. */
  readonly rise: number;
  /** Shortest note in seconds. */
  readonly shortest: number;
}

export const usualRule: SegmentRule = { step: 0.7, hold: 3, gap: 2, rise: 6, shortest: 0.06 };

/** Level of a frame in dB. */
export function levelOf(frame: Float32Array): number {
  let sum = 0;
  for (const x of frame) sum += x * x;
  return 10 * Math.log10(sum / Math.max(1, frame.length) + 1e-12);
}

/** Parts a track with frames every `hop` seconds, the first centred at `first` seconds. */
export function segmentPitch(
  frames: readonly PitchFrame[],
  hop: number,
  first: number,
  rule: SegmentRule = usualRule,
): readonly ScoredNote[] {
  const smooth = frames.map((frame, k) => {
    if (frame.midi === null) return null;
    const near = frames.slice(Math.max(0, k - 2), k + 3).flatMap((f) => (f.midi === null ? [] : [f.midi]));
    return median(near);
  });
  const notes: ScoredNote[] = [];
  let start = -1;
  let pitches: number[] = [];
  let silent = 0;
  const close = (end: number) => {
    if (start >= 0 && (end - start) * hop >= rule.shortest)
      notes.push({
        onset: first + start * hop,
        offset: first + end * hop,
        hz: midiToFrequency(median(pitches)),
      });
    start = -1;
    pitches = [];
  };
  for (const [k, pitch] of smooth.entries()) {
    if (pitch === null) {
      silent++;
      if (silent >= rule.gap) close(k - silent + 1);
      continue;
    }
    silent = 0;
    if (start >= 0) {
      const centre = median(pitches.slice(-15));
      const leaves = smooth
        .slice(k, k + rule.hold)
        .every((p) => p !== null && Math.abs(p - centre) > rule.step);
      const before = frames[k - 4]?.level ?? 0;
      const rises = (frames[k]?.level ?? 0) - before > rule.rise && (k - start) * hop > 0.08;
      if (leaves || rises) close(k);
    }
    if (start < 0) start = k;
    pitches.push(pitch);
  }
  close(frames.length);
  return notes;
}

/** The pitch of a track at a time. */
export function pitchOfTrack(
  frames: readonly PitchFrame[],
  hop: number,
  first: number,
): (seconds: number) => number | null {
  return (seconds) => frames[Math.round((seconds - first) / hop)]?.midi ?? null;
}

function median(list: readonly number[]): number {
  const sorted = [...list].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}
