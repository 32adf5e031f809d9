// WOFF 1.0 unpacked to the TrueType or OpenType file it was made from, since the typesetter reads those alone.
// W3C, "WOFF File Format 1.0" (Recommendation, 13 December 2012), sections 3 to 5: a header of 44 bytes, a directory of
// 20-byte entries, and tables compressed by zlib where that made them smaller.

import { inflateSync } from 'node:zlib';
import { assert } from '#core';

interface Table {
  readonly tag: string;
  readonly checksum: number;
  readonly data: Buffer;
}

const wordOf = (length: number): number => (length + 3) & ~3;

/** The font inside a WOFF 1.0 file of ours; throws for any other file. */
export function woffToFont(woff: Buffer): Buffer {
  assert(woff.toString('latin1', 0, 4) === 'wOFF', 'the file is a WOFF 1.0 font');
  const tables = Array.from({ length: woff.readUInt16BE(12) }, (_, i) => readTable(woff, 44 + 20 * i));
  const head = 12 + 16 * tables.length;
  const size = tables.reduce((sum, { data }) => sum + wordOf(data.length), head);
  const font = Buffer.alloc(size);
  const powers = Math.floor(Math.log2(tables.length));
  font.writeUInt32BE(woff.readUInt32BE(4), 0);
  font.writeUInt16BE(tables.length, 4);
  font.writeUInt16BE(16 * 2 ** powers, 6);
  font.writeUInt16BE(powers, 8);
  font.writeUInt16BE(16 * tables.length - 16 * 2 ** powers, 10);
  let at = head;
  for (const [i, { tag, checksum, data }] of tables.entries()) {
    const entry = 12 + 16 * i;
    font.write(tag, entry, 'latin1');
    font.writeUInt32BE(checksum, entry + 4);
    font.writeUInt32BE(at, entry + 8);
    font.writeUInt32BE(data.length, entry + 12);
    data.copy(font, at);
    at += wordOf(data.length);
  }
  return font;
}

function readTable(woff: Buffer, entry: number): Table {
  const from = woff.readUInt32BE(entry + 4);
  const packed = woff.subarray(from, from + woff.readUInt32BE(entry + 8));
  const length = woff.readUInt32BE(entry + 12);
  const data = packed.length < length ? inflateSync(packed) : packed;
  assert(data.length === length, 'a table has the length its entry states');
  return { tag: woff.toString('latin1', entry, entry + 4), checksum: woff.readUInt32BE(entry + 16), data };
}
