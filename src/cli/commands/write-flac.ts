// A FLAC file of the samples a WAV file would hold: the same to the last bit, in about half the room (RFC 9639). Written by a
// library, which is loaded only when such a file is wanted.

import { type StereoSound, wavSamples } from '#sound';

/** Writes the pieces one after another into a file. */
export async function writeFlac(
  pieces: Iterable<StereoSound>,
  sampleRate: number,
  path: string,
): Promise<void> {
  const [{ AudioSample, AudioSampleSource, FilePathTarget, FlacOutputFormat, Output }, encoder] =
    await Promise.all([import('mediabunny'), import('@mediabunny/flac-encoder')]);
  encoder.registerFlacEncoder();
  const output = new Output({ format: new FlacOutputFormat(), target: new FilePathTarget(path) });
  const source = new AudioSampleSource({ codec: 'flac' });
  output.addAudioTrack(source);
  await output.start();
  let done = 0;
  for (const { left, right } of pieces) {
    const sample = new AudioSample({
      data: wavSamples([left, right]),
      format: 's16',
      numberOfChannels: 2,
      sampleRate,
      timestamp: done / sampleRate,
    });
    await source.add(sample);
    sample.close();
    done += left.length;
  }
  await output.finalize();
}
