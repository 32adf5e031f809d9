// A WAV file of 16-bit samples. Source: Microsoft & IBM, Multimedia Programming Interface and Data Specifications 1.0
// (1991), RIFF WAVE; rounding with triangular dither is left out: music levelled to -16 LUFS hides the last bit.

const bytesInSample = 2;

/** The bytes before the samples: `frames` of one sample for each channel follow. */
export function wavHeader(frames: number, sampleRate: number, channels = 2): Uint8Array {
  const bytesInFrame = channels * bytesInSample;
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
  view.setUint16(22, channels, true);
  view.setUint32(24, sampleRate, true);
  view.setUint32(28, sampleRate * bytesInFrame, true);
  view.setUint16(32, bytesInFrame, true);
  view.setUint16(34, 8 * bytesInSample, true);
  text(36, 'data');
  view.setUint32(40, data, true);
  return bytes;
}

/**
 * The samples of channels of one length as they stand in the file: 16 bits, little-endian, the channels in turn. Those
 * outside -1 to 1 are held at the ends.
 */
export function wavSamples(channels: readonly Float32Array[]): Uint8Array {
  const frames = channels[0]?.length ?? 0;
  const bytes = new Uint8Array(frames * channels.length * bytesInSample);
  const view = new DataView(bytes.buffer);
  let at = 0;
  for (let frame = 0; frame < frames; frame++)
    for (const channel of channels) {
      const sample = Math.max(-1, Math.min(1, channel[frame] ?? 0));
      view.setInt16(at, Math.round(sample * 32767), true);
      at += bytesInSample;
    }
  return bytes;
}

/** A whole file. */
export function formatWav(channels: readonly Float32Array[], sampleRate: number): Uint8Array {
  const header = wavHeader(channels[0]?.length ?? 0, sampleRate, channels.length);
  const samples = wavSamples(channels);
  const file = new Uint8Array(header.length + samples.length);
  file.set(header);
  file.set(samples, header.length);
  return file;
}
