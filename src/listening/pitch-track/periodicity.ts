// How periodic a short frame is at every lag: its autocorrelation over that of its window (Boersma 1993, "Accurate
// short-term analysis of the fundamental frequency", eq. 8-9), from the power spectrum with the steady noise taken off.

import { createFrameSpectrum, type FrameSpectrum } from '../signal/frame-spectrum.ts';
import { createTailSubtraction, type TailModel } from '../signal/tail-subtraction.ts';

/** Samples per frame at every rate: 32 ms at 16 kHz, 64 ms at 8 kHz, 128 ms at 4 kHz. */
export const frameLength = 512;
/** Points of a frame's transform. */
export const fftSize = 2 * frameLength;
/** Bins of a frame's power spectrum, from 0 to half the rate. */
export const frameBins = fftSize / 2 + 1;
/** Past this lag a Hann frame says nothing. */
const lastLag = 0.75 * frameLength;

/** Power left of what is deeper than the instrument goes (15 dB down): a bass in the room must not hide the player. */
const turnedDown = 0.03;

const noFloor = new Float64Array(frameBins);

/** One frame's spectrum and autocorrelation; the arrays are overwritten by the next frame. */
export interface Periodicity {
  /** Power per bin as it is; bin k lies at k · rate / 1024 hertz. */
  readonly whole: Float64Array;
  /** The same without the noise floor and the tail of earlier sound. */
  readonly power: Float64Array;
  /** Normalised autocorrelation for lags 0 … 511: 1 at lag 0, near 1 at the period of a periodic sound. */
  readonly correlation: Float64Array;
  /** Mean square of the last frame once the tail of earlier sound is taken off too. */
  fresh: number;
  /**
   * Takes the frame centred on sample `centre`; `floor` is the noise power per bin, and what lies below bin `lowest` is
   * turned down. Gives the mean square that is left.
   */
  analyse(samples: Float32Array, centre: number, floor: Float64Array | null, lowest: number): number;
}

/** Makes the analysis with its tables and buffers; frames must follow each other at the hop of `tail`. */
export function createPeriodicity(tail: TailModel): Periodicity {
  const subtraction = createTailSubtraction(frameBins, tail);
  const spectrum = createFrameSpectrum(frameLength, fftSize);
  const { fft, power: whole } = spectrum;
  const windowPower = spectrum.window.reduce((sum, w) => sum + w * w, 0);
  const power = new Float64Array(frameBins);
  const correlation = new Float64Array(frameBins);
  const windowGain = createWindowGain(spectrum);

  function analyse(
    samples: Float32Array,
    centre: number,
    floor: Float64Array | null,
    lowest: number,
  ): number {
    spectrum.analyse(samples, centre - frameLength / 2);
    const noise = floor ?? noFloor;
    let total = 0;
    for (let k = 0; k < frameBins; k++) {
      let value = (whole[k] ?? 0) - (noise[k] ?? 0);
      if (value < 0) value = 0;
      power[k] = value;
      total += value;
    }
    for (let k = 0; k < lowest; k++) {
      const value = power[k] ?? 0;
      power[k] = value * turnedDown;
      total -= value * (1 - turnedDown);
    }
    subtraction.apply(power);
    fft.autocorrelation(power, correlation);
    periodicity.fresh = (correlation[0] ?? 0) / windowPower;
    const scale = 1 / ((correlation[0] ?? 0) + 1e-20);
    for (let lag = 0; lag < lastLag; lag++)
      correlation[lag] = (correlation[lag] ?? 0) * scale * (windowGain[lag] ?? 0);
    correlation.fill(0, lastLag);
    return (2 * total) / (fftSize * windowPower);
  }

  const periodicity: Periodicity = { whole, power, correlation, fresh: 0, analyse };
  return periodicity;
}

/** One over the window's own normalised autocorrelation, up to the last lag that says anything. */
function createWindowGain({ power, fft, analyse }: FrameSpectrum): Float64Array {
  // A frame of ones under the window is the window itself.
  analyse(new Float32Array(frameLength).fill(1), 0);
  const output = new Float64Array(frameBins);
  fft.autocorrelation(power, output);
  const atZero = output[0] ?? 1;
  return output.slice(0, lastLag).map((value) => atZero / value);
}
