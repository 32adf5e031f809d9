// What the microphone caught of a backing is not the player's: notes that are softer than the playing, lie outside its
// register and are less clear, all taken together.

import { quantile } from '../signal/spans.ts';
import type { HeardNote } from './heard-note.ts';

/** Fewest notes that show what the playing is like. */
const fewestNotes = 4;
/** A note this many dB below the median is unremarkable; each further `softStep` dB counts one. */
const softFrom = 6;
const softStep = 8;
/** Every so many semitones outside the register of the louder notes count one. */
const registerStep = 6;
/** Confidence below this counts, by this factor. */
const clear = 0.85;
const unclearFactor = 4;
/** A note may move this far out of the louder notes' register, in semitones. */
const registerMargin = 3;
const mostOdd = 1.5;

/** The notes without those that stand out as someone else's. */
export function leaveOutBacking(notes: readonly HeardNote[]): readonly HeardNote[] {
  if (notes.length < fewestNotes) return notes;
  const usual = quantile(
    Float32Array.from(notes, (note) => note.db),
    0.6,
  );
  const loud = notes.filter((note) => note.db > usual - softFrom);
  const register = Float32Array.from(loud, (note) => note.midi);
  const low = quantile(register, 0.04) - registerMargin;
  const high = quantile(register, 0.96) + registerMargin;
  return notes.filter((note) => {
    const soft = Math.max(0, usual - note.db - softFrom) / softStep;
    const outside = Math.max(0, low - note.midi, note.midi - high) / registerStep;
    const unclear = Math.max(0, clear - note.confidence) * unclearFactor;
    // Softness alone is expression; a strange register alone is a leap.
    return soft === 0 || soft + outside + unclear < mostOdd || outside + unclear === 0;
  });
}
