// Whether more than the heard pitch sounds in a note: the power in its spectrum that lies on none of its partials, and
// partials that a single tone would have and that are missing (a pitch that only two others have in common).

import { midiToFrequency } from '#music';
import { commonRate } from '../pitch-track/observe-take.ts';
import { createFrameSpectrum } from '../signal/frame-spectrum.ts';
import type { SampleReader } from '../signal/sample-reader.ts';
import type { HeardNote } from './heard-note.ts';

/** 128 ms: partials 40 Hz apart are told from each other. */
const frameLength = 2048;
const bins = frameLength / 2 + 1;
/** Shorter notes than this, in seconds, are not judged. */
const shortest = 0.15;
/** Highest frequency looked at, hertz, unless the note itself is higher than half of it. */
const highestHz = 3500;
/** Share of the power that may lie off the partials (-6 dB under the whole). */
const mostOff = 0.25;
/** Partials weaker than this beside the strongest (power, -34 dB) count as missing. */
const missing = 10 ** -3.4;
/** Share of the partials up to the highest that a single tone has at least; a clarinet has every other one. */
const fewestPresent = 0.45;

/** The notes among `notes` in which something else sounds about as loud, as a flag per note. */
export function findCrowdedNotes(reader: SampleReader, notes: readonly HeardNote[]): readonly boolean[] {
  const { power, analyse } = createFrameSpectrum(frameLength);
  const samples = new Float32Array(frameLength);
  return notes.map((note) => {
    if (note.offset - note.onset < shortest) return false;
    const middle = Math.round(((note.onset + note.offset) / 2) * commonRate);
    reader.read(middle - frameLength / 2, samples);
    analyse(samples, 0);
    return isCrowded(power, midiToFrequency(note.midi + note.cents / 100));
  });
}

function isCrowded(power: Float64Array, hertz: number): boolean {
  const bin = commonRate / frameLength;
  const spacing = hertz / bin;
  const last = Math.min(bins - 1, Math.round(Math.max(highestHz, 2 * hertz) / bin));
  const reach = Math.max(2.5, Math.min(spacing / 3, 4));
  let total = 0;
  let on = 0;
  const partials = new Float64Array(Math.floor(last / spacing) + 1);
  for (let k = Math.max(2, Math.floor(spacing / 2)); k <= last; k++) {
    const value = power[k] ?? 0;
    total += value;
    const partial = Math.max(1, Math.round(k / spacing));
    // Vibrato and stiff strings widen the partials as they rise.
    if (Math.abs(k - partial * spacing) > reach + 0.015 * k) continue;
    on += value;
    if (partial < partials.length) partials[partial] = Math.max(partials[partial] ?? 0, value);
  }
  if (total === 0) return false;
  if (1 - on / total > mostOff) return true;
  const strongest = partials.reduce((most, value) => Math.max(most, value), 0);
  if (Math.max(partials[1] ?? 0, partials[2] ?? 0, partials[3] ?? 0) < strongest * missing) return true;
  let highest = 0;
  let present = 0;
  for (let h = 1; h < Math.min(partials.length, 13); h++) {
    if ((partials[h] ?? 0) < strongest * missing) continue;
    highest = h;
    present++;
  }
  return highest >= 5 && present / highest < fewestPresent;
}
