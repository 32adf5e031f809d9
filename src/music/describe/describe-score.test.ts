// The words are our own; names of note values are held to the reference table in checks/theory.
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { present } from '#core';
import { parseChord } from '../chord/chord.ts';
import { fraction } from '../fraction/fraction.ts';
import { findInstrument } from '../instrument/instrument.ts';
import { parseKey } from '../key/key.ts';
import { parsePitch, written } from '../pitch/pitch.ts';
import { parseMetre } from '../rhythm/metre.ts';
import {
  barRest,
  chordSymbol,
  createScore,
  dynamic,
  hit,
  note,
  noteHead,
  notes,
  part,
  partBar,
  rest,
  scoreBar,
  slash,
  swingMark,
  tempoMark,
  tuplet,
  withTablature,
  words,
} from '../score/create-score.ts';
import { randomScore } from '../score/random-score.contract.ts';
import type { PartBar, ScoreBar, ScoreEvent } from '../score/score.ts';
import { describeScore } from './describe-score.ts';

const pitch = (text: string) => written(present(parsePitch(text), text));
const key = (text: string) => present(parseKey(text), text);
const metre = (text: string) => present(parseMetre(text), text);
const instrument = (id: string) => present(findInstrument(id), id);
const [quaver, crotchet, minim, whole] = [fraction(1, 8), fraction(1, 4), fraction(1, 2), fraction(1)];
const chord = (text: string) => {
  const read = parseChord(text);
  return chordSymbol(read.ok ? read.value : null);
};

/** What is said of one bar, after its name. */
function say(
  events: readonly ScoreEvent[],
  more: Partial<PartBar> = {},
  frame: Partial<ScoreBar> = {},
): string {
  const bar = { ...partBar({ key: key('C') }, events), ...more };
  const bars = [scoreBar(1, metre('4/4'), frame), scoreBar(2, metre('4/4'))];
  const after = partBar({ key: key('C') }, [barRest(whole)]);
  const text = describeScore(createScore({ bars, parts: [part(instrument('guitar'), [bar, after])] }));
  return present(text.match(/^Bar 1: (.*)$/m)?.[1], 'bar 1');
}

test.each<[string, readonly ScoreEvent[]]>([
  [
    'Quavers C 4, F sharp 4; crotchet B flat 4; minim rest.',
    [note(pitch('C4'), quaver), note(pitch('F#4'), quaver), note(pitch('Bb4'), crotchet), rest(minim)],
  ],
  ['4 crotchets C 5.', [1, 2, 3, 4].map(() => note(pitch('C5'), crotchet))],
  ['Bar of rest.', [barRest(whole)]],
  ['4 crotchet slashes.', [1, 2, 3, 4].map(() => slash(crotchet))],
  ['2 minim hits.', [hit(minim), hit(minim)]],
  [
    'Dotted minim C 5 tied on; crotchet C 5 held over.',
    [note(pitch('C5'), fraction(3, 4), { isTied: true }), note(pitch('C5'), crotchet)],
  ],
  ['Semibreve chord C 4 and E 4.', [notes([noteHead(pitch('C4')), noteHead(pitch('E4'))], whole)]],
  [
    'Crotchet A 4 fingering 2 string 3 fret 2 plucked m accented; dotted minim rest.',
    [
      note(pitch('A4'), crotchet, {
        fingering: '2',
        string: 3,
        fret: 2,
        pluck: 'm',
        articulations: ['accent'],
      }),
      rest(fraction(3, 4)),
    ],
  ],
  [
    'Triplet of quavers C 5, D 5, E 5; crotchet C 5; minim rest.',
    [
      ...tuplet(
        { actual: 3, normal: 2 },
        ['C5', 'D5', 'E5'].map((name) => note(pitch(name), quaver)),
      ),
      note(pitch('C5'), crotchet),
      rest(minim),
    ],
  ],
  [
    'Minims C 5, D 5 “la”.',
    [note(pitch('C5'), minim, { lyric: 'C' }), note(pitch('D5'), minim, { lyric: 'la' })],
  ],
])('%s', (expected, events) => {
  expect(say(events)).toBe(expected);
});

