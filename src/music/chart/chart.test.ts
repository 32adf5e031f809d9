import fc from 'fast-check';
import { expect, test } from 'vitest';
import { present } from '#core';
import { listChordQualities } from '../chord/quality.ts';
import { formatKey } from '../key/key.ts';
import { unfoldRepeats } from './chart.ts';
import { formatChart } from './format-chart.ts';
import { parseChart } from './parse-chart.ts';
import { chartKey, transposeChart } from './transpose-chart.ts';

const chart = (text: string) => {
  const read = parseChart(text);
  if (!read.ok) throw new Error(read.error.message);
  return read.value;
};
const played = (text: string) =>
  unfoldRepeats(chart(text).bars)
    .map((bar) => bar.number)
    .join(' ');

test.each([
  ['| D-7 G7 | CΔ |', '| Dm7 G7 | Cmaj7 |'],
  ['Dmi7 G7 | C6 % | %', '| Dm7 G7 | C6 | % |'],
  ['[A] |: C / / G7 | F :| [B] | Am | N.C. ||', '[A] |: C / / G7 | F :|\n[B] | Am | N.C. |'],
  ['|: C | 1. F :| 2. G | C |', '|: C | 1. F :| 2. G | C |'],
  ['| C |: F :|: G :|', '| C |: F :|: G :|'],
  ['|: C | F |\n[B] | G | C :|', '|: C | F |\n[B] | G | C :|'],
])('%j is written %j, and reads back', (typed, written) => {
  expect(formatChart(chart(typed))).toBe(written);
  expect(chart(formatChart(chart(typed)))).toEqual(chart(typed));
});

test.each([
  ['| C | F :| G |', '1 2 1 2 3'],
  ['|: C | 1. F :| 2. G | C |', '1 2 1 3 4'],
  ['| C |: F | 1. F :| 2. G :| 3. A | C |', '1 2 3 2 4 2 5 6'],
  ['|: C :|: G | F :|', '1 1 2 3 2 3'],
  ['| C | G |', '1 2'],
])('%j is played %s', (typed, order) => expect(played(typed)).toBe(order));

test.each([
  ['| C | Gsuz4 |', { bar: 2, symbol: 'Gsuz4', nearest: 'Gsus4' }],
  ['| % | C |', { bar: 1, symbol: '%' }],
  ['| C | | F |', { bar: 2, symbol: '', nearest: '%' }],
  ['   ', { bar: 1 }],
  ['| / C |', { bar: 1, symbol: '/' }],
])('%j is refused with what and where', (typed, error) => {
  expect(parseChart(typed)).toMatchObject({ ok: false, error });
});

test.each([
  ['| Dm7 | G7 | Cmaj7 | % |', 'C major'],
  ['| Cm7 | Fm7 | G7b9 | Cm(maj7) |', 'C minor'],
  ['| Bb7 | Eb7 | Bb7 | F7 | Bb7 |', 'Bb major'],
  ['| Am | Dm | E7 | Am |', 'A minor'],
])('%s stands in %s', (typed, key) => expect(formatKey(chartKey(chart(typed)))).toBe(key));

// Common practice, no source: loops of four chords, half closes, turnarounds and blues as musicians name their key.
test.each([
  ['| C | Am | F | G |', 'C major'],
  ['| Am | F | C | G |', 'C major'],
  ['| C | G | Am | F |', 'C major'],
  ['| D | A | Bm | G |', 'D major'],
  ['| Em | C | G | D |', 'G major'],
  ['| G | Em | C | D |', 'G major'],
  ['| F | C | Dm | Bb |', 'F major'],
  ['| C | F | G |', 'C major'],
  ['| C | F | C | G |', 'C major'],
  ['| G | C | D | G |', 'G major'],
  ['| Dm7 | G7 |', 'C major'],
  ['| Cmaj7 | Am7 | Dm7 | G7 |', 'C major'],
  ['| Am | G | F | E |', 'A minor'],
  ['| Am | Dm | E7 |', 'A minor'],
  ['| Dm | C | Bb | C |', 'D minor'],
  ['| C7 | % | F7 | C7 |', 'C major'],
  ['| C7 | % | % | % | F7 | % | C7 | % | G7 | F7 | C7 | G7 |', 'C major'],
  ['| Dm7b5 | G7b9 | Cm6 | % |', 'C minor'],
  ['| C7 | F7 | C7 | % | F7 | % | C7 | A7 | Dm7 | G7 | C7 A7 | Dm7 G7 |', 'C major'],
  ['| F7 | Bb7 | F7 | % | Bb7 | % | F7 | D7alt | Gm7 | C7 | F7 D7 | Gm7 C7 |', 'F major'],
  ['| Ebmaj7 | Cm7 | Fm7 | Bb7 |', 'Eb major'],
  ['| Dm7 | % | Ebm7 | % |', 'D minor'],
  ['| Dm7 | G7 | Cmaj7 | A7 |', 'C major'],
  ['| G | D | Em | Bm |', 'G major'],
  ['| C | Em | F | Am |', 'C major'],
  ['| Gm7 | C7 | Fmaj7 | Dm7 |', 'F major'],
  ['| Em | D | C | B7 |', 'E minor'],
  ['| C | F |', 'C major'],
  ['| G7 | C |', 'C major'],
  ['| Bbmaj7 | Gm7 | Cm7 | F7 |', 'Bb major'],
  ['| Fm7 | Bb7 | Ebmaj7 | Abmaj7 | Dm7b5 | G7 | Cm |', 'C minor'],
])('%s is heard in %s', (typed, key) => expect(formatKey(chartKey(chart(typed)))).toBe(key));

test('a chart for an instrument keeps its key within six accidentals', () => {
  const up = { diatonic: 5, chromatic: 9 }; // concert to E flat alto
  expect(formatChart(transposeChart(chart('| Emaj7 | A6 | B7 | E |'), up))).toBe(
    '| Dbmaj7 | Gb6 | Ab7 | Db |',
  );
  expect(formatChart(transposeChart(chart('| Ebmaj7 | Bb7 |'), up))).toBe('| Cmaj7 | G7 |');
});

test('any chart written reads back to itself, here and a tone away', () => {
  const symbol = fc
    .record({
      root: fc.constantFrom('C', 'F', 'Bb', 'Eb', 'G', 'D', 'A', 'E', 'Ab', 'F#'),
      quality: fc.constantFrom(...listChordQualities()),
      bass: fc.constantFrom('', '', '', '/G', '/Bb'),
    })
    .map(({ root, quality, bass }) => root + quality.suffix + bass);
  const bar = fc.array(fc.oneof({ weight: 6, arbitrary: symbol }, fc.constant('/')), {
    minLength: 1,
    maxLength: 4,
  });
  fc.assert(
    fc.property(fc.array(bar, { minLength: 1, maxLength: 12 }), (bars) => {
      const text = `| ${bars.map((b) => (b[0] === '/' ? ['C', ...b.slice(1)] : b).join(' ')).join(' | ')} |`;
      const read = chart(text);
      expect(chart(formatChart(read))).toEqual(read);
      const moved = transposeChart(read, { diatonic: 1, chromatic: 2 });
      expect(chart(formatChart(moved))).toEqual(moved);
      expect(moved.bars.length).toBe(read.bars.length);
      expect(present(moved.bars[0], 'what the test names').chords.length).toBe(
        present(read.bars[0], 'what the test names').chords.length,
      );
    }),
  );
});
