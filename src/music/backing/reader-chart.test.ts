import { expect, test } from 'vitest';
import { formatChart } from '../chart/format-chart.ts';
import { parseChart } from '../chart/parse-chart.ts';
import { findInstrument } from '../instrument/instrument.ts';
import { createBackingSpec } from './backing-spec.ts';
import { chorusChart, readerChart, readsTransposed } from './reader-chart.ts';

const chart = (text: string) => {
  const read = parseChart(text);
  if (!read.ok) throw new Error(read.error.message);
  return read.value;
};
const instrument = (id: string) => {
  const found = findInstrument(id);
  if (found === null) throw new Error(id);
  return found;
};

// Common practice, no source: B flat instruments read a tone up, E flat alto a major sixth, F horn a fifth.
test.each([
  ['trumpet_bb', '| Em7 | A7 | Dmaj7 | B7 |'],
  ['alto_sax', '| Bm7 | E7 | Amaj7 | F#7 |'],
  ['horn_f', '| Am7 | D7 | Gmaj7 | E7 |'],
  ['flute', '| Dm7 | G7 | Cmaj7 | A7 |'],
  ['guitar', '| Dm7 | G7 | Cmaj7 | A7 |'],
])('a turnaround in C is read by %s as %s', (id, written) => {
  expect(formatChart(readerChart(chart('| Dm7 | G7 | Cmaj7 | A7 |'), instrument(id)))).toBe(written);
});

test('an octave is no other key', () => {
  expect(readsTransposed(instrument('guitar'))).toBe(false);
  expect(readsTransposed(instrument('alto_sax'))).toBe(true);
});

test('a chart that moves in fourths is shown in the key of its chorus, and begins again', () => {
  const spec = createBackingSpec(chart('| C | G7 |'), { keys: [0, 5, -2] });
  const shown = [-1, 0, 1, 2, 3].map((chorus) => formatChart(chorusChart(spec, chorus)));
  expect(shown).toEqual(['| C | G7 |', '| C | G7 |', '| F | C7 |', '| Bb | F7 |', '| C | G7 |']);
});
