// A WAV file of 16-bit samples. Source: Microsoft & IBM, Multimedia Programming Interface and Data Specifications 1.0
// (1991), RIFF WAVE; rounding with triangular dither is left out: music levelled to -16 LUFS hides the last bit.

import type { StereoSound } from './band.ts';

const bytesInFrame = 4;

/** The bytes before the samples: `frames` pairs of samples follow. */
export function wavHeader(frames: number, sampleRate: number): Uint8Array {
  const data = frames * bytesInFrame;
  const bytes = new Uint8Array(44);
  const view = new DataView(bytes.buffer);
  const text = (at: number, word: string) => {
    for (let n = 0; n < word.length; n++) bytes[at + n] = word.charCodeAt(n);
  };
  text(0, 'RIFF');
  view.setUint32(4, 36 + data, true);
  text(8, 'WAVEfmt ');
  view.setUint32(16, 16, true);
  view.setUint16(20, 1, true); // PCM
  view.setUint16(22, 2, true);
  view.setUint32(24, sampleRate, true);
  view.setUint32(28, sampleRate * bytesInFrame, true);
  view.setUint16(32, bytesInFrame, true);
  view.setUint16(34, 16, true);
  text(36, 'data');
  view.setUint32(40, data, true);
  return bytes;
}

/** Stereo samples as they stand in the file: 16 bits, little-endian. Those outside -1 to 1 are held at the ends. */
export function wavSamples({ left, right }: Pick<StereoSound, 'left' | 'right'>): Uint8Array {
  const bytes = new Uint8Array(left.length * bytesInFrame);
  const view = new DataView(bytes.buffer);
  const whole = (sample: number) => Math.round(Math.max(-1, Math.min(1, sample)) * 32767);
  for (let at = 0; at < left.length; at++) {
    view.setInt16(at * bytesInFrame, whole(left[at] ?? 0), true);
    view.setInt16(at * bytesInFrame + 2, whole(right[at] ?? 0), true);
  }
  return bytes;
}
