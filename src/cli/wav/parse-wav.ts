// Reads a WAV file into mono samples. Source: Multimedia Programming Interface and Data Specifications 1.0 (IBM and
// Microsoft 1991) for RIFF and PCM; mmreg.h for float (3) and extensible (0xFFFE) formats.

import { longestTake } from '#contract';
import { err, ok, type Result } from '#core';

export interface WavSound {
  /** Mono, -1 to 1: the mean of all channels. */
  readonly samples: Float32Array;
  readonly sampleRate: number;
  readonly channels: number;
}

const lowestRate = 4000;
const highestRate = 400_000;
const mostChannels = 32;
/** Bytes of the longest format that says anything. */
const longestFormat = 64;
const mend = 'save it as 16- or 24-bit PCM';
/** Frames that are read at a time. */
const pieceFrames = 16_384;
/** Sizes written by programs that do not know yet how long the sound will be. */
const openSizes = [0, 0xffffffff, 0x7fffffff];

type ReadSample = (view: DataView, at: number) => number;

interface Format {
  readonly channels: number;
  readonly sampleRate: number;
  readonly sampleBytes: number;
  readonly readSample: ReadSample;
}

const readersByFormat: Readonly<Record<string, ReadSample>> = {
  '1 8': (view, at) => (view.getUint8(at) - 128) / 128,
  '1 16': (view, at) => view.getInt16(at, true) / 32768,
  '1 24': (view, at) =>
    ((view.getUint8(at) << 8) | (view.getUint8(at + 1) << 16) | (view.getUint8(at + 2) << 24)) / 2147483648,
  '1 32': (view, at) => view.getInt32(at, true) / 2147483648,
  '3 32': (view, at) => view.getFloat32(at, true),
  '3 64': (view, at) => view.getFloat64(at, true),
};

/** Bytes that are read a piece at a time, so that a long recording is never in memory twice. */
export interface WavBytes {
  readonly length: number;
  /** The `count` bytes from `at` on, or as many of them as there are; good until the next call. */
  read(at: number, count: number): Uint8Array;
}

/** The sound in a WAV file, or a sentence that says what is wrong with it and how to mend it. */
export function parseWav(bytes: Uint8Array | WavBytes): Result<WavSound, string> {
  const source =
    bytes instanceof Uint8Array
      ? { length: bytes.length, read: (at: number, count: number) => bytes.subarray(at, at + count) }
      : bytes;
  if (source.length < 12) return err(`holds ${source.length} bytes, too few for a WAV file`);
  const head = viewOf(source, 0, 12);
  if (tag(head, 0) !== 'RIFF' || tag(head, 8) !== 'WAVE')
    return err(
      `is not a WAV file (it starts with ${JSON.stringify(tag(head, 0))}); save the recording as WAV`,
    );
  let format: Format | null = null;
  for (let at = 12; at + 8 <= source.length; ) {
    const chunk = viewOf(source, at, 8);
    const [name, size] = [tag(chunk, 0), chunk.getUint32(4, true)];
    const body = at + 8;
    if (name === 'fmt ') {
      const read = readFormat(viewOf(source, body, Math.min(size, longestFormat)), size);
      if (!read.ok) return read;
      format = read.value;
    }
    if (name === 'data') {
      if (format === null) return err(`has its sound before its format; ${mend}`);
      return readSound(source, body, size, format);
    }
    at = body + size + (size % 2);
  }
  return err(
    format === null
      ? `has no format and no sound in it; ${mend}`
      : 'has no sound in it: it is cut off, or was never written; copy or record it again',
  );
}

function viewOf(source: WavBytes, at: number, count: number): DataView {
  const bytes = source.read(at, count);
  return new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
}

function readFormat(view: DataView, size: number): Result<Format, string> {
  if (size < 16 || view.byteLength < 16) return err('is cut off inside its format; copy or record it again');
  const plain = view.getUint16(0, true);
  const isExtensible = plain === 0xfffe && size >= 40 && view.byteLength >= 26;
  const code = isExtensible ? view.getUint16(24, true) : plain;
  const channels = view.getUint16(2, true);
  const sampleRate = view.getUint32(4, true);
  const frameBytes = view.getUint16(12, true);
  const bits = view.getUint16(14, true);
  const readSample = readersByFormat[`${code} ${bits}`];
  if (readSample === undefined)
    return err(`holds sound in a form that is not read (format ${code}, ${bits} bits); ${mend}`);
  if (channels < 1 || channels > mostChannels) return err(`says it has ${channels} channels; ${mend}`);
  if (sampleRate < lowestRate || sampleRate > highestRate)
    return err(`says it has ${sampleRate} samples a second; save it at 44100 or 48000`);
  if (frameBytes !== (channels * bits) / 8) return err(`contradicts itself in its format; ${mend}`);
  return ok({ channels, sampleRate, sampleBytes: bits / 8, readSample });
}

function readSound(source: WavBytes, at: number, size: number, format: Format): Result<WavSound, string> {
  const there = source.length - at;
  const isOpen = openSizes.includes(size);
  const { channels, sampleRate, sampleBytes, readSample } = format;
  const frameBytes = channels * sampleBytes;
  const second = sampleRate * frameBytes;
  // half a frame at the end is an odd writer's padding, a missing stretch is a broken file
  if (!isOpen && size > there + frameBytes)
    return err(
      `is cut off: it says it holds ${(size / second).toFixed(1)} s and holds ${(there / second).toFixed(1)} s; copy or record it again`,
    );
  const frames = Math.floor((isOpen ? there : Math.min(size, there)) / frameBytes);
  if (frames === 0) return err('holds no sound (0 seconds); record it again');
  if (frames / sampleRate > longestTake)
    return err(
      `lasts ${Math.round(frames / sampleRate / 60)} minutes; takes of up to ${longestTake / 60} minutes are listened to: cut out the part you mean`,
    );
  const samples = new Float32Array(frames);
  for (let first = 0; first < frames; first += pieceFrames) {
    const count = Math.min(pieceFrames, frames - first);
    const view = viewOf(source, at + first * frameBytes, count * frameBytes);
    if (view.byteLength < count * frameBytes) return err('grew shorter while it was read; copy it again');
    for (let i = 0; i < count; i++) {
      let sum = 0;
      for (let c = 0; c < channels; c++) sum += readSample(view, i * frameBytes + c * sampleBytes);
      const value = sum / channels;
      // float files may hold anything: what is no number is silence, and nothing is louder than twice full scale
      samples[first + i] = Number.isFinite(value) ? Math.max(-2, Math.min(2, value)) : 0;
    }
  }
  return ok({ samples, sampleRate, channels });
}

function tag(view: DataView, at: number): string {
  return String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(at + i)));
}
