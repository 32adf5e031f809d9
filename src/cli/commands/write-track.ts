// A track of any length to a WAV or FLAC file at the target loudness, with little in memory: played into a file of its own, measured
// there, and written out with the gain found.

import { once } from 'node:events';
import {
  closeSync,
  createReadStream,
  createWriteStream,
  mkdtempSync,
  openSync,
  readSync,
  rmSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ok, type Result } from '#core';
import {
  type BandTrack,
  findLevel,
  levelledPieces,
  type StereoSound,
  type StoredSound,
  wavHeader,
  wavSamples,
} from '#sound';
import { couldNotWrite } from './put-bytes.ts';
import { writeFlac } from './write-flac.ts';

const pieceLength = 1 << 16;
const bytesInFrame = 8; // two samples of 32 bits, left and right in turn

/** Writes the track; `out` null is standard output. */
export async function writeTrack(
  track: BandTrack,
  sampleRate: number,
  format: 'wav' | 'flac',
  out: string | null,
): Promise<Result<null, string>> {
  const folder = mkdtempSync(join(tmpdir(), 'levare-track-'));
  const file = openSync(join(folder, 'samples'), 'w+');
  try {
    const sound = store(track, sampleRate, file);
    const { gain } = findLevel(sound);
    const pieces = levelledPieces(sound, gain);
    if (format === 'wav') await putAll(out, wavFile(sound.length, sampleRate, pieces));
    else {
      // Its head is known last: made in a file of its own.
      const made = join(folder, 'track.flac');
      await writeFlac(pieces, sampleRate, made);
      await putAll(out, createReadStream(made));
    }
    return ok(null);
  } catch (fault) {
    if (!(fault instanceof Error && 'code' in fault)) throw fault;
    return { ok: false, error: couldNotWrite(out ?? 'The track', fault) };
  } finally {
    closeSync(file);
    rmSync(folder, { recursive: true });
  }
}

/** Plays the track to its end into an open file. */
function store(track: BandTrack, sampleRate: number, file: number): StoredSound {
  for (let done = 0; done < track.length; ) {
    const { left, right } = track.next(pieceLength);
    const frames = new Float32Array(2 * left.length);
    left.forEach((sample, at) => {
      frames[2 * at] = sample;
      frames[2 * at + 1] = right[at] ?? 0;
    });
    writeSync(file, frames);
    done += left.length;
  }
  return {
    length: track.length,
    sampleRate,
    read(from, to) {
      const frames = new Float32Array(2 * (to - from));
      readSync(file, frames, 0, frames.byteLength, from * bytesInFrame);
      return {
        left: Float32Array.from({ length: to - from }, (_, at) => frames[2 * at] ?? 0),
        right: Float32Array.from({ length: to - from }, (_, at) => frames[2 * at + 1] ?? 0),
      };
    },
  };
}

function* wavFile(length: number, sampleRate: number, pieces: Iterable<StereoSound>): Generator<Uint8Array> {
  yield wavHeader(length, sampleRate);
  for (const piece of pieces) yield wavSamples([piece.left, piece.right]);
}

async function putAll(
  out: string | null,
  pieces: Iterable<Uint8Array> | AsyncIterable<Uint8Array>,
): Promise<void> {
  const stream = out === null ? process.stdout : createWriteStream(out);
  const failed = new Promise<never>((_, fail) => stream.once('error', fail));
  failed.catch(() => {}); // waited for below
  for await (const bytes of pieces)
    if (!stream.write(bytes)) await Promise.race([once(stream, 'drain'), failed]);
  if (out === null) return;
  stream.end();
  await Promise.race([once(stream, 'finish'), failed]);
}
