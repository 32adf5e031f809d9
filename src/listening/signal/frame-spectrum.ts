// The power spectrum of a short stretch of sound under a Hann window: what every step that looks at partials begins with.

import { createRealFft, type RealFft } from './fft.ts';
import { createHannWindow } from './window.ts';

/** The spectrum of one frame after another; `power` is overwritten by the next. */
export interface FrameSpectrum {
  /** Power of bins 0 … half the transform's length. */
  readonly power: Float64Array;
  /** The transform and the window, for those who need more of them than a frame's spectrum. */
  readonly fft: RealFft;
  readonly window: Float64Array;
  /** Takes the frame that starts at index `start`; what lies outside the samples is silence. */
  analyse(samples: Float32Array, start: number): void;
}

/** Spectra of frames of `frameLength` samples, with zeros up to `fftSize` (a power of two): bins 0 to half of it. */
export function createFrameSpectrum(frameLength: number, fftSize = frameLength): FrameSpectrum {
  const fft = createRealFft(fftSize);
  const window = createHannWindow(frameLength);
  const power = new Float64Array(fftSize / 2 + 1);
  return {
    power,
    fft,
    window,
    analyse: (samples, start) => fft.power(samples, start, window, power),
  };
}