test('what stands over the music comes before it, in one order', () => {
  const more = {
    chords: [chord('Am7'), { ...chord('D7b9'), at: fraction(3, 8) }],
    directions: [words('your turn'), dynamic('p', { at: minim })],
  };
  expect(say([barRest(whole)], more, { section: 'A', repeatStart: true, repeatEnd: true })).toBe(
    'Section A, repeat starts. Chords: A minor 7 on beat 1, D dominant 7 flat 9 after beat 2. ' +
      '“your turn” at beat 1, quiet (p) at beat 3. Bar of rest. Repeat.',
  );
});

test('the whole: heading, pickup, changes, a bar the same again, the end; in American names', () => {
  const three = metre('3/4');
  const bars = [
    scoreBar(0, three, { length: crotchet, tempo: tempoMark(96, undefined, 'Lively'), swing: swingMark() }),
    scoreBar(1, three),
    scoreBar(2, three),
    scoreBar(3, metre('2/4'), { length: minim }),
  ];
  const music = [
    partBar({ key: key('G') }, [note(pitch('D4'), crotchet)]),
    ...[1, 2].map(() => partBar({ key: key('G') }, [note(pitch('G4'), fraction(3, 4))])),
    partBar({ key: key('Bb'), clefs: ['bass'] }, [note(pitch('G4'), minim)]),
  ];
  const flute = part(instrument('flute'), music);
  expect(
    describeScore(createScore({ title: 'Skip', credit: 'Traditional', bars, parts: [flute] }), 'american'),
  ).toBe(
    `Skip. Traditional.
Flute. Treble clef. G major, 1 sharp.
3/4. Lively, quarter note = 96. Swing. 3 measures. Begins with a pickup.
Pickup: Quarter note D 4.
Measure 1: Dotted half note G 4.
Measure 2: The same again.
Measure 3: Now 2/4. Now B flat major, 2 flats, now bass clef. Half note G 4. End.`,
  );
});

test('two staves are told apart; tablature is not told twice', () => {
  const piano = part(
    instrument('piano'),
    [{ ...partBar({ key: key('C'), clefs: ['treble', 'bass'] }, [note(pitch('C5'), whole)]) }],
    { staves: ['five-line', 'five-line'] },
  );
  const bars = [scoreBar(1, metre('4/4'))];
  expect(describeScore(createScore({ bars, parts: [piano] }))).toContain(
    'Bar 1: Upper staff: semibreve C 5. Lower staff: bar of rest. End.',
  );
  const guitar = withTablature(
    part(instrument('guitar'), [
      partBar({ key: key('C') }, [note(pitch('E4'), whole, { string: 4, fret: 2 })]),
    ]),
  );
  expect(describeScore(createScore({ bars, parts: [guitar] }))).toContain(
    'Bar 1: Semibreve E 4 string 4 fret 2. End.',
  );
});

test('a clef inside a bar is told with its beat', () => {
  const change = { at: minim, staff: 1, clef: 'bass' } as const;
  const two = [note(pitch('C5'), minim), note(pitch('C3'), minim)];
  expect(say(two, { clefChanges: [change] })).toBe('Bass clef from beat 3. Minims C 5, C 3.');
});

test('any sound score is told, a line for every bar of every part', () => {
  fc.assert(
    fc.property(fc.integer(), (seed) => {
      const score = randomScore(seed);
      const text = describeScore(score);
      const lines = text.split('\n').filter((line) => /^(Bar \d|Pickup|Free notes)/.test(line));
      expect(lines.length).toBe(score.bars.length * score.parts.length);
      expect(text).not.toMatch(/undefined|null|NaN|\s[,.;]|\.\.|: \./);
    }),
  );
});
