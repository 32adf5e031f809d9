// The bytes of a Standard MIDI File. Source: MIDI Manufacturers Association, Standard MIDI Files 1.0 (format 1); the
// bytes worked by hand in checks/midi are its judge.

import { assert } from '#core';

/** A message at a time in ticks. Lower `order` first at the same tick: ends before beginnings. */
export interface TrackEvent {
  readonly tick: number;
  readonly order: number;
  readonly bytes: readonly number[];
}

/** A number in groups of seven bits, the highest first, all but the last marked. `variableLength(128)` → 81 00 */
export function variableLength(value: number): readonly number[] {
  assert(
    Number.isInteger(value) && value >= 0 && value <= 0x0fffffff,
    `no variable-length quantity: ${value}`,
  );
  const groups = [value & 0x7f];
  for (let rest = value >>> 7; rest > 0; rest >>>= 7) groups.unshift((rest & 0x7f) | 0x80);
  return groups;
}

/** A meta event: FF, its type, its length and its data. */
export function metaEvent(type: number, data: readonly number[]): readonly number[] {
  return [0xff, type, ...variableLength(data.length), ...data];
}

/** A meta event of text. The file format knows no encoding; programs read UTF-8. */
export function textEvent(type: number, text: string): readonly number[] {
  return metaEvent(type, utf8(text));
}

function utf8(text: string): readonly number[] {
  const bytes: number[] = [];
  for (const char of text) {
    const code = char.codePointAt(0) ?? 0x3f;
    if (code < 0x80) bytes.push(code);
    else if (code < 0x800) bytes.push(0xc0 | (code >> 6), 0x80 | (code & 0x3f));
    else if (code < 0x10000)
      bytes.push(0xe0 | (code >> 12), 0x80 | ((code >> 6) & 0x3f), 0x80 | (code & 0x3f));
    else
      bytes.push(
        0xf0 | (code >> 18),
        0x80 | ((code >> 12) & 0x3f),
        0x80 | ((code >> 6) & 0x3f),
        0x80 | (code & 0x3f),
      );
  }
  return bytes;
}

/** Set tempo: microseconds in a crotchet, in three bytes. 120 in a minute → FF 51 03 07 A1 20 */
export function tempoEvent(crotchetsPerMinute: number): readonly number[] {
  const micros = Math.min(0xffffff, Math.round(60_000_000 / crotchetsPerMinute));
  return metaEvent(0x51, [(micros >> 16) & 0xff, (micros >> 8) & 0xff, micros & 0xff]);
}

/** Time signature: figures, MIDI clocks (24 in a crotchet) in a beat, demisemiquavers in a crotchet. 6/8 → FF 58 04 06 03 24 08 */
export function metreEvent(beats: number, unit: number, clocksInBeat: number): readonly number[] {
  return metaEvent(0x58, [beats, Math.log2(unit), clocksInBeat, 8]);
}

/** Key signature: sharps or flats, major 0 or minor 1. B flat major → FF 59 02 FE 00 */
export function keyEvent(fifths: number, mode: 'major' | 'minor'): readonly number[] {
  return metaEvent(0x59, [fifths & 0xff, mode === 'minor' ? 1 : 0]);
}

const ascii = (text: string) => [...text].map((char) => char.charCodeAt(0));
const twoBytes = (value: number) => [(value >> 8) & 0xff, value & 0xff];
const fourBytes = (value: number) => [...twoBytes(value >>> 16), ...twoBytes(value & 0xffff)];

function trackChunk(events: readonly TrackEvent[]): readonly number[] {
  const bytes: number[] = [];
  let now = 0;
  for (const { tick, bytes: message } of events.toSorted((a, b) => a.tick - b.tick || a.order - b.order)) {
    bytes.push(...variableLength(tick - now), ...message);
    now = tick;
  }
  bytes.push(0, ...metaEvent(0x2f, []));
  return [...ascii('MTrk'), ...fourBytes(bytes.length), ...bytes];
}

/** A file of format 1 with its tracks, the first for tempo and metre. */
export function midiFile(ticksPerCrotchet: number, tracks: readonly (readonly TrackEvent[])[]): Uint8Array {
  const head = [
    ...ascii('MThd'),
    ...fourBytes(6),
    ...twoBytes(1),
    ...twoBytes(tracks.length),
    ...twoBytes(ticksPerCrotchet),
  ];
  const chunks = [head, ...tracks.map(trackChunk)];
  const file = new Uint8Array(chunks.reduce((length, chunk) => length + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    file.set(chunk, at);
    at += chunk.length;
  }
  return file;
}
