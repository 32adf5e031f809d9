// The files that `levare backing` writes: WAV read back by the RIFF rules (Microsoft & IBM 1991) and measured by BS.1770-4, FLAC
// by a decoder of other hands than our encoder's.

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { FLACDecoder } from '@wasm-audio-decoders/flac';
import { afterAll, expect, test } from 'vitest';
import { truePeakDb } from '#sound';
import { backing } from '../../src/cli/commands/backing.ts';
import { loudnessOf } from './whole-track.ts';

const folder = mkdtempSync(join(tmpdir(), 'levare-track-file-'));
afterAll(() => rmSync(folder, { recursive: true }));

async function write(name: string, seed: string, format = 'wav'): Promise<Buffer> {
  const spec = join(folder, 'spec.json');
  writeFileSync(
    spec,
    JSON.stringify({ kind: 'backing', chart: '| Dm7 | G7 | Cmaj7 | A7 |', choruses: 2, tempo: 160 }),
  );
  const out = join(folder, name);
  expect(await backing([spec, '--format', format, '--seed', seed, '--out', out])).toBe(0);
  return readFileSync(out);
}

test('a WAV file of the command is whole, level and the same for the same seed', async () => {
  const file = await write('one.wav', '5');
  expect(file.toString('latin1', 0, 4) + file.toString('latin1', 8, 16)).toBe('RIFFWAVEfmt ');
  expect(file.readUInt32LE(4)).toBe(file.length - 8);
  const [channels, rate, data] = [file.readUInt16LE(22), file.readUInt32LE(24), file.readUInt32LE(40)];
  expect([channels, rate, data]).toEqual([2, 44_100, file.length - 44]);
  const frames = data / 4;
  // One bar counted in and one of the ending beyond eight bars, at 160: the last bar rings for a bar more, and two seconds.
  expect(frames / rate).toBeGreaterThan((9 * 4 * 60) / 160);
  const channel = (at: number) =>
    Float32Array.from({ length: frames }, (_, n) => file.readInt16LE(44 + 4 * n + at) / 32_768);
  const sides = [channel(0), channel(2)];
  const loudness = loudnessOf(sides, rate);
  expect(Math.abs(loudness + 16), `${loudness} LUFS`).toBeLessThanOrEqual(0.5);
  expect(truePeakDb(sides)).toBeLessThanOrEqual(-1);
  expect((await write('again.wav', '5')).equals(file)).toBe(true);
  expect((await write('other.wav', '6')).equals(file)).toBe(false);
});

test('a FLAC file of the command holds the samples of the WAV file, every one, and is smaller', async () => {
  const [wav, flac] = [await write('same.wav', '5'), await write('same.flac', '5', 'flac')];
  expect(flac.toString('latin1', 0, 4)).toBe('fLaC'); // RFC 9639, section 6
  expect(flac.length).toBeLessThan(0.75 * wav.length);
  const decoder = new FLACDecoder();
  await decoder.ready;
  const read = await decoder.decodeFile(new Uint8Array(flac));
  decoder.free();
  expect(read.errors).toEqual([]);
  expect([read.sampleRate, read.bitDepth, read.channelData.length]).toEqual([44_100, 16, 2]);
  const frames = (wav.length - 44) / 4;
  expect(read.samplesDecoded).toBe(frames);
  let other = 0;
  read.channelData.forEach((samples, channel) => {
    for (let n = 0; n < frames; n++)
      // The decoder's full scale is 32767.
      if (Math.round((samples[n] ?? 9) * 32_767) !== wav.readInt16LE(44 + 4 * n + 2 * channel)) other++;
  });
  expect(other).toBe(0);
});
