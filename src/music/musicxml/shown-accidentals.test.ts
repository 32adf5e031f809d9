// Source of the expected accidentals: Gould, Behind Bars 2011, from memory.
import { expect, test } from 'vitest';
import { present } from '#core';
import { fraction } from '../fraction/fraction.ts';
import { parseKey } from '../key/key.ts';
import { parsePitch, written } from '../pitch/pitch.ts';
import { note, partBar } from '../score/create-score.ts';
import { createAccidentals } from './shown-accidentals.ts';

const signs = new Map([
  [-2, 'bb'],
  [-1, 'b'],
  [0, 'n'],
  [1, '#'],
  [2, 'x'],
]);

/** Bars of pitches, `~` for one that is held over: what stands before each note, courtesy in brackets, `.` for nothing. */
function shown(keyText: string, ...bars: readonly string[]): string {
  const key = present(parseKey(keyText), keyText);
  const ask = createAccidentals();
  return bars
    .map((text) => {
      const words = text.split(' ');
      const events = words.map((word) => {
        const pitch = present(parsePitch(word.replace('~', '')), word);
        return note(written(pitch), fraction(1, 4));
      });
      const marks = ask(partBar({ key }, events), () => text.startsWith('~'));
      return words
        .map((_, e) => {
          const mark = marks.get(`0:${e}:0`);
          const sign = mark === undefined ? '.' : (signs.get(mark.alter) ?? '?');
          return mark?.isCourtesy === true ? `(${sign})` : sign;
        })
        .join(' ');
    })
    .join(' | ');
}

test.each([
  ['C', ['F4 F#4 F#4 F4'], '. # . n', 'holds to the next other sign'],
  ['G', ['F#4 F4 F4 F#4'], '. n . #', 'against the signature'],
  ['C', ['F#4 F#5 F5 F4'], '# # n n', 'holds in its octave only'],
  ['C', ['F#4 F5 G5 F4'], '# (n) . n', 'recalls the signature in another octave'],
  ['C', ['F#4 G4', 'F4 F4'], '# . | (n) .', 'recalls it in the next bar, once'],
  ['C', ['F#4 G4', 'A4 B4', 'F4 F4'], '# . | . . | . .', 'and only in the next'],
  ['C', ['F#4 G4', 'F5 F4'], '# . | . (n)', 'in the octave where it stood'],
  ['C', ['G4 F#4', '~F#4 F#4'], '. # | . #', 'a tie carries it over the bar line, no further'],
  ['C', ['G4 F#4', '~F#4 F4'], '. # | . (n)', 'after a tie the natural is a courtesy'],
  ['Db', ['Bbb4 Bb4 B4'], 'bb b n', 'from double flat to flat to natural'],
  ['C# minor', ['F##4 F#4 F4'], 'x # n', 'from double sharp to sharp to natural'],
])('in %s: %j → %s (%s)', (key, bars, expected) => {
  expect(shown(key, ...bars)).toBe(expected);
});

test('a new key or a new exercise recalls nothing of the one before', () => {
  const bar = (key: string, pitch: string) =>
    partBar({ key: present(parseKey(key), key) }, [
      note(written(present(parsePitch(pitch), pitch)), fraction(1)),
    ]);
  const never = () => false;
  const inNewKey = createAccidentals();
  inNewKey(bar('C', 'F#4'), never);
  expect([...inNewKey(bar('F', 'F4'), never)]).toEqual([]);
  const inNewExercise = createAccidentals();
  inNewExercise(bar('C', 'F#4'), never);
  expect([...inNewExercise(bar('C', 'F4'), never, true)]).toEqual([]);
});
