import { expect, test } from 'vitest';
import { present } from '#core';
import { formatFraction, fraction } from '../fraction/fraction.ts';
import { findInstrument } from '../instrument/instrument.ts';
import { fifthsToKey } from '../key/key.ts';
import { parsePitch, written } from '../pitch/pitch.ts';
import { parseMetre } from '../rhythm/metre.ts';
import {
  createScore,
  dynamic,
  note,
  part,
  partBar,
  rest,
  scoreBar,
  swingMark,
  tempoMark,
  tuplet,
} from '../score/create-score.ts';
import type { Direction, ScoreBar, ScoreEvent } from '../score/score.ts';
import { performScore, secondsAt } from './perform-score.ts';

const key = fifthsToKey(0, 'major');
const metre = (text: string) => present(parseMetre(text), text);
const pitch = (text: string) => written(present(parsePitch(text), text));
const [quaver, crotchet, minim] = [fraction(1, 8), fraction(1, 4), fraction(1, 2)];

interface Bar {
  readonly events: readonly ScoreEvent[];
  readonly frame?: Partial<ScoreBar>;
  readonly directions?: readonly Direction[];
}

function perform(bars: readonly Bar[], sig = '2/4', id = 'flute') {
  const frame = bars.map((bar, i) => scoreBar(i + 1, metre(sig), bar.frame ?? {}));
  const music = bars.map(({ events, directions }) => partBar({ key, directions: directions ?? [] }, events));
  return performScore(createScore({ bars: frame, parts: [part(present(findInstrument(id), id), music)] }));
}
/** `60@0+1/4`: key, start, length. */
const show = ({ notes }: ReturnType<typeof perform>) =>
  notes
    .map(({ midi, start, duration }) => `${midi}@${formatFraction(start)}+${formatFraction(duration)}`)
    .join(' ');

test('notes sound where the instrument sounds them', () => {
  const events = [note(pitch('C5'), minim)];
  expect(show(perform([{ events }], '2/4', 'alto_sax'))).toBe('63@0+1/2'); // E flat 4
});

test('ties join over the bar line; a rest or another pitch does not', () => {
  const tied = note(pitch('C5'), minim, { isTied: true });
  expect(show(perform([{ events: [tied] }, { events: [note(pitch('C5'), crotchet), rest(crotchet)] }]))).toBe(
    '72@0+3/4',
  );
});

test('repeats are played again, each ending in its turn', () => {
  const bar = (name: string, frame: Partial<ScoreBar> = {}): Bar => ({
    events: [note(pitch(name), minim)],
    frame,
  });
  const played = perform([
    bar('C5', { repeatStart: true }),
    bar('D5', { ending: 1, repeatEnd: true }),
    bar('E5', { ending: 2 }),
  ]);
  expect(show(played)).toBe('72@0+1/2 74@1/2+1/2 72@1+1/2 76@3/2+1/2');
  expect(played.notes.map(({ bar: place }) => place)).toEqual([0, 1, 0, 2]);
});

test('off-beat quavers are swung and semiquavers go along; triplets and compound metres stay', () => {
  const swung = { frame: { swing: swingMark() } };
  const quavers = [1, 2, 3, 4].map(() => note(pitch('C5'), quaver));
  expect(show(perform([{ events: quavers, ...swung }]))).toBe('72@0+1/6 72@1/6+1/12 72@1/4+1/6 72@5/12+1/12');
  const semiquavers = [1, 2, 3, 4].map(() => note(pitch('C5'), fraction(1, 16)));
  expect(show(perform([{ events: [...semiquavers, rest(crotchet)], ...swung }]))).toBe(
    '72@0+1/12 72@1/12+1/12 72@1/6+1/24 72@5/24+1/24',
  );
  const triplet = tuplet(
    { actual: 3, normal: 2 },
    [1, 2, 3].map(() => note(pitch('C5'), quaver)),
  );
  expect(show(perform([{ events: [...triplet, rest(crotchet)], ...swung }]))).toBe(
    '72@0+1/12 72@1/12+1/12 72@1/6+1/12',
  );
  const six = [1, 2, 3, 4, 5, 6].map(() => note(pitch('C5'), quaver));
  expect(show(perform([{ events: six, ...swung }], '6/8'))).toBe(
    [0, 1, 2, 3, 4, 5].map((i) => `72@${formatFraction(fraction(i, 8))}+1/8`).join(' '),
  );
});

test('a pickup swings as the end of its bar', () => {
  const pickup = {
    events: [note(pitch('C5'), quaver)],
    frame: { number: 0, length: quaver, swing: swingMark() },
  };
  // The quaver off the beat is short: its bar begins, like the metre, a quaver before the beat.
  expect(show(perform([pickup, { events: [note(pitch('D5'), minim)] }]))).toBe('72@1/24+1/12 74@1/8+1/2');
});

test('staccato halves, dynamics and accents strike harder (common practice, no source)', () => {
  const events = [
    note(pitch('C5'), crotchet, { articulations: ['staccato'] }),
    note(pitch('D5'), crotchet, { articulations: ['accent'] }),
  ];
  const played = perform([
    { events, directions: [dynamic('p'), dynamic('f', { at: crotchet })] },
    { events },
  ]);
  expect(show(played)).toBe('72@0+1/8 74@1/4+1/4 72@1/2+1/8 74@3/4+1/4');
  expect(played.notes.map(({ velocity }) => velocity)).toEqual([50, 112, 96, 112]);
});

test('grace notes take their time from the note they lead to', () => {
  const events = [note(pitch('C5'), minim, { grace: [pitch('B4')] })];
  expect(show(perform([{ events }]))).toBe('71@0+1/32 72@1/32+15/32');
});

test('seconds follow the tempi on the way', () => {
  const bar = (perMinute: number | null): Bar => ({
    events: [rest(minim)],
    frame: { tempo: perMinute === null ? null : tempoMark(perMinute) },
  });
  const played = perform([bar(60), bar(null), bar(120)]);
  expect(
    [fraction(0), crotchet, fraction(1), fraction(3, 2)].map((place) => secondsAt(played, place)),
  ).toEqual([0, 1, 4, 5]);
});
