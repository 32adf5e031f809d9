// A track of any length to a WAV file at the target loudness, with little in memory: played into a file of its own, measured
// there, and written out with the gain found.

import { once } from 'node:events';
import { closeSync, createWriteStream, mkdtempSync, openSync, readSync, rmSync, writeSync } from 'node:fs';
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

const pieceLength = 1 << 16;
const bytesInFrame = 8; // two samples of 32 bits, left and right in turn

/** Writes the track; `out` null is standard output. */
export async function writeTrack(
  track: BandTrack,
  sampleRate: number,
  out: string | null,
): Promise<Result<null, string>> {
  const folder = mkdtempSync(join(tmpdir(), 'levare-track-'));
  const file = openSync(join(folder, 'samples'), 'w+');
  try {
    const sound = store(track, sampleRate, file);
    const { gain } = findLevel(sound);
    await writeAll(out, wavHeader(sound.length, sampleRate), levelledPieces(sound, gain));
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

async function writeAll(
  out: string | null,
  header: Uint8Array,
  pieces: Iterable<StereoSound>,
): Promise<void> {
  const stream = out === null ? process.stdout : createWriteStream(out);
  const failed = new Promise<never>((_, fail) => stream.once('error', fail));
  failed.catch(() => {}); // waited for below
  const put = async (bytes: Uint8Array) => {
    if (!stream.write(bytes)) await Promise.race([once(stream, 'drain'), failed]);
  };
  await put(header);
  for (const piece of pieces) await put(wavSamples([piece.left, piece.right]));
  if (out === null) return;
  stream.end();
  await Promise.race([once(stream, 'finish'), failed]);
}
