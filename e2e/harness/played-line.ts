// A player for tests: a line of clarinet-like tones as a WAV file for the browser's fake microphone. Deterministic; what was
// played is known exactly.

import { formatWav } from '#sound';

const sampleRate = 48_000;
/** A line in D dorian, as MIDI numbers: up and down by step and leap, so that each note is told from the last. */
const line = [62, 64, 65, 67, 69, 67, 65, 64, 65, 69, 72, 71, 69, 67, 64, 62];
/** How notes lie about their pitch, in units of `wander`: mean 0 and standard deviation 1 to two digits. */
const astray = [-1.45, 1.24, -0.62, 0.31, -1.04, 0.72, 0.1, 1.55, -1.55, 0.52, -0.82, 1.04];

export interface PlayedLine {
  readonly tempo: number;
  readonly seconds: number;
  /** Standard deviation of the notes' pitches, in cents. */
  readonly wander: number;
}

/** Crotchets, one after another, each with a small breath before the next. */
export function playLine({ tempo, seconds, wander }: PlayedLine): Uint8Array {
  const beat = 60 / tempo;
  const sound = new Float32Array(Math.round(seconds * sampleRate));
  for (let n = 0; n * beat < seconds; n++) {
    const midi = (line[n % line.length] ?? 62) + ((astray[n % astray.length] ?? 0) * wander) / 100;
    const hertz = 440 * 2 ** ((midi - 69) / 12);
    const from = Math.round(n * beat * sampleRate);
    const length = Math.min(sound.length - from, Math.round(beat * 0.86 * sampleRate));
    for (let i = 0; i < length; i++) {
      const at = i / sampleRate;
      const swell = Math.min(1, at / 0.02, (length - i) / sampleRate / 0.04);
      let sample = 0;
      for (const [k, share] of [1, 0.08, 0.5, 0.05, 0.25, 0.03, 0.1].entries())
        sample += share * Math.sin(2 * Math.PI * hertz * (k + 1) * at);
      sound[from + i] = 0.28 * swell * sample;
    }
  }
  return formatWav([sound], sampleRate);
}

/** Whether these MIDI numbers, one after another, are what the line plays from some note on, over and over. */
export function isOfLine(played: readonly number[]): boolean {
  return line.some((_, from) => played.every((midi, n) => midi === line[(from + n) % line.length]));
}
