// Fingers for a free line on the keyboard: Parncutt, Sloboda, Clarke, Raekallio & Desain, "An ergonomic model of keyboard
// fingering for melodic fragments", Music Perception 14/4 (1997): spans for each pair of fingers and rules on stretch,
// position change, weak fingers, black keys and passing the thumb. Spans from memory; the points below are chosen so that two
// octaves of 24 scales in both hands come out without a thumb on black and with about as few changes of position as in the
// scale manuals. A fragment within five letters stays in one position (common practice).

import { type Pitch, pitchToMidi, staffStep } from '../pitch/pitch.ts';
import type { KeyboardFingering } from './fingering.ts';
import { cheapestPath } from './hand-path.ts';
import { isBlackKey } from './piano-scale.ts';

type Hand = KeyboardFingering['hand'];

/** Semitones between two fingers of the right hand, upwards from the lower finger. */
interface Span {
  readonly minPrac: number;
  readonly minComf: number;
  readonly minRel: number;
  readonly maxRel: number;
  readonly maxComf: number;
  readonly maxPrac: number;
}

const spanRows: Readonly<Record<string, readonly [number, number, number, number, number, number]>> = {
  '12': [-5, -3, 1, 5, 8, 10],
  '13': [-4, -2, 3, 7, 10, 12],
  '14': [-3, -1, 5, 9, 12, 14],
  '15': [-1, 1, 7, 10, 13, 15],
  '23': [1, 1, 1, 2, 3, 5],
  '24': [1, 1, 3, 4, 5, 7],
  '25': [2, 2, 5, 6, 8, 10],
  '34': [1, 1, 1, 2, 2, 4],
  '35': [1, 1, 3, 4, 5, 7],
  '45': [1, 1, 1, 2, 3, 5],
};

/** Span of two fingers in the order they are played, turned over when the second is nearer the thumb. */
function spanOf(first: number, second: number): Span | null {
  const row = spanRows[`${Math.min(first, second)}${Math.max(first, second)}`];
  if (row === undefined) return null;
  const [minPrac, minComf, minRel, maxRel, maxComf, maxPrac] = row;
  if (first < second) return { minPrac, minComf, minRel, maxRel, maxComf, maxPrac };
  return {
    minPrac: -maxPrac,
    minComf: -maxComf,
    minRel: -maxRel,
    maxRel: -minRel,
    maxComf: -minComf,
    maxPrac: -minPrac,
  };
}

/** Points of the rules, in the order they are asked. */
const points = {
  weakFinger: 1,
  thumbOnBlack: 8,
  repeatedKeyOtherFinger: 3,
  sameFinger: 25,
  impractical: 40,
  stretch: 2,
  fourOnBlack: 1,
  thumbOrFifthBesideWhite: 2,
  pass: 6,
  passLevel: 1,
  passUpToBlack: 3,
  passDownToWhite: -1,
  threeFourFive: 1,
  thumbBackAtOnce: 5,
  positionChange: 0.5,
} as const;

interface Key {
  readonly midi: number;
  /** Semitones with up as the right hand feels it: from the thumb outwards. */
  readonly outward: number;
  readonly black: boolean;
}

/** One note and the one before it, each with its finger. */
interface Pair {
  readonly before: Key | null;
  readonly beforeFinger: number;
  readonly key: Key;
  readonly finger: number;
}

const beyond = (value: number, low: number, high: number): number =>
  value < low ? low - value : value > high ? value - high : 0;

