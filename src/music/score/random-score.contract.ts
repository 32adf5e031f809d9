// Random sound scores that use everything a score can hold: what every writer must take.

import { chooseOne, createSeededRandom, present, type Random, randomInteger } from '#core';
import { parseChord } from '../chord/chord.ts';
import { listChordQualities } from '../chord/quality.ts';
import { compare, type Fraction, fraction, minus, plus, zero } from '../fraction/fraction.ts';
import { type Instrument, listInstruments } from '../instrument/instrument.ts';
import { fifthsToKey, type Key, keyFifths, signatureAlters } from '../key/key.ts';
import { fifthsToName, letters, pitchToMidi, type WrittenPitch, written } from '../pitch/pitch.ts';
import { barLength, type Metre, parseMetre } from '../rhythm/metre.ts';
import { writeEvent } from '../rhythm/split-span.ts';
import {
  barRest,
  chordSymbol,
  createScore,
  dynamic,
  freeBar,
  hit,
  note,
  noteHead,
  notes,
  part,
  rest,
  scoreBar,
  slash,
  swingMark,
  tempoMark,
  tuplet,
  words,
} from './create-score.ts';
import type {
  Articulation,
  ClefChange,
  Direction,
  NoteEvent,
  Part,
  PartBar,
  Score,
  ScoreBar,
  ScoreClef,
  ScoreEvent,
  SlurPlace,
  Staff,
  Voice,
} from './score.ts';

const metres = ['2/4', '3/4', '4/4', '2/2', '6/8', '9/8', '12/8', '5/4', '5/8', '7/8', '7/8 (3+2+2)'];
const articulations: readonly Articulation[] = [
  'staccato',
  'tenuto',
  'accent',
  'marcato',
  'staccatissimo',
  'fermata',
  'up-bow',
  'down-bow',
  'breath',
];

const chance = (random: Random, share: number) => random.next() < share;

/** Mostly in the key, now and then altered, about the middle of the staff. */
function anyPitch(random: Random, key: Key): WrittenPitch {
  const letter = chooseOne(random, letters);
  const alter = chance(random, 0.8) ? signatureAlters(keyFifths(key))[letter] : randomInteger(random, -1, 1);
  return written({ letter, alter, octave: randomInteger(random, 3, 5) });
}

function anyMarks(random: Random) {
  return {
    articulations: chance(random, 0.2) ? [chooseOne(random, articulations)] : [],
    lyric: chance(random, 0.1) ? chooseOne(random, ['C', 'do', 'F♯', '1', 'A & B <']) : null,
  };
}

function anyEvent(random: Random, key: Key, duration: Fraction): ScoreEvent {
  const roll = random.next();
  if (roll < 0.2) return rest(duration, { isHidden: chance(random, 0.1) });
  if (roll < 0.27) return slash(duration, { hasStem: chance(random, 0.5) });
  if (roll < 0.32) return hit(duration, { drum: randomInteger(random, 35, 81), ...anyMarks(random) });
  if (roll < 0.42) {
    const heads = Array.from({ length: 3 }, () => anyPitch(random, key))
      .sort((a, b) => pitchToMidi(a) - pitchToMidi(b))
      .filter(
        (pitch, i, all) => i === 0 || pitchToMidi(pitch) > pitchToMidi(present(all[i - 1], 'the one below')),
      );
    return notes(
      heads.map((pitch) => noteHead(pitch)),
      duration,
      anyMarks(random),
    );
  }
  const isFingered = chance(random, 0.2);
  return note(anyPitch(random, key), duration, {
    ...anyMarks(random),
    fingering: isFingered ? chooseOne(random, ['1', '1-3', 'T', '0']) : null,
    string: isFingered ? 2 : null,
    fret: isFingered ? randomInteger(random, 0, 12) : null,
    pluck: isFingered ? chooseOne(random, ['p', 'i']) : null,
    hasStem: !chance(random, 0.05),
    shape: chance(random, 0.1) ? chooseOne(random, ['cross', 'ghost'] as const) : 'normal',
    grace: chance(random, 0.05) ? [anyPitch(random, key)] : [],
  });
}

