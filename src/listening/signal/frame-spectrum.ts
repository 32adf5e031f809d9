// The spectrum of a short stretch of sound under a Hann window: what every step that looks at partials begins with.

import { createRealFft, type RealFft } from './fft.ts';
import { createHannWindow } from './window.ts';

/** The spectrum of one frame after another; the arrays are overwritten by the next. */
export interface FrameSpectrum {
  readonly re: Float64Array;
  readonly im: Float64Array;
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
  const input = new Float64Array(fftSize);
  const re = new Float64Array(fftSize / 2 + 1);
  const im = new Float64Array(fftSize / 2 + 1);
  return {
    re,
    im,
    fft,
    window,
    analyse(samples, start) {
      for (let n = 0; n < frameLength; n++) input[n] = (samples[start + n] ?? 0) * (window[n] ?? 0);
      fft.forward(input, re, im);
    },
  };
}
