import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { present, stages } from '#core';
import {
  findInstrument,
  fullRange,
  type InstrumentId,
  listInstruments,
  openStrings,
  rangeAtStage,
  writtenToSounding,
} from '../instrument/instrument.ts';
import { fifthsToName, parsePitch, pitchToMidi, type WrittenPitch, written } from '../pitch/pitch.ts';
import { fingeringOf, fingerLine, isInOnePosition, sharedPosition } from './finger-line.ts';
import { fingeringMarks, type NoteFingering, type StringFingering } from './fingering.ts';

const line = (text: string) =>
  text.split(' ').map((note) => written(present(parsePitch(note), 'what the test names')));
const at = (midi: number, fifths = -2): WrittenPitch => {
  for (let f = fifths; ; f++) {
    const name = fifthsToName(f);
    const octave = Math.floor((midi - name.alter) / 12) - 1;
    if (pitchToMidi({ ...name, octave }) === midi) return written({ ...name, octave });
  }
};
const stringed = listInstruments().filter((i) => i.strings !== null);
const isStringed = (note: NoteFingering | null): note is StringFingering =>
  note?.kind === 'fretted' || note?.kind === 'bowed';
const short = (note: NoteFingering | null) =>
  isStringed(note) ? `${note.string}:${note.finger}` : String(note && fingeringMarks(note).fingering);
const show = (id: InstrumentId, text: string, options = {}) =>
  fingerLine(id, line(text), options).map(short).join(' ');

/** A walk of steps and leaps inside a range. */
const walk = (low: number, high: number) =>
  fc
    .record({
      start: fc.integer({ min: low, max: high }),
      moves: fc.array(fc.integer({ min: -7, max: 7 }), { minLength: 1, maxLength: 24 }),
    })
    .map(({ start, moves }) => {
      const midis = [start];
      for (const move of moves) midis.push(Math.min(high, Math.max(low, (midis.at(-1) ?? start) + move)));
      return midis;
    });

describe.each(stringed.map((i) => i))('$id', (instrument) => {
  test.each(stages)('%s: every note of a line sounds where it is stopped', (stage) => {
    const range = rangeAtStage(instrument, stage);
    fc.assert(
      fc.property(walk(pitchToMidi(range.low), pitchToMidi(range.high)), (midis) => {
        const pitches = midis.map((midi) => at(midi));
        const open = openStrings(instrument).map(pitchToMidi);
        fingerLine(instrument.id, pitches, { stage }).forEach((note, i) => {
          expect(isStringed(note)).toBe(true);
          if (!isStringed(note)) return;
          const string = present(open[open.length - note.string], 'a string');
          const pitch = present(pitches[i], 'a pitch');
          expect(string + note.stop).toBe(pitchToMidi(writtenToSounding(instrument, pitch)));
          expect(note.finger === 0).toBe(note.stop === 0);
        });
      }),
      { numRuns: 25 },
    );
  });

  test.each(stages)('%s: a line in one position is fingered there or as easily', (stage) => {
    const range = rangeAtStage(instrument, stage);
    fc.assert(
      fc.property(walk(pitchToMidi(range.low), pitchToMidi(range.high)), (midis) => {
        const pitches = midis.map((midi) => at(midi));
        const position = sharedPosition(instrument.id, pitches, stage);
        if (position === null) return;
        expect(isInOnePosition(instrument.id, pitches, stage)).toBe(true);
        const stretches = fingerLine(instrument.id, pitches, { stage }).filter(
          (note) => isStringed(note) && note.stretch,
        );
        if (stage === 'beginner') expect(stretches).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });
});

test('beginners stay in first position', () => {
  expect(show('violin', 'A4 B4 C#5 D5 E5 F#5 G#5 A5')).toBe('2:0 2:1 2:2 2:3 1:0 1:1 1:2 1:3');
  expect(show('cello', 'D3 E3 F#3 G3 A3 B3 C#4 D4')).toBe('2:0 2:1 2:3 2:4 1:0 1:1 1:3 1:4');
  expect(show('guitar', 'C4 D4 E4 F4 G4 A4 B4 C5')).toBe('5:3 4:0 4:2 4:3 3:0 3:2 2:0 2:1');
  expect(show('double_bass', 'G2 A2 B2 C3 D3 E3 F#3 G3')).toBe('4:2 3:0 3:1 3:2 2:0 2:1 2:4 1:0');
});

test('spelling decides the finger on the violin', () => {
  const finger = (text: string) => {
    const all = line(text).map((pitch) => present(fingeringOf('violin', pitch), text));
    return all.map(({ usual, alternates }) => [usual, ...alternates].map(short));
  };
  expect(finger('G#4 Ab4')).toEqual([['3:3'], ['3:4']]);
});

test('a line of more than one position is not in one, and three octaves are not lost on the fingerboard', () => {
  expect(sharedPosition('guitar', line('C4 E4 G4'), 'beginner')).toBe(1);
  expect(sharedPosition('guitar', line('C4 E4 C6'), 'beginner')).toBe(null);
  expect(sharedPosition('violin', line('D5 E5 F5 G5 A5 B5 C6 D6'), 'intermediate')).toBe(3);
  expect(isInOnePosition('piano', line('C4 D4 E4 F4 G4'), 'beginner')).toBe(true);
  expect(isInOnePosition('piano', line('C4 A4'), 'beginner')).toBe(false);
  expect(isInOnePosition('flute', line('D4 D6'), 'beginner')).toBe(true);
});

test('on the keyboard five neighbouring notes stay under the hand', () => {
  expect(show('piano', 'C4 E4 G4 F4 D4 C4')).toBe('1 3 5 4 2 1');
  expect(show('piano', 'C3 E3 G3 F3 D3 C3', { hand: 'left' })).toBe('5 3 1 2 4 5');
  expect(show('piano', 'C4 E4 G4 C5 E5 G5 C6')).toBe('1 2 3 1 2 3 5');
});

test('the chromatic scale has the third finger on black', () => {
  // From memory of scale manuals.
  const up = 'C4 C#4 D4 D#4 E4 F4 F#4 G4 G#4 A4 A#4 B4 C5';
  expect(show('piano', up)).toBe('1 3 1 3 1 2 3 1 3 1 3 1 2');
  expect(show('piano', up, { hand: 'left' })).toBe('1 3 1 3 2 1 3 1 3 1 3 2 1');
});

test('a cellist in the second year goes up the A string without stretching', () => {
  const notes = fingerLine('cello', line('A3 B3 C4 D4 E4 F#4 G4'), { stage: 'elementary' });
  expect(notes.some((note) => isStringed(note) && note.stretch)).toBe(false);
});

test('a free line on the keyboard spares the thumb from black keys', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('right', 'left'),
      fc.integer({ min: -3, max: 3 }),
      fc.array(fc.integer({ min: -2, max: 2 }), { minLength: 8, maxLength: 24 }),
      (hand, fifths, steps) => {
        const scale = Array.from({ length: 7 }, (_none, i) => fifthsToName(fifths - 1 + i));
        const up = [3, 4, 5]
          .flatMap((octave) => scale.map((name) => written({ ...name, octave })))
          .toSorted((a, b) => pitchToMidi(a) - pitchToMidi(b));
        let place = 10;
        const pitches = [0, ...steps].map((step) => {
          place = Math.min(20, Math.max(0, place + step));
          return present(up[place], 'a scale note');
        });
        const notes = fingerLine('piano', pitches, { hand });
        const fingers = notes.map((note) => (note?.kind === 'keyboard' ? note.finger : 0));
        expect(fingers.every((finger) => finger >= 1 && finger <= 5)).toBe(true);
        const onBlack = pitches.filter(
          (pitch, i) => fingers[i] === 1 && [1, 3, 6, 8, 10].includes(pitchToMidi(pitch) % 12),
        );
        expect(onBlack.length).toBeLessThanOrEqual(1);
        // One finger never takes two different keys in a row.
        pitches.forEach((pitch, i) => {
          const next = pitches[i + 1];
          if (next !== undefined && pitchToMidi(next) !== pitchToMidi(pitch))
            expect(fingers[i + 1], JSON.stringify(fingers)).not.toBe(fingers[i]);
        });
      },
    ),
    { numRuns: 150, seed: 7 },
  );
});

