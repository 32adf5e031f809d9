// What is heard when a score is played as written: notes with sounding pitch, start and length, repeats unfolded, ties
// joined, off-beats swung. Playback, MIDI files and listening read it.

import {
  compare,
  type Fraction,
  fraction,
  minus,
  over,
  plus,
  remainder,
  times,
  zero,
} from '../fraction/fraction.ts';
import { writtenToSounding } from '../instrument/instrument.ts';
import { pitchToMidi, type WrittenPitch } from '../pitch/pitch.ts';
import type {
  Articulation,
  Direction,
  Dynamic,
  HitEvent,
  NoteEvent,
  Part,
  Score,
  SwingMark,
} from '../score/score.ts';
import { type PlayedBar, playOrder } from './play-order.ts';

export interface PlayedNote {
  /** Place in the score's list of parts, from 0. */
  readonly part: number;
  /** Place in the score's list of bars, from 0, where it is written. */
  readonly bar: number;
  /** Semibreves from the beginning. */
  readonly start: Fraction;
  readonly duration: Fraction;
  /** Sounding key number, middle C = 60; for a drum its General MIDI key. */
  readonly midi: number;
  /** 1 to 127. */
  readonly velocity: number;
  readonly isDrum: boolean;
}

export interface PlayedScore {
  readonly bars: readonly PlayedBar[];
  /** By start, then part, then pitch. */
  readonly notes: readonly PlayedNote[];
}

/** Key velocities of dynamics, and of the blow of `fp` and `sfz` (common practice, no source). */
const lasting: Readonly<Record<Exclude<Dynamic, 'sfz'>, number>> = {
  pp: 36,
  p: 50,
  mp: 64,
  mf: 80,
  f: 96,
  ff: 112,
  fp: 50,
};
const blow = 112;

/** Share of its length that a note sounds (common practice, no source). */
function soundingShare(articulations: readonly Articulation[]): Fraction {
  if (articulations.includes('staccatissimo')) return fraction(1, 4);
  return articulations.includes('staccato') ? fraction(1, 2) : fraction(1);
}

const isPowerOfTwo = (n: number) => (n & (n - 1)) === 0;

/**
 * A place in the bar as it is swung: the halves of a pair become `long` and `short`, what divides them by two goes along,
 * and tuplets stay as they are. Quaver off the beat, 2 to 1 → 1/6
 */
function swingPlace(place: Fraction, swing: SwingMark): Fraction {
  if (!isPowerOfTwo(place.d)) return place;
  const pair = swing.unit === 'eighth' ? fraction(1, 4) : fraction(1, 8);
  const inside = remainder(place, pair);
  const half = over(pair, fraction(2));
  const long = times(pair, fraction(swing.long, swing.long + swing.short));
  const swung =
    compare(inside, half) <= 0
      ? times(inside, over(long, half))
      : plus(long, times(minus(inside, half), over(minus(pair, long), half)));
  return plus(minus(place, inside), swung);
}

/** Pairs are swung in metres of crotchets and minims, not in compound ones. */
const isSwung = ({ bar }: PlayedBar) => bar.metre.unit <= 4 && bar.metre.groups.some((group) => group !== 3);

/** When a place in the bar is heard, from the beginning. */
function heardAt(played: PlayedBar, at: Fraction): Fraction {
  const inMetre = plus(at, played.offset);
  const swung = played.swing !== null && isSwung(played) ? swingPlace(inMetre, played.swing) : inMetre;
  return plus(played.start, minus(swung, played.offset));
}

/** Velocity after the dynamics of a bar up to a place, or with null after all of them. */
function velocityAfter(directions: readonly Direction[], upTo: Fraction | null, before: number): number {
  let velocity = before;
  for (const direction of directions) {
    if (direction.kind !== 'dynamic' || direction.mark === 'sfz') continue;
    if (upTo === null || compare(direction.at, upTo) <= 0) velocity = lasting[direction.mark];
  }
  return velocity;
}

/** How hard an event is struck, in a bar that began at a velocity. */
function velocityOf(
  event: NoteEvent | HitEvent,
  at: Fraction,
  directions: readonly Direction[],
  start: number,
) {
  const isBlow = directions.some(
    (direction) =>
      direction.kind === 'dynamic' &&
      (direction.mark === 'sfz' || direction.mark === 'fp') &&
      compare(direction.at, at) === 0,
  );
  const { articulations } = event;
  const stress = articulations.includes('marcato') ? 24 : articulations.includes('accent') ? 16 : 0;
  return Math.min(127, (isBlow ? blow : velocityAfter(directions, at, start)) + stress);
}

