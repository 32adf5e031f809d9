// Dynamics: how far soft and loud lie apart, and the shape over the take.

import { type EvidenceInput, notePassage } from './evidence-input.ts';
import { couldNotHear, figure, type Row } from './figure.ts';
import { deviation, mean, quantileOf } from './statistics.ts';

export type DynamicsFigure = 'range' | 'slope';
export type DynamicsRow = Row<
  DynamicsFigure,
  {
    /** dB beside the take's mean, over eight equal parts of it; null where nothing is played. */
    readonly shape: readonly (number | null)[];
  }
>;

const parts = 8;
/** Levels of single notes are heard with about this error in dB, from the take set. */
const hearingError = 1.2;

/** Measures loudness of the notes beside each other. Nothing is said of the distance to the microphone. */
export function hearDynamics(input: EvidenceInput): DynamicsRow {
  const { notes } = input;
  if (notes.length < 8) return couldNotHear('Fewer than eight notes were heard.');
  const levels = notes.map((note) => note.db);
  const range = quantileOf(levels, 0.9) - quantileOf(levels, 0.1);
  // error of a tenth: from the scatter of the order statistics around it
  const rangeError = Math.hypot((2.4 * deviation(levels)) / Math.sqrt(notes.length), hearingError);
  const from = notes[0]?.onset ?? 0;
  const span = Math.max(1e-3, (notes.at(-1)?.offset ?? 0) - from);
  const average = mean(levels);
  const shape = Array.from({ length: parts }, (_, k) => {
    const inside = notes.filter((n) => Math.floor(((n.onset - from) / span) * parts) === k).map((n) => n.db);
    return inside.length === 0 ? null : mean(inside) - average;
  });
  const times = notes.map((n) => (n.onset - from) / span - 0.5);
  const centre = mean(times);
  const spread = times.reduce((sum, t) => sum + (t - centre) ** 2, 0);
  const slope = times.reduce((sum, t, i) => sum + (t - centre) * ((levels[i] ?? 0) - average), 0) / spread;
  const byLevel = levels.map((db, i) => ({ db, i })).sort((a, b) => a.db - b.db);
  const [softest, loudest] = [byLevel[0]?.i ?? 0, byLevel.at(-1)?.i ?? 0];
  return {
    heard: true,
    figures: {
      range: figure(range, rangeError, 'db'),
      slope: figure(slope, (2 * deviation(levels)) / Math.sqrt(spread), 'db'),
    },
    details: { shape },
    passages: [
      notePassage(input, softest, softest, 'the softest note'),
      notePassage(input, loudest, loudest, 'the loudest note'),
    ],
  };
}
