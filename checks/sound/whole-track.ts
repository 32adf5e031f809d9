// A track that is in memory as a whole: measured at once, and levelled as a file is.

import { createLoudnessMeter, findLevel, type Level, levelledPieces, type StereoSound } from '#sound';

/** Integrated loudness in LUFS; `weights` are 1 for channels in front and 1.41 for surround. */
export function loudnessOf(
  channels: readonly Float32Array[],
  sampleRate: number,
  weights: readonly number[] = channels.map(() => 1),
): number {
  const meter = createLoudnessMeter(weights, sampleRate);
  meter.add(channels);
  return meter.loudness();
}

/** What a file of this sound would hold, piece by piece. */
export function levelTrack({ left, right, sampleRate }: StereoSound): Level & {
  readonly pieces: readonly StereoSound[];
} {
  const stored = {
    length: left.length,
    sampleRate,
    read: (from: number, to: number) => ({ left: left.subarray(from, to), right: right.subarray(from, to) }),
  };
  const level = findLevel(stored);
  return { ...level, pieces: [...levelledPieces(stored, level.gain)] };
}
