// Source of the groupings: shared reference table of rhythm (`beam_groups`), after Gould, Behind Bars 2011, recalled.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { present } from '#core';
import { noteTypes } from '../duration/note-value.ts';
import { type Fraction, formatFraction, fraction, parseFraction, plus } from '../fraction/fraction.ts';
import { written } from '../pitch/pitch.ts';
import { eventValue, note, rest, tuplet } from '../score/create-score.ts';
import type { ScoreEvent } from '../score/score.ts';
import { beamEvents } from './beams.ts';
import { parseMetre } from './metre.ts';

const c5 = written({ letter: 'C', alter: 0, octave: 5 });
const metre = (text: string) => present(parseMetre(text), text);

/** `8 8 r8 16 16 8.`: notes and rests by the lower figure of their value. */
function events(text: string): readonly ScoreEvent[] {
  return text.split(' ').flatMap((word) => {
    if (word === 'T') return tuplet({ actual: 3, normal: 2 }, events('8 8 8'));
    const plain = fraction(1, Number(word.replace(/[r.]/g, '')));
    const duration: Fraction = word.endsWith('.') ? plus(plain, fraction(plain.n, plain.d * 2)) : plain;
    return [word.startsWith('r') ? rest(duration) : note(c5, duration)];
  });
}

/** Groups of the outermost beam as sizes: joined notes by their number, a single note 1, a rest 0. */
function groups(metreText: string, text: string): string {
  const all = events(text);
  const sizes: number[] = [];
  beamEvents(metre(metreText), all).forEach((beams, i) => {
    if (beams[0] === 'continue' || beams[0] === 'end') sizes.push((sizes.pop() ?? 0) + 1);
    else sizes.push(all[i]?.kind === 'rest' ? 0 : 1);
  });
  return sizes.join(' ');
}

test.each([
  ['4/4', '8 8 8 8 8 8 8 8', '4 4'],
  ['4/4', '8 8 8 16 16 8 8 8 8', '2 3 4'],
  ['4/4', '4 8 8 8 8 4', '1 2 2 1'],
  ['4/4', '8 4 8 8 8 4', '1 1 1 2 1'],
  ['4/4', 'r8 8 8 8 4 4', '0 1 2 1 1'],
  ['4/4', 'T 8 8 T T', '3 2 3 3'],
  ['2/4', '8 8 8 8', '4'],
  ['2/2', '8 8 8 8 8 8 8 8', '4 4'],
  ['3/4', '8 8 8 8 8 8', '2 2 2'],
  ['3/4', '4. 8 8 8', '1 1 2'],
  ['6/8', '8 8 8 8 8 8', '3 3'],
  ['6/8', '4 8 8 8 8', '1 1 3'],
  ['12/8', '8 8 8 8 8 8 8 8 8 4.', '3 3 3 1'],
  ['5/8', '8 8 8 8 8', '3 2'],
  ['7/8', '8 8 8 8 8 8 8', '2 2 3'],
  ['7/8 (3+2+2)', '8 8 8 8 8 8 8', '3 2 2'],
  ['5/4', '8 8 8 8 8 8 8 8 8 8', '2 2 2 2 2'],
])('%s: %s is beamed %s', (bar, text, expected) => {
  expect(groups(bar, text)).toBe(expected);
});

test.each([
  ['8. 16', 'begin | end, backward hook'],
  ['16 8.', 'begin, forward hook | end'],
  ['16 8 16', 'begin, forward hook | continue | end, backward hook'],
  ['8 16 16', 'begin | continue, begin | end, end'],
])('inner beams of %s', (text, expected) => {
  const beams = beamEvents(metre('1/4'), events(text));
  expect(beams.map((levels) => levels.join(', ')).join(' | ')).toBe(expected);
});

test('a tuplet longer than a beat is never torn', () => {
  const quintuplet = tuplet({ actual: 5, normal: 4 }, events('8 8 8 8 8'));
  const beams = beamEvents(metre('4/4'), [...quintuplet, ...events('8 8 4')]);
  expect(beams.map(([outer]) => outer ?? '-').join(' ')).toBe(
    'begin continue continue continue end begin end -',
  );
});

test('a tuplet with a rest in it keeps its beams to itself', () => {
  const mixed = tuplet({ actual: 3, normal: 2 }, events('r8 8 8'));
  const beams = beamEvents(metre('5/8'), [...mixed, ...events('8 8 8')]);
  expect(beams.map(([outer]) => outer ?? '-').join(' ')).toBe('- begin end - begin end');
  const whole = beamEvents(metre('5/8'), [...events('T 8 8 8')]);
  expect(whole.map(([outer]) => outer ?? '-').join(' ')).toBe('begin continue continue end begin end');
});

test('beams open and close level by level, and never join more flags than a note has', () => {
  const anyEvents = fc.array(fc.constantFrom('8', '16', '8.', 'r8', '4', '32', 'T'), {
    minLength: 1,
    maxLength: 16,
  });
  fc.assert(
    fc.property(anyEvents, fc.constantFrom('4/4', '3/4', '6/8', '7/8'), (words, bar) => {
      const all = events(words.join(' '));
      const open = [false, false, false];
      beamEvents(metre(bar), all).forEach((beams, i) => {
        const event = present(all[i], 'an event for its beams');
        const flags = Math.max(0, noteTypes.indexOf(eventValue(event).type) - 3);
        expect([0, event.kind === 'rest' ? 0 : flags]).toContain(beams.length);
        open.forEach((isOpen, level) => {
          const beam = beams[level];
          expect(isOpen).toBe(beam === 'continue' || beam === 'end');
          open[level] = beam === 'begin' || beam === 'continue';
        });
      });
      expect(open).toEqual([false, false, false]);
    }),
  );
});

test('the notation of the tests reads as meant', () => {
  const sum = events('8 T r8 4.')
    .map(({ duration }) => duration)
    .reduce(plus);
  expect(formatFraction(sum)).toBe(formatFraction(present(parseFraction('7/8'), '7/8')));
});