interface Sound {
  readonly midi: number;
  readonly isDrum: boolean;
  readonly isTied: boolean;
}

const keyOf = (part: Part, pitch: WrittenPitch) => pitchToMidi(writtenToSounding(part.instrument, pitch));

function soundsOf(event: NoteEvent | HitEvent, part: Part): readonly Sound[] {
  if (event.kind === 'hit') return [{ midi: event.drum, isDrum: true, isTied: event.isTied }];
  return event.heads.map(({ pitch, isTied }) => ({ midi: keyOf(part, pitch), isDrum: false, isTied }));
}

/** Length of a grace note, taken from the note it leads to: a demisemiquaver, or less before short notes. */
function graceLength(event: NoteEvent, duration: Fraction): Fraction {
  const most = over(duration, fraction(2 * event.grace.length));
  return compare(most, fraction(1, 32)) < 0 ? most : fraction(1, 32);
}

interface Held {
  readonly note: { -readonly [K in keyof PlayedNote]: PlayedNote[K] };
  readonly end: Fraction;
}

/** The notes of a part in playing order. */
function performPart(part: Part, index: number, bars: readonly PlayedBar[]): readonly PlayedNote[] {
  const notes: Held['note'][] = [];
  /** Notes tied onward, by voice and key. */
  const held = new Map<string, Held>();
  let velocity = lasting.mf;
  const startVelocities = part.bars.map(({ directions }) => {
    const before = velocity;
    velocity = velocityAfter(directions, null, before);
    return before;
  });
  const strike = (event: NoteEvent | HitEvent, voice: number, played: PlayedBar, at: Fraction) => {
    const end = heardAt(played, plus(at, event.duration));
    const directions = part.bars[played.index]?.directions ?? [];
    const struck = velocityOf(event, at, directions, startVelocities[played.index] ?? lasting.mf);
    const common = { part: index, bar: played.index, velocity: struck };
    let start = heardAt(played, at);
    for (const pitch of event.kind === 'note' ? event.grace : []) {
      const duration = event.kind === 'note' ? graceLength(event, event.duration) : fraction(0);
      notes.push({ ...common, start, duration, midi: keyOf(part, pitch), isDrum: false });
      start = plus(start, duration);
    }
    for (const { midi, isDrum, isTied } of soundsOf(event, part)) {
      const key = `${voice}:${midi}:${isDrum}`;
      const before = held.get(key);
      held.delete(key);
      let note = before?.note;
      if (before === undefined || note === undefined || compare(before.end, start) !== 0) {
        note = { ...common, start, duration: minus(end, start), midi, isDrum };
        notes.push(note);
      } else note.duration = minus(end, note.start);
      if (isTied) held.set(key, { note, end });
      else {
        const own = minus(end, start);
        const silent = minus(own, times(own, soundingShare(event.articulations)));
        note.duration = minus(note.duration, silent);
      }
    }
  };
  for (const played of bars) {
    for (const voice of part.bars[played.index]?.voices ?? []) {
      let at = zero;
      for (const event of voice.events) {
        if (event.kind === 'note' || event.kind === 'hit') strike(event, voice.id, played, at);
        at = plus(at, event.duration);
      }
    }
  }
  return notes;
}

/** The score as it is heard. */
export function performScore(score: Score): PlayedScore {
  const bars = playOrder(score);
  const notes = score.parts
    .flatMap((part, index) => performPart(part, index, bars))
    .sort((a, b) => compare(a.start, b.start) || a.part - b.part || a.midi - b.midi);
  return { bars, notes };
}

/** Seconds from the beginning to a place, by the tempi on the way. */
export function secondsAt({ bars }: Pick<PlayedScore, 'bars'>, place: Fraction): number {
  let seconds = 0;
  for (const { start, bar, tempo } of bars) {
    const inBar = minus(place, start);
    if (inBar.n <= 0) break;
    const isLast = compare(inBar, bar.length) <= 0;
    const part = isLast ? inBar : bar.length;
    seconds += (240 / tempo) * (part.n / part.d);
    if (isLast) break;
  }
  return seconds;
}
