// Source: RFC 4180, October 2005, section 2; see README.md.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readCsv } from '#studio';

interface Data {
  readonly csv: {
    readonly cases: readonly { readonly fields: readonly string[]; readonly record: string }[];
  };
}
const data: Data = JSON.parse(readFileSync(new URL('./data/csv.json', import.meta.url), 'utf8'));

const cellsOf = (text: string) => {
  const read = readCsv(text);
  return read.ok ? read.value.map((row) => row.cells) : read.error.message;
};

describe('RFC 4180, section 2', () => {
  test.each(data.csv.cases)('the collected record reads as its fields', ({ fields, record }) => {
    expect(cellsOf(record)).toEqual([fields]);
  });

  test.each([
    [
      '1: each record on a line of its own, parted by CRLF',
      'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '2: the last record may have no line break',
      'aaa,bbb,ccc\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '3: a heading has the format of a record',
      'field_name,field_name\r\naaa,bbb\r\n',
      [
        ['field_name', 'field_name'],
        ['aaa', 'bbb'],
      ],
    ],
    ['4: spaces are part of a field', 'aaa, bbb ,ccc', [['aaa', ' bbb ', 'ccc']]],
    [
      '5: fields may be quoted',
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '6: quoted fields may hold line breaks and commas',
      '"aaa","b\r\nbb","c,cc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'b\r\nbb', 'c,cc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    ['7: a quote inside a quoted field is doubled', '"aaa","b""bb","ccc"', [['aaa', 'b"bb', 'ccc']]],
  ])('rule %s', (_, text, expected) => {
    expect(cellsOf(text)).toEqual(expected);
  });

  test('rows say on which line of the file they begin, also after line breaks in quotes', () => {
    const read = readCsv('a,b\r\n"two\r\nlines",c\r\nd,e\r\n');
    expect(read.ok && read.value.map((row) => row.line)).toEqual([1, 2, 4]);
  });
});
