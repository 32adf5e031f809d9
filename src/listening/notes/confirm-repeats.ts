// Whether a pitch that seems to begin again does: the player's own partials must dip or swell there. A drum or a chord
// of the backing makes the spectrum rise too, but not on those partials.

import { midiToFrequency } from '#music';
import { commonRate } from '../pitch-track/observe-take.ts';
import { createFrameSpectrum } from '../signal/frame-spectrum.ts';
import type { SampleReader } from '../signal/sample-reader.ts';
import type { HeardNote } from './heard-note.ts';

/** 64 ms, with zeros to twice that. */
const frameLength = 1024;
const fftSize = 2 * frameLength;
const bins = fftSize / 2 + 1;
const partials = 8;
/** Moments of 10 ms before and after the onset that are looked at, and where among them the dip may lie. */
const before = 9;
const after = 12;
const dipFrom = 5;
const dipTo = 12;
/** Least dip, or rise within 30 ms, of a note that begins again, dB; 98 % of real ones have more. */
const leastChange = 1.3;
/** Notes further apart than this, in seconds, are not one. */
const tie = 0.04;

/** The notes, with those joined that only seemed to begin again. */
export function confirmRepeats(reader: SampleReader, notes: readonly HeardNote[]): readonly HeardNote[] {
  const measure = createPartialMeter(reader);
  const confirmed: HeardNote[] = [];
  for (const note of notes) {
    const last = confirmed[confirmed.length - 1];
    const repeats = last !== undefined && last.midi === note.midi && note.onset - last.offset <= tie;
    if (repeats && changeAround(measure, note) < leastChange) {
      confirmed[confirmed.length - 1] = joinNotes(last, note);
    } else confirmed.push(note);
  }
  return confirmed;
}

function joinNotes(first: HeardNote, second: HeardNote): HeardNote {
  const longer = second.offset - second.onset > first.offset - first.onset ? second : first;
  return { ...longer, onset: first.onset, offset: second.offset, db: Math.max(first.db, second.db) };
}

/** The larger of the dip and the steepest rise of the note's partials around its onset, dB. */
function changeAround(measure: (note: HeardNote) => readonly number[], note: HeardNote): number {
  const levels = measure(note);
  const bottom = Math.min(...levels.slice(dipFrom, dipTo + 1));
  const dip = Math.min(Math.max(...levels.slice(0, 7)), Math.max(...levels.slice(before + 2))) - bottom;
  let steepest = 0;
  for (let i = 4; i < 16; i++) steepest = Math.max(steepest, (levels[i + 3] ?? 0) - (levels[i] ?? 0));
  return Math.max(dip, steepest);
}

/** Measures the level of a note's partials, dB, at every moment around its onset. */
function createPartialMeter(reader: SampleReader): (note: HeardNote) => readonly number[] {
  const { power, analyse } = createFrameSpectrum(frameLength, fftSize);
  const step = commonRate / 100;
  const samples = new Float32Array((before + after) * step + frameLength);
  return (note) => {
    reader.read(Math.round((note.onset - before * 0.01) * commonRate) - frameLength / 2, samples);
    const spacing = (midiToFrequency(note.midi + note.cents / 100) * fftSize) / commonRate;
    return Array.from({ length: before + after + 1 }, (_, i) => {
      analyse(samples, i * step);
      let sum = 0;
      for (let p = 1; p <= partials; p++) {
        const from = Math.floor(p * spacing * 0.985);
        const to = Math.ceil(p * spacing * 1.015);
        if (to >= bins) break;
        let peak = 0;
        for (let k = from; k <= to; k++) peak = Math.max(peak, power[k] ?? 0);
        sum += Math.sqrt(peak);
      }
      return 20 * Math.log10(sum + 1e-9);
    });
  };
}
