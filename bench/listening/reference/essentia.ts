// essentia.js (AGPL-3): its YIN on spectra and its own contour segmentation. Its probabilistic YIN and PitchMelodia were tried on
// the development takes and found fewer pitches (raw pitch 0.16 and 0.78 where this finds 0.99).

import type { Listener } from '../score-table.ts';
import { frequencyToMidi, midiToFrequency } from '../score-table.ts';
import { findReference, requireReference } from './load-reference.ts';

/** Lives in the program's own memory until it is deleted. */
interface Vector {
  size(): number;
  delete(): void;
}

interface EssentiaLike {
  arrayToVector(samples: Float32Array): Vector;
  vectorToArray(vector: Vector): Float32Array;
  Windowing(
    frame: unknown,
    normal: boolean,
    size: number,
    shape: string,
    zero: number,
    phase: boolean,
  ): {
    frame: Vector;
  };
  Spectrum(frame: Vector, size: number): { spectrum: Vector };
  PitchYinFFT(
    spectrum: Vector,
    size: number,
    interpolate: boolean,
    high: number,
    low: number,
    rate: number,
  ): { pitch: number; pitchConfidence: number };
  PitchContourSegmentation(
    pitch: Vector,
    signal: Vector,
    hop: number,
    shortest: number,
    step: number,
    rms: number,
    rate: number,
    a4: number,
  ): { onset: Vector; duration: Vector; MIDIpitch: Vector };
}

export interface EssentiaSettings {
  readonly shortest: number;
  readonly step: number;
  readonly rms: number;
  /** Confidence below which a frame has no pitch. */
  readonly sure: number;
  /** Seconds by which its times are moved. */
  readonly late: number;
}

const best: EssentiaSettings = { shortest: 0.03, step: 60, rms: -2, sure: 0.85, late: 0 };

/** Null when it is not installed. */
export function essentia(settings: EssentiaSettings = best): Listener | null {
  if (findReference('essentia.js') === null) return null;
  const lib = requireReference<{ Essentia: new (wasm: unknown) => EssentiaLike; EssentiaWASM: unknown }>(
    'essentia.js',
  );
  const program = new lib.Essentia(lib.EssentiaWASM);
  const hop = 256;
  const size = 2048;
  return {
    name: 'essentia.js',
    hear(samples, rate) {
      let peak = 1e-9;
      for (const x of samples) peak = Math.max(peak, Math.abs(x));
      const signal = program.arrayToVector(samples.map((x) => x / peak));
      const hz = new Float32Array(Math.max(0, Math.floor((samples.length - size) / hop)));
      for (let k = 0; k < hz.length; k++) {
        const frame = program.arrayToVector(samples.subarray(k * hop, k * hop + size));
        const windowed = program.Windowing(frame, true, size, 'hann', 0, true).frame;
        const spectrum = program.Spectrum(windowed, size).spectrum;
        const found = program.PitchYinFFT(spectrum, size, true, 4000, 30, rate);
        hz[k] = found.pitchConfidence > settings.sure ? found.pitch : 0;
        for (const vector of [frame, windowed, spectrum]) vector.delete();
      }
      const pitch = program.arrayToVector(hz);
      const rows = program.PitchContourSegmentation(
        pitch,
        signal,
        hop,
        settings.shortest,
        settings.step,
        settings.rms,
        rate,
        440,
      );
      const [onsets, lengths, midis] = [rows.onset, rows.duration, rows.MIDIpitch].map((v) =>
        v.size() === 0 ? new Float32Array(0) : program.vectorToArray(v),
      );
      for (const vector of [pitch, signal, rows.onset, rows.duration, rows.MIDIpitch]) vector.delete();
      return {
        notes: [...(onsets ?? [])].map((onset, i) => ({
          onset: onset + settings.late,
          offset: onset + settings.late + (lengths?.[i] ?? 0),
          hz: midiToFrequency(midis?.[i] ?? 0),
        })),
        pitchAt(seconds) {
          const value = hz[Math.round((seconds * rate - size / 2) / hop)] ?? 0;
          return value > 0 ? frequencyToMidi(value) : null;
        },
      };
    },
  };
}
