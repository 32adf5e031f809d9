// Source of the expected writings: Gould, Behind Bars 2011, from memory; otherwise common practice, no source.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { present } from '#core';
import { durationToValue } from '../duration/note-value.ts';
import {
  compare,
  type Fraction,
  formatFraction,
  fraction,
  minus,
  parseFraction,
  plus,
} from '../fraction/fraction.ts';
import { written } from '../pitch/pitch.ts';
import { note, rest } from '../score/create-score.ts';
import { barLength, createMetre, parseMetre } from './metre.ts';
import { splitSilence, splitSpan, writeEvent } from './split-span.ts';

const time = (text: string) => present(parseFraction(text), text);
const metre = (text: string) => present(parseMetre(text), text);
const show = (values: readonly Fraction[]) => values.map(formatFraction).join(' ');

test.each([
  ['4/4', '0', '1', '1', 'a semibreve'],
  ['4/4', '0', '3/4', '3/4', 'a dotted minim from the first beat'],
  ['4/4', '1/4', '3/4', '3/4', 'a dotted minim from the second beat'],
  ['4/4', '1/4', '1/2', '1/2', 'crotchet, minim, crotchet'],
  ['4/4', '1/8', '1/4', '1/4', 'quaver, crotchet, quaver'],
  ['4/4', '3/8', '1/4', '1/8 1/8', 'a crotchet over the half-bar is tied'],
  ['4/4', '1/8', '1/2', '3/8 1/8', 'a minim from the second quaver shows the half-bar'],
  ['4/4', '3/8', '1/2', '1/8 3/8', 'as does one from the fourth'],
  ['4/4', '0', '5/8', '1/2 1/8', 'five quavers'],
  ['4/4', '1/8', '7/8', '3/8 1/2', 'seven quavers off the beat'],
  ['4/4', '0', '7/16', '1/4 3/16', 'no double dots'],
  ['3/4', '0', '3/4', '3/4', 'a dotted minim'],
  ['3/4', '0', '1/2', '1/2', 'a minim on one'],
  ['3/4', '1/4', '1/2', '1/2', 'a minim on two'],
  ['3/4', '0', '5/8', '1/2 1/8', 'five quavers'],
  ['3/4', '1/8', '1/2', '1/8 3/8', 'a minim off the beat is tied'],
  ['3/4', '1/8', '1/4', '1/4', 'quaver, crotchet, quaver, crotchet'],
  ['2/2', '1/4', '1/2', '1/2', 'a minim between the minim beats'],
  ['6/8', '0', '3/4', '3/4', 'a dotted minim'],
  ['6/8', '0', '1/2', '3/8 1/8', 'four quavers: never a minim'],
  ['6/8', '1/8', '1/2', '1/4 1/4', 'nor from the second quaver'],
  ['6/8', '1/4', '1/4', '1/8 1/8', 'a crotchet over the beat is tied'],
  ['6/8', '1/8', '1/4', '1/4', 'quaver, crotchet in one beat'],
  ['9/8', '3/8', '3/4', '3/4', 'two beats'],
  ['9/8', '0', '9/8', '3/4 3/8', 'a whole bar of nine is tied'],
  ['12/8', '3/8', '3/4', '3/4', 'two beats over the half-bar'],
  ['12/8', '0', '3/2', '3/2', 'a dotted semibreve'],
  ['5/4', '1/2', '1/2', '1/4 1/4', 'tied where 3+2 divide'],
  ['5/4 (2+3)', '1/2', '1/2', '1/2', 'whole where 2+3 do'],
  ['7/8', '0', '1/2', '1/2', 'two groups of two'],
  ['7/8', '1/8', '1/4', '1/8 1/8', 'tied over a group of an irregular bar'],
  ['7/8', '0', '7/8', '1/2 3/8', 'the whole of seven'],
])('%s from %s for %s: %s (%s)', (bar, at, duration, expected) => {
  expect(show(splitSpan(metre(bar), time(at), time(duration)))).toBe(expected);
});