test('a horn is single for beginners and double later', () => {
  expect(show('horn_f', 'C4 G4 Ab4 A4')).toBe('0 0 23 12');
  // From memory of double horn charts.
  expect(show('horn_f', 'C4 G4 Ab4 A4 Bb4 B4 C5 C#5 D5 E5 F5 G5', { stage: 'intermediate' })).toBe(
    '0 0 T23 T12 T1 T2 T0 T23 T12 T2 T0 T0',
  );
});

test('the tuba’s lowest notes need the fourth valve', () => {
  expect(show('tuba', 'D1 E1 Bb1')).toBe('124 123 0');
});

test('every instrument that is fingered has every note of its full brass and string range', () => {
  for (const instrument of listInstruments()) {
    if (instrument.family !== 'brass' && instrument.strings === null) continue;
    const { low, high } = fullRange(instrument);
    for (let midi = pitchToMidi(low); midi <= pitchToMidi(high); midi++) {
      expect(
        fingeringOf(instrument.id, at(midi), { stage: 'advanced' }),
        `${instrument.id} ${midi}`,
      ).not.toBe(null);
    }
  }
});

test('woodwinds lack only the notes we do not vouch for', () => {
  const lacking: string[] = [];
  for (const instrument of listInstruments()) {
    if (instrument.family !== 'woodwind') continue;
    const { low, high } = rangeAtStage(instrument, 'intermediate');
    for (let midi = pitchToMidi(low); midi <= pitchToMidi(high); midi++) {
      if (fingeringOf(instrument.id, at(midi)) === null) lacking.push(`${instrument.id} ${midi}`);
    }
  }
  expect(lacking).toEqual([
    'bassoon 61',
    'bassoon 63',
    'bassoon 64',
    'bassoon 65',
    'bassoon 66',
    'bassoon 67',
  ]);
});

test('nothing is fingered outside an instrument, for voices and mallets', () => {
  expect(fingeringOf('violin', present(line('F3')[0], 'a note'))).toBe(null);
  expect(fingeringOf('voice_alto', present(line('C4')[0], 'a note'))).toBe(null);
  expect(fingerLine('vibraphone', line('C4 D4'))).toEqual([null, null]);
  expect(fingerLine('violin', line('C3 A4'))[0]).toBe(null);
  expect(fingerLine('piano', [])).toEqual([]);
  expect(findInstrument('kazoo')).toBe(null);
});