/** A bar cut at random on the grid of semiquavers, with a triplet on some beats; `skip` is what a pickup leaves out. */
function anyBarEvents(random: Random, metre: Metre, key: Key, skip: Fraction): readonly ScoreEvent[] {
  const end = barLength(metre);
  if (skip.n === 0 && chance(random, 0.08)) return [barRest(end)];
  const events: ScoreEvent[] = [];
  let at = skip;
  while (compare(at, end) < 0) {
    const left = minus(end, at);
    const isOnCrotchet = fraction(at.n * 4, at.d).d === 1;
    if (isOnCrotchet && compare(left, fraction(1, 4)) >= 0 && chance(random, 0.15)) {
      const quavers = [0, 1, 2].map(() => anyEvent(random, key, fraction(1, 8)));
      events.push(...tuplet({ actual: 3, normal: 2 }, quavers));
      at = plus(at, fraction(1, 4));
      continue;
    }
    const wanted = fraction(randomInteger(random, 1, 8), 16);
    const length = compare(wanted, left) < 0 ? wanted : left;
    events.push(...writeEvent(metre, at, anyEvent(random, key, length)).flat());
    at = plus(at, length);
  }
  return events;
}

/** Ties and slurs thrown over a finished line: each tie copies its heads into the note after it. */
function joinLine(
  random: Random,
  bars: readonly (readonly ScoreEvent[])[],
): readonly (readonly ScoreEvent[])[] {
  const flat = bars.flat();
  flat.forEach((event, i) => {
    const next = flat[i + 1];
    if (event.kind !== 'note' || next?.kind !== 'note' || !chance(random, 0.1)) return;
    flat[i] = { ...event, heads: event.heads.map((head) => ({ ...head, isTied: true })) };
    const isTied = next.heads.some((head) => head.isTied);
    flat[i + 1] = { ...next, heads: isTied ? next.heads : event.heads.map(({ pitch }) => noteHead(pitch)) };
    if (isTied) flat[i] = event;
  });
  let isOpen = false;
  const singing = flat.flatMap((event, i) => (event.kind === 'note' ? [i] : []));
  singing.forEach((i, n) => {
    const event = present(flat[i], 'a note') as NoteEvent;
    const isLast = n === singing.length - 1;
    if (!isOpen && (isLast || !chance(random, 0.1))) return;
    const slur: SlurPlace = !isOpen
      ? 'start'
      : isLast || chance(random, 0.4)
        ? 'stop'
        : chance(random, 0.2)
          ? 'stop-start'
          : null;
    flat[i] = { ...event, slur };
    if (slur !== null) isOpen = slur !== 'stop';
  });
  let from = 0;
  return bars.map((bar) => {
    from += bar.length;
    return flat.slice(from - bar.length, from);
  });
}

function anyFrame(random: Random): readonly ScoreBar[] {
  let metre = present(parseMetre(chooseOne(random, metres)), 'a metre');
  const hasPickup = chance(random, 0.3);
  const count = randomInteger(random, 1, 6);
  const bars = Array.from({ length: count + (hasPickup ? 1 : 0) }, (_, i) => {
    const number = hasPickup ? i : i + 1;
    if (number > 1 && chance(random, 0.15)) metre = present(parseMetre(chooseOne(random, metres)), 'a metre');
    const tempo = tempoMark(randomInteger(random, 40, 200), {
      type: 'quarter',
      dots: chance(random, 0.2) ? 1 : 0,
    });
    const isBegin = i === 0;
    return scoreBar(number, metre, {
      ...(number === 0 ? { length: fraction(1, metre.unit) } : {}),
      section: chance(random, 0.2) ? chooseOne(random, ['A', 'B', 'Head']) : null,
      repeatStart: chance(random, 0.15),
      repeatEnd: chance(random, 0.15),
      ending: number > 0 && chance(random, 0.1) ? randomInteger(random, 1, 2) : null,
      barline: number === count ? 'final' : chance(random, 0.1) ? 'double' : 'single',
      tempo: isBegin || chance(random, 0.1) ? { ...tempo, isFigureShown: chance(random, 0.8) } : null,
      swing: chance(random, 0.2)
        ? swingMark(chance(random, 0.3) ? { long: 1, short: 1, text: 'Straight' } : {})
        : null,
      startsSystem: isBegin || chance(random, 0.2),
    });
  });
  return chance(random, 0.15) ? [freeBar(randomInteger(random, 1, 9)), ...bars] : bars;
}

function anyDirections(random: Random, length: Fraction, mayShift: boolean): readonly Direction[] {
  if (chance(random, 0.7)) return [];
  const at = fraction(length.n * randomInteger(random, 0, 3), length.d * 4);
  const hairpin: readonly Direction[] = [
    { kind: 'hairpin', shape: 'crescendo', at: zero, staff: 1 },
    { kind: 'hairpin-end', at: length, staff: 1 },
  ];
  const octave: readonly Direction[] = [
    { kind: 'octave-up', at: zero, staff: 1 },
    { kind: 'octave-end', at: length, staff: 1 },
  ];
  return [
    ...(mayShift ? octave : []),
    words('your turn', { at, style: 'italic' }),
    dynamic('mf', { at }),
    ...(chance(random, 0.3) ? hairpin : []),
  ];
}