test.each([
  ['4/4', '0', '1/2', '1/2', 'a minim rest in the first half'],
  ['4/4', '1/4', '1/2', '1/4 1/4', 'crotchet rests over the half-bar'],
  ['4/4', '1/4', '3/4', '1/4 1/2', 'after the first beat'],
  ['4/4', '1/8', '3/8', '1/8 1/4', 'no dotted rest off the beat'],
  ['3/4', '1/4', '1/2', '1/4 1/4', 'no minim rest in three'],
  ['6/8', '0', '3/8', '3/8', 'a beat of rest is dotted'],
  ['6/8', '1/8', '1/4', '1/8 1/8', 'the last two quavers apart'],
  ['6/8', '0', '1/4', '1/4', 'the first two together'],
  ['12/8', '0', '3/4', '3/4', 'a half-bar of rest'],
  ['7/8', '1/4', '5/8', '1/4 3/8', 'by groups'],
])('rest in %s from %s for %s: %s (%s)', (bar, at, duration, expected) => {
  expect(show(splitSilence(metre(bar), time(at), time(duration)))).toBe(expected);
});

const anyMetre = fc.constantFrom(
  ...['2/4', '3/4', '4/4', '2/2', '3/8', '6/8', '9/8', '12/8', '5/4', '5/8', '7/8', '6/4', '7/4', '3/2'].map(
    metre,
  ),
);
/** A metre, and two places in its bar on the grid of demisemiquavers. */
const anySpan = anyMetre.chain((m) => {
  const steps = (32 * m.beats) / m.unit;
  return fc
    .tuple(fc.integer({ min: 0, max: steps - 1 }), fc.integer({ min: 1, max: steps }))
    .filter(([at, length]) => at + length <= steps)
    .map(([at, length]) => ({ m, at: fraction(at, 32), length: fraction(length, 32) }));
});

test('pieces add up, each has a written value with at most one dot, and none hides the half-bar off the beat', () => {
  fc.assert(
    fc.property(anySpan, ({ m, at, length }) => {
      for (const split of [splitSpan, splitSilence]) {
        const pieces = split(m, at, length);
        expect(pieces.reduce(plus)).toEqual(length);
        let start = at;
        for (const piece of pieces) {
          const value = present(durationToValue(piece), 'a written value');
          expect(value.dots).toBeLessThan(2);
          const end = plus(start, piece);
          const middle = fraction(m.beats, 2 * m.unit);
          const isHalving = m.beats === 4 || m.beats === 12;
          if (isHalving && compare(start, middle) < 0 && compare(end, middle) > 0)
            expect(start.d).toBeLessThanOrEqual(m.unit);
          start = end;
        }
      }
    }),
    { numRuns: 2000 },
  );
});

const c5 = written({ letter: 'C', alter: 0, octave: 5 });

test('a note over the bar line is tied into the next bar; a rest fills whole bars by itself', () => {
  const fourFour = createMetre(4, 4);
  const held = writeEvent(fourFour, fraction(7, 8), note(c5, fraction(1, 4), { fingering: '2' }));
  expect(held.map((bar) => bar.map(({ duration }) => formatFraction(duration)))).toEqual([['1/8'], ['1/8']]);
  const heads = held.flat().flatMap((event) => (event.kind === 'note' ? event.heads : []));
  expect(heads.map(({ isTied, fingering }) => [isTied, fingering])).toEqual([
    [true, '2'],
    [false, null],
  ]);
  const silence = writeEvent(fourFour, fraction(1, 2), rest(fraction(2)));
  expect(
    silence.map((bar) => bar.map((e) => [formatFraction(e.duration), e.kind === 'rest' && e.isWholeBar])),
  ).toEqual([[['1/2', false]], [['1', true]], [['1/2', false]]]);
});

test('every bar of a split event but the last is filled from where it starts', () => {
  fc.assert(
    fc.property(anySpan, fc.integer({ min: 1, max: 96 }), ({ m, at }, length) => {
      const bars = writeEvent(m, at, note(c5, fraction(length, 32)));
      bars.slice(0, -1).forEach((bar, i) => {
        const sum = bar.map(({ duration }) => duration).reduce(plus);
        expect(sum).toEqual(i === 0 ? minus(barLength(m), at) : barLength(m));
      });
      expect(
        bars
          .flat()
          .map(({ duration }) => duration)
          .reduce(plus),
      ).toEqual(fraction(length, 32));
    }),
  );
});
