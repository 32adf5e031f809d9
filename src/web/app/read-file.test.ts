import { expect, test } from 'vitest';
import { decodeText } from './read-file.ts';

test('UTF-8 with or without a byte order mark', () => {
  expect(decodeText(new TextEncoder().encode('Zoë'))).toBe('Zoë');
  expect(decodeText(Uint8Array.of(0xef, 0xbb, 0xbf, 0x5a, 0x6f, 0xc3, 0xab))).toBe('Zoë');
});

// Source: WHATWG Encoding Standard, index windows-1252: 0xEB is U+00EB.
test('what is not UTF-8 is read as Windows-1252', () => {
  expect(decodeText(Uint8Array.of(0x5a, 0x6f, 0xeb))).toBe('Zoë');
});