function pairCost({ before, beforeFinger, key, finger }: Pair): number {
  let cost = finger >= 4 ? points.weakFinger : 0;
  if (finger === 1 && key.black) cost += points.thumbOnBlack;
  if (before === null) return cost;
  const distance = key.outward - before.outward;
  if (distance === 0) return cost + (finger === beforeFinger ? 0 : points.repeatedKeyOtherFinger);
  const span = spanOf(beforeFinger, finger);
  // The same finger on the next key breaks the line: only a phrase that has come to rest does that.
  if (span === null) return cost + points.sameFinger;
  if (distance < span.minPrac || distance > span.maxPrac) return cost + points.impractical;
  const thumb = finger === 1 || beforeFinger === 1;
  cost += points.stretch * beyond(distance, span.minComf, span.maxComf);
  cost += (thumb ? 1 : 2) * beyond(distance, span.minRel, span.maxRel);
  if (beforeFinger === 3 && finger === 4 && !before.black && key.black) cost += points.fourOnBlack;
  const onBlack = key.black && !before.black ? finger : before.black && !key.black ? beforeFinger : 0;
  if (onBlack === 1 || onBlack === 5) cost += points.thumbOrFifthBesideWhite;
  const under = finger === 1 && distance > 0;
  const over = beforeFinger === 1 && distance < 0;
  if (under || over) {
    const [thumbKey, other] = under ? [key, before] : [before, key];
    cost += points.pass;
    if (thumbKey.black === other.black) cost += points.passLevel;
    else cost += thumbKey.black ? points.passUpToBlack : points.passDownToWhite;
  }
  return cost;
}

function tripleCost(from: Pair, to: Pair): number {
  const first = from.before;
  if (first === null) return 0;
  let cost = 0;
  const fingers = [from.beforeFinger, from.finger, to.finger];
  if ([3, 4, 5].every((finger) => fingers.includes(finger))) cost += points.threeFourFive;
  const distance = to.key.outward - first.outward;
  if (from.beforeFinger === 1 && to.finger === 1 && distance !== 0) return cost + points.thumbBackAtOnce;
  const span = spanOf(from.beforeFinger, to.finger);
  if (span === null) {
    // One finger on two keys with one note between: the hand has moved.
    return from.beforeFinger === to.finger && distance !== 0 ? cost + 1 + Math.abs(distance) * 0.3 : cost;
  }
  const off = beyond(distance, span.minComf, span.maxComf);
  if (off === 0) return cost;
  const between = (from.key.outward - first.outward) * (to.key.outward - from.key.outward) > 0;
  return cost + points.positionChange * ((from.finger === 1 && between ? 2 : 1) + off);
}

/** Five letters or fewer, no wider than the hand at rest: the fingers stay on their keys. Null when the line is wider or the thumb would lie on black. */
function fivePosition(pitches: readonly Pitch[], hand: Hand): readonly number[] | null {
  const steps = pitches.map(staffStep);
  const low = Math.min(...steps);
  const high = Math.max(...steps);
  if (high - low > 4) return null;
  const keys = pitches.map(pitchToMidi);
  if (Math.max(...keys) - Math.min(...keys) > 8) return null;
  const fingers = steps.map((step) => (hand === 'right' ? step - low + 1 : high - step + 1));
  const oneKeyEach = steps.every((step, i) => keys[steps.indexOf(step)] === keys[i]);
  const thumbIsWhite = pitches.every((p, i) => fingers[i] !== 1 || !isBlackKey(pitchToMidi(p)));
  return oneKeyEach && thumbIsWhite ? fingers : null;
}

/** Whether one hand takes all of the line without moving: five letters next to each other, the thumb on white. */
export function isInFivePosition(pitches: readonly Pitch[], hand: Hand): boolean {
  return pitches.length > 0 && fivePosition(pitches, hand) !== null;
}

/** A finger, 1 to 5, for each note of a line in one hand. C D E F G A B C, right → 1 2 3 1 2 3 4 5 */
export function pianoLineFingers(pitches: readonly Pitch[], hand: Hand): readonly number[] {
  if (pitches.length === 0) return [];
  const still = fivePosition(pitches, hand);
  if (still !== null) return still;
  const keys = pitches.map((pitch): Key => {
    const midi = pitchToMidi(pitch);
    return { midi, outward: hand === 'right' ? midi : -midi, black: isBlackKey(midi) };
  });
  const pairs = keys.map((key, i): readonly Pair[] => {
    const before = keys[i - 1] ?? null;
    const fingers = [1, 2, 3, 4, 5];
    if (before === null) return fingers.map((finger) => ({ before, beforeFinger: 0, key, finger }));
    return fingers.flatMap((beforeFinger) =>
      fingers.map((finger) => ({ before, beforeFinger, key, finger })),
    );
  });
  const path = cheapestPath(pairs, pairCost, (from, to) =>
    from.finger === to.beforeFinger ? tripleCost(from, to) : Number.POSITIVE_INFINITY,
  );
  return path.map((pair) => pair?.finger ?? 1);
}
