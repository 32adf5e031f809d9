// Which notes a beam joins. Source: standard practice (Gould, Behind Bars 2011, recalled; shared reference table of
// rhythm, `beam_groups`): by the beat; four quavers that fill a half-bar of crotchet beats together; never over the
// middle of 4/4, never 3+3 in 3/4; a rest ends a beam.

import { noteTypes } from '../duration/note-value.ts';
import { compare, type Fraction, fraction, plus, zero } from '../fraction/fraction.ts';
import { eventValue } from '../score/create-score.ts';
import type { ScoreEvent } from '../score/score.ts';
import type { Metre } from './metre.ts';
import { beatUnits } from './metre-tree.ts';

/** One level of beam at a note, by MusicXML's names. */
export type Beam = 'begin' | 'continue' | 'end' | 'forward hook' | 'backward hook';

interface Placed {
  readonly index: number;
  readonly at: Fraction;
  readonly end: Fraction;
  /** Flags the note has alone: 1 for a quaver. 0 is never beamed. */
  readonly flags: number;
  readonly isTuplet: boolean;
}

const quaver = noteTypes.indexOf('eighth');

/** How many flags the event has; rests, longer notes and stemless slashes none. */
function flagsOf(event: ScoreEvent): number {
  if (event.kind === 'rest' || (event.kind === 'slash' && !event.hasStem)) return 0;
  return Math.max(0, noteTypes.indexOf(eventValue(event).type) - quaver + 1);
}

/** Ends of the stretches a beam may fill: the beats, and where whole pairs of crotchet beats are quavers, the pairs. */
function windows(metre: Metre, placed: readonly Placed[]): readonly Fraction[] {
  const ends: Fraction[] = [];
  let units = 0;
  for (const beat of beatUnits(metre)) {
    units += beat;
    ends.push(fraction(units, metre.unit));
  }
  const mayPair = metre.unit === 4 && (metre.beats === 2 || metre.beats === 4);
  if (!mayPair) return ends;
  return ends.filter((end, i) => i % 2 === 1 || !isFourQuavers(placed, end));
}

/** Whether four plain quavers fill the two crotchet beats around a place. */
function isFourQuavers(placed: readonly Placed[], middle: Fraction): boolean {
  const from = plus(middle, fraction(-1, 4));
  const to = plus(middle, fraction(1, 4));
  const inside = placed.filter(({ at }) => compare(at, from) >= 0 && compare(at, to) < 0);
  return inside.length === 4 && inside.every(({ flags, isTuplet }) => flags === 1 && !isTuplet);
}

/** The beams of one run of joined notes, level by level. */
function beamRun(run: readonly Placed[], beams: Beam[][]): void {
  const deepest = Math.max(...run.map(({ flags }) => flags));
  for (let level = 1; level <= deepest; level++) {
    run.forEach(({ index, flags, at }, i) => {
      if (flags < level) return;
      const before = (run[i - 1]?.flags ?? 0) >= level && !breaksAt(level, at);
      const next = run[i + 1];
      const after = (next?.flags ?? 0) >= level && next !== undefined && !breaksAt(level, next.at);
      // A lone stub points into the group, towards the note it completes a quaver with.
      const hook: Beam = i === 0 || (next !== undefined && isOnQuaver(at)) ? 'forward hook' : 'backward hook';
      beams[index]?.push(before ? (after ? 'continue' : 'end') : after ? 'begin' : hook);
    });
  }
}

const isOnQuaver = (at: Fraction): boolean => 8 % at.d === 0;

/** Demisemiquavers and shorter show the quavers: their inner beams open there. */
function breaksAt(level: number, at: Fraction): boolean {
  return level >= 3 && isOnQuaver(at);
}

/**
 * The beams of a voice's events in one bar, the outermost first; empty where the note keeps its flag. `offset` is where
 * the first event stands in a full bar (a pickup comes late).
 */
export function beamEvents(
  metre: Metre,
  events: readonly ScoreEvent[],
  offset: Fraction = zero,
): readonly (readonly Beam[])[] {
  const beams: Beam[][] = events.map(() => []);
  let at = offset;
  const placed: Placed[] = events.map((event, index) => {
    const start = at;
    at = plus(at, event.duration);
    const flags = event.kind === 'rest' && event.isWholeBar ? 0 : flagsOf(event);
    return { index, at: start, end: at, flags, isTuplet: event.tuplet !== null };
  });
  const ends = windows(metre, placed);
  let run: Placed[] = [];
  const close = () => {
    if (run.length > 1) beamRun(run, beams);
    run = [];
  };
  const apart = standsApart(events, placed);
  let window = 0;
  for (const note of placed) {
    const place = events[note.index]?.tuplet?.at ?? null;
    const isInside = place === 'middle' || place === 'end';
    const before = window;
    while (window < ends.length - 1 && compare(note.at, ends[window] ?? zero) >= 0) window++;
    // A beam keeps to its beat, but never splits a tuplet that is longer than one.
    const isNewBeat = window !== before && !isInside;
    const opens = place === 'start' && apart[note.index] === true;
    if (isNewBeat || opens || note.flags === 0) close();
    if (note.flags > 0) run.push(note);
    const isLonger = compare(note.end, ends[before] ?? zero) > 0;
    if (place === 'end' && (isLonger || apart[note.index] === true)) close();
  }
  close();
  return beams;
}

/** Which events lie in a tuplet with a rest or a longer note in it: its beams stay inside, so that it can be told apart. */
function standsApart(events: readonly ScoreEvent[], placed: readonly Placed[]): readonly boolean[] {
  const apart = events.map(() => false);
  let start = 0;
  events.forEach(({ tuplet }, i) => {
    if (tuplet?.at === 'start') start = i;
    if (tuplet?.at !== 'end') return;
    const isMixed = placed.slice(start, i + 1).some(({ flags }) => flags === 0);
    apart.fill(isMixed, start, i + 1);
  });
  return apart;
}
