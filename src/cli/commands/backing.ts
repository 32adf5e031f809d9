// `levare backing SPEC.json …`: a chart played by the band, as sound or as MIDI.

import { readFile } from 'node:fs/promises';
import { err, ok, type Result } from '#core';
import { type Arrangement, arrange, arrangementToMidi, backingToSpec, parseBackingMaterial } from '#music';
import { createBand } from '#sound';
import { putBytes } from './put-bytes.ts';
import { readJsonFile } from './read-file.ts';
import { readChoice, readName, readWhole, readWords, textOf } from './read-words.ts';
import { refuse } from './refuse.ts';
import { writeTrack } from './write-track.ts';

const formats = ['wav', 'flac', 'midi'] as const;
const sampleRate = 44_100;

interface Wanted {
  readonly file: string;
  readonly format: (typeof formats)[number];
  readonly seed: number;
  /** Where to write; null for standard output. */
  readonly out: string | null;
}

export async function backing(words: readonly string[]): Promise<number> {
  const wanted = readWanted(words);
  if (!wanted.ok) return refuse('backing', wanted.error);
  const { file, format, seed, out } = wanted.value;
  const given = await readJsonFile(file);
  if (!given.ok) return refuse('backing', given.error);
  const material = parseBackingMaterial(given.value);
  if (!material.ok) return refuse('backing', `${file}: ${material.error.message}`);
  const arrangement = arrange(backingToSpec(material.value), seed);
  const written =
    format === 'midi'
      ? await putBytes(arrangementToMidi(arrangement, material.value.title ?? 'Backing'), out)
      : await writeSound(arrangement, format, out);
  return written.ok ? 0 : refuse('backing', written.error, 1);
}

function readWanted(words: readonly string[]): Result<Wanted, string> {
  const read = readWords(words, {
    format: { type: 'string' },
    seed: { type: 'string' },
    out: { type: 'string' },
  });
  if (!read.ok) return read;
  const file = readName(read.value, 'backing spec', 'levare backing SPEC.json --format wav --out FILE');
  if (!file.ok) return file;
  const format = readChoice(read.value, 'format', formats, null);
  if (!format.ok) return format;
  const seed = readWhole(read.value, 'seed', 0, 2 ** 31 - 1);
  if (!seed.ok) return seed;
  const out = textOf(read.value, 'out') ?? null;
  if (out === null && process.stdout.isTTY)
    return err(`--out is missing: a ${format.value} file is not for reading on a screen.`);
  return ok({ file: file.value, format: format.value, seed: seed.value ?? 1, out });
}

async function writeSound(
  arrangement: Arrangement,
  format: 'wav' | 'flac',
  out: string | null,
): Promise<Result<null, string>> {
  // From the sources and from the build the way is the same.
  const path = new URL('../../../dist/sound/band.sf3', import.meta.url);
  let bank: Uint8Array;
  try {
    bank = await readFile(path);
  } catch {
    return err(`The band's sounds are not at ${path.pathname}; make them with: npm run build`);
  }
  return writeTrack(await createBand(bank, sampleRate).play(arrangement), sampleRate, format, out);
}
