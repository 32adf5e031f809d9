import { expect, test } from 'vitest';
import { present } from '#core';
import { formatFraction, fraction } from '../fraction/fraction.ts';
import { parseMetre } from '../rhythm/metre.ts';
import { barOffsets, endingSpans } from './bar-places.ts';
import { scoreBar } from './create-score.ts';
import type { ScoreBar } from './score.ts';

const metre = (text: string) => present(parseMetre(text), text);
const bars = (sig: string, ...frames: readonly Partial<ScoreBar>[]) =>
  frames.map((frame, i) => scoreBar(frame.number ?? i + 1, metre(sig), frame));

test('a pickup ends where a full bar ends; the last, short bar begins one', () => {
  const short = (n: number, d: number) => ({ length: fraction(n, d) });
  const offsets = (...frames: readonly Partial<ScoreBar>[]) =>
    barOffsets(bars('3/4', ...frames))
      .map(formatFraction)
      .join(' ');
  expect(offsets({ number: 0, ...short(1, 4) }, {}, short(1, 2))).toBe('1/2 0 0');
  expect(offsets({}, short(1, 2), short(1, 4), {})).toBe('0 0 1/2 0'); // a bar in two halves, about a repeat sign
  expect(offsets(short(1, 4), {})).toBe('0 0');
});

/** `1:2-3` for ending 1 over bars 2 to 3, `*` where it stays open. */
function spans(...frames: readonly Partial<ScoreBar>[]): string {
  return endingSpans(bars('4/4', ...frames))
    .map(({ number, first, last, isClosed }) => `${number}:${first + 1}-${last + 1}${isClosed ? '' : '*'}`)
    .join(' ');
}

test('an ending reaches its repeat sign; the last one stays open, as long as the one before', () => {
  expect(spans({ repeatStart: true }, { ending: 1, repeatEnd: true }, { ending: 2 }, {}, {})).toBe(
    '1:2-2 2:3-3*',
  );
  expect(spans({}, { ending: 1 }, { repeatEnd: true }, { ending: 2 }, {}, {})).toBe('1:2-3 2:4-5*');
  expect(spans({}, { ending: 1, repeatEnd: true }, { ending: 2, repeatEnd: true }, { ending: 3 })).toBe(
    '1:2-2 2:3-3 3:4-4*',
  );
});

test('an open ending stops at the next section, repeat or the end', () => {
  expect(spans({ ending: 1 }, { section: 'B' })).toBe('1:1-1*');
  expect(spans({ ending: 1 }, {}, { repeatStart: true })).toBe('1:1-2*');
  expect(spans({}, { ending: 1 })).toBe('1:2-2*');
});
