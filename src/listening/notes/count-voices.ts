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
const bin = commonRate / frameLength;
/** Shorter notes than this, in seconds, are not judged. */
const shortest = 0.15;
/** Where in a note it is looked at, as shares of its length: another voice is there in all of them. */
const places: readonly number[] = [0.5, 0.35, 0.65, 0.8];
/** The pitch of a moment counts for the note's when it is this near, in semitones. */
const near = 2;
/** Highest frequency looked at, hertz, unless the note itself is higher than half of it. */
const highestHz = 3500;
/** Share of the power that may lie off the partials (-6 dB under the whole). */
const mostOff = 0.25;
/** Share of the power from which a peak off the partials is another sound's (-17 dB). */
const strangePeak = 0.02;
/** Partials weaker than this beside the strongest (power, -34 dB) count as missing. */
const missing = 10 ** -3.4;
/** Share of the partials up to the highest that a single tone has at least; a clarinet has every other one. */
const fewestPresent = 0.45;

/** Power from which a partial is there when tones are told apart by it (-28 dB beside the strongest). */
const faint = 10 ** -2.8;
/** Partials looked at for that, and how many times as high as their common undertone two tones may be. */
const mostPartials = 16;
const highestTone = 8;

/** How much of something else sounds in a note. */
export interface Company {
  /** Something else is about as loud. */
  readonly isCrowded: boolean;
  /** Something else has a partial that stands out. */
  readonly hasStrangePeak: boolean;
}

const alone: Company = { isCrowded: false, hasStrangePeak: false };

/** What sounds beside each of `notes`; `f0` is the pitch at every moment, which a vibrato moves. */
export function findCompany(
  reader: SampleReader,
  notes: readonly HeardNote[],
  f0: { readonly hop: number; readonly midi: readonly (number | null)[] },
): readonly Company[] {
  const { power, analyse } = createFrameSpectrum(frameLength);
  const samples = new Float32Array(frameLength);
  return notes.map((note) => {
    if (note.offset - note.onset < shortest) return alone;
    let company = { isCrowded: true, hasStrangePeak: true };
    for (const place of places) {
      const seconds = note.onset + place * (note.offset - note.onset);
      const pitch = f0.midi[Math.round(seconds / f0.hop)] ?? note.midi;
      reader.read(Math.round(seconds * commonRate) - frameLength / 2, samples);
      analyse(samples, 0);
      const key = Math.abs(pitch - note.midi) < near ? pitch : note.midi + note.cents / 100;
      const here = lookBeside(power, midiToFrequency(key));
      company = {
        isCrowded: company.isCrowded && here.isCrowded,
        hasStrangePeak: company.hasStrangePeak && here.hasStrangePeak,
      };
      if (!company.isCrowded && !company.hasStrangePeak) return alone;
    }
    return company;
  });
}

function lookBeside(power: Float64Array, hertz: number): Company {
  const spacing = hertz / bin;
  const last = Math.min(bins - 2, Math.round(Math.max(highestHz, 2 * hertz) / bin));
  const reach = Math.max(2.5, Math.min(spacing / 3, 4));
  let total = 0;
  let on = 0;
  let strange = 0;
  const partials = new Float64Array(Math.floor(last / spacing) + 1);
  for (let k = Math.max(2, Math.floor(spacing / 2)); k <= last; k++) {
    const value = power[k] ?? 0;
    total += value;
    const partial = Math.max(1, Math.round(k / spacing));
    // Vibrato and stiff strings widen the partials as they rise.
    const off = Math.abs(k - partial * spacing) - reach - 0.015 * k;
    if (off <= 0) {
      on += value;
      if (partial < partials.length) partials[partial] = Math.max(partials[partial] ?? 0, value);
    } else if (off > 1) strange = Math.max(strange, (power[k - 1] ?? 0) + value + (power[k + 1] ?? 0));
  }
  if (total === 0) return alone;
  const hasStrangePeak = strange / total > strangePeak;
  if (1 - on / total > mostOff) return { isCrowded: true, hasStrangePeak };
  const strongest = partials.reduce((most, value) => Math.max(most, value), 0);
  if (Math.max(partials[1] ?? 0, partials[2] ?? 0, partials[3] ?? 0) < strongest * missing)
    return { isCrowded: true, hasStrangePeak };
  let highest = 0;
  let present = 0;
  for (let h = 1; h < Math.min(partials.length, 13); h++) {
    if ((partials[h] ?? 0) < strongest * missing) continue;
    highest = h;
    present++;
  }
  const isThin = highest >= 5 && present / highest < fewestPresent;
  return { isCrowded: isThin || isCommonUndertone(partials, strongest * faint), hasStrangePeak };
}

/**
 * Whether the partials above `least` are those of two tones p and q times as high as the pitch heard, which itself is only
 * what they have in common: all are multiples of p or of q, and the first is not there.
 */
function isCommonUndertone(partials: Float64Array, least: number): boolean {
  const isThere = (h: number) => (partials[h] ?? 0) >= least;
  if (isThere(1)) return false;
  const there = Array.from({ length: Math.min(partials.length, mostPartials) }, (_, h) => h).filter(
    (h) => h > 0 && isThere(h),
  );
  for (let q = 3; q <= highestTone; q++)
    for (let p = 2; p < q; p++)
      if (isThere(p) && isThere(q) && q % p !== 0 && there.every((h) => h % p === 0 || h % q === 0))
        return true;
  return false;
}