/** Now and then another clef of the instrument inside the bar, before an event of the first voice that is in no tuplet. */
function anyClefChange(
  random: Random,
  instrument: Instrument,
  events: readonly ScoreEvent[],
): readonly ClefChange[] {
  let at = zero;
  const starts = events.flatMap(({ duration, tuplet: place }) => {
    const start = at;
    at = plus(at, duration);
    return place === null && start.n > 0 ? [start] : [];
  });
  if (starts.length === 0 || !chance(random, 0.1)) return [];
  return [{ at: chooseOne(random, starts), staff: 1, clef: chooseOne(random, instrument.clefs) }];
}

/** Whether the upper line plays all through the bar, without a tie: an octave line may stand over it. */
function mayShift(lines: readonly (readonly (readonly ScoreEvent[])[])[], bar: number): boolean {
  const upper = lines[0] ?? [];
  const isTied = (event: ScoreEvent | undefined) =>
    event?.kind === 'note' && event.heads.some((head) => head.isTied);
  const events = upper[bar] ?? [];
  const isSounding = events.length > 0 && events.every(({ kind }) => kind === 'note');
  return isSounding && !isTied(upper[bar - 1]?.at(-1)) && !events.some(isTied);
}

function anyPart(random: Random, instrument: Instrument, frame: readonly ScoreBar[], isFirst: boolean): Part {
  const isGrand = chance(random, 0.25);
  const oneStaff: Staff = chance(random, 0.1)
    ? 'one-line'
    : instrument.strings !== null && chance(random, 0.2)
      ? 'tablature'
      : 'five-line';
  const staves: readonly Staff[] = isGrand ? ['five-line', 'five-line'] : [oneStaff];
  let key = fifthsToKey(randomInteger(random, -7, 7), chooseOne(random, ['major', 'minor'] as const));
  const keys = frame.map(() => {
    if (chance(random, 0.1)) key = fifthsToKey(randomInteger(random, -6, 6), 'major');
    return key;
  });
  const voices = [
    { id: 1, staff: 1 },
    ...(chance(random, 0.2) ? [{ id: 2, staff: 1 }] : []),
    ...(isGrand ? [{ id: 5, staff: 2 }] : []),
  ];
  const lines = voices.map(() =>
    joinLine(
      random,
      frame.map(({ metre, length }, i) =>
        anyBarEvents(random, metre, present(keys[i], 'a key'), minus(barLength(metre), length)),
      ),
    ),
  );
  const clefs: readonly ScoreClef[] = isGrand
    ? ['treble', 'bass']
    : [
        oneStaff === 'one-line'
          ? 'percussion'
          : oneStaff === 'tablature'
            ? 'tab'
            : chooseOne(random, instrument.clefs),
      ];
  const bars = frame.map(({ length }, i): PartBar => {
    const chord = parseChord(
      `${fifthsToName(randomInteger(random, -5, 6)).letter}${chooseOne(random, listChordQualities()).suffix}`,
    );
    return {
      key: present(keys[i], 'a key'),
      clefs,
      clefChanges: oneStaff === 'five-line' ? anyClefChange(random, instrument, lines[0]?.[i] ?? []) : [],
      voices: voices.flatMap((voice, v): readonly Voice[] => {
        const isSilent = voice.id !== 1 && lines[v]?.[i]?.length === 1 && lines[v]?.[i]?.[0]?.kind === 'rest';
        return isSilent ? [] : [{ ...voice, events: present(lines[v]?.[i], 'a line') }];
      }),
      chords: chance(random, 0.4)
        ? [
            chordSymbol(chord.ok ? chord.value : null),
            ...(chance(random, 0.5) ? [chordSymbol(null, fraction(length.n, length.d * 2))] : []),
          ]
        : [],
      directions: anyDirections(
        random,
        length,
        isFirst && mayShift(lines, i) && !voices.some(({ id }) => id === 2),
      ),
    };
  });
  return part(instrument, bars, { name: chance(random, 0.5) ? instrument.name : '', staves });
}

/** A sound score from any whole number; the same seed gives the same score. */
export function randomScore(seed: number): Score {
  const random = createSeededRandom(seed);
  const bars = anyFrame(random);
  const parts = Array.from({ length: randomInteger(random, 1, 2) }, (_, i) =>
    anyPart(random, chooseOne(random, listInstruments()), bars, i === 0),
  );
  return createScore({
    title: chance(random, 0.5) ? 'Study & <play>' : '',
    credit: 'Traditional',
    bars,
    parts,
  });
}
