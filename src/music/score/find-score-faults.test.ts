import fc from 'fast-check';
import { expect, test } from 'vitest';
import { present } from '#core';
import { fraction } from '../fraction/fraction.ts';
import { findInstrument } from '../instrument/instrument.ts';
import { fifthsToKey } from '../key/key.ts';
import { written } from '../pitch/pitch.ts';
import { createMetre } from '../rhythm/metre.ts';
import {
  chordSymbol,
  createScore,
  note,
  noteHead,
  notes,
  part,
  partBar,
  rest,
  scoreBar,
  tuplet,
} from './create-score.ts';
import { findScoreFaults } from './find-score-faults.ts';
import { randomScore } from './random-score.contract.ts';
import type { ScoreEvent } from './score.ts';

test('random scores are sound', () => {
  fc.assert(
    fc.property(fc.integer(), (seed) => {
      expect(findScoreFaults(randomScore(seed))).toEqual([]);
    }),
    { numRuns: 500 },
  );
});

const flute = present(findInstrument('flute'), 'a flute');
const key = fifthsToKey(0, 'major');
const c5 = written({ letter: 'C', alter: 0, octave: 5 });
const d5 = written({ letter: 'D', alter: 0, octave: 5 });
const [quarter, half, whole] = [fraction(1, 4), fraction(1, 2), fraction(1)];

function faultsOf(...bars: readonly (readonly ScoreEvent[])[]): readonly string[] {
  const metre = createMetre(4, 4);
  const score = createScore({
    bars: bars.map((_, i) => scoreBar(i + 1, metre)),
    parts: [
      part(
        flute,
        bars.map((events) => partBar({ key }, events)),
      ),
    ],
  });
  return findScoreFaults(score).map(({ kind, bar }) => `${kind} ${bar}`);
}
const triplet = tuplet({ actual: 3, normal: 2 }, [rest(quarter), rest(quarter), rest(quarter)]);

test.each([
  ['a bar too short', [[note(c5, half)]], ['BarUnfilled 1']],
  ['five quavers as one note', [[note(c5, fraction(5, 8)), rest(fraction(3, 8))]], ['ValueUnwritable 1']],
  ['a tie to another pitch', [[note(c5, half, { isTied: true }), note(d5, half)]], ['TieUnmet 1']],
  ['a tie over the bar line to a rest', [[note(c5, whole, { isTied: true })], [rest(whole)]], ['TieUnmet 1']],
  ['a tie over the bar line', [[note(c5, whole, { isTied: true })], [note(c5, whole)]], []],
  ['a slur without end', [[note(c5, whole, { slur: 'start' })]], ['SlurUnmet 1']],
  [
    'a tuplet without end',
    [[...triplet.slice(0, 2), rest(fraction(1, 8)), rest(half)]],
    ['BarUnfilled 1', 'TupletBroken 1'],
  ],
  ['heads from the top', [[notes([noteHead(d5), noteHead(c5)], whole)]], ['ChordUnordered 1']],
])('%s', (_, bars, faults) => {
  expect(faultsOf(...bars)).toEqual(faults);
});

test('a chord beyond the bar, a staff that is not there and a missing bar', () => {
  const metre = createMetre(4, 4);
  const bar = partBar({ key, chords: [chordSymbol(null, fraction(5, 4))] }, [note(c5, whole)]);
  const low = { ...bar, chords: [], voices: [{ id: 1, staff: 2, events: [note(c5, whole)] }] };
  const score = createScore({
    bars: [1, 2, 3].map((n) => scoreBar(n, metre)),
    parts: [part(flute, [bar, low])],
  });
  expect(findScoreFaults(score).map(({ kind }) => kind)).toEqual([
    'PartUneven',
    'PlaceOutside',
    'PlaceOutside',
  ]);
});
