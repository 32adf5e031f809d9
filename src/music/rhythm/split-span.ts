// Writes a stretch of a bar as note values that keep the beat visible. Source: standard practice as in Gould, Behind Bars
// 2011 (recalled): a value may run over a beat or the half-bar where it starts and ends on the next level down (crotchet,
// minim, crotchet; quaver, crotchet, quaver), otherwise it is tied there; in compound and irregular metres it is tied at
// every beat it does not fill; rests show every beat and halve only where the bar does.

import { assert } from '#core';
import { durationToValue } from '../duration/note-value.ts';
import { compare, type Fraction, minus, plus, zero } from '../fraction/fraction.ts';
import type { ScoreEvent } from '../score/score.ts';
import { barLength, type Metre } from './metre.ts';
import { fromTicks, metreTree, type Span, toTicks } from './metre-tree.ts';

/** Whether a length can be one note with at most one dot: two dots are hard to read, and a tie says the same. */
function isOneValue(ticks: number): boolean {
  const value = durationToValue(fromTicks(ticks));
  return value !== null && value.dots < 2;
}

/** Whether a part halves, and this is the place. */
function isMiddle(part: Span, at: number): boolean {
  return part.parts.length === 2 && part.parts[0]?.end === at && at - part.start === part.end - at;
}

/** Whether a note over the borders of a span's parts may be one value. */
function mayBridge(span: Span, start: number, end: number): boolean {
  if (!isOneValue(end - start)) return false;
  const first = span.parts.find((part) => start < part.end);
  const last = span.parts.find((part) => end <= part.end);
  if (first === undefined || last === undefined) return false;
  const [startsPart, endsPart] = [start === first.start, end === last.end];
  if (startsPart && endsPart) return true;
  const isEven = new Set(span.parts.map((part) => part.end - part.start)).size === 1;
  if (!isEven || !(startsPart || isMiddle(first, start)) || !(endsPart || isMiddle(last, end))) return false;
  return startsPart || endsPart || end - start === first.end - first.start;
}

/** Lengths of the notes from `start` to `end`, both inside the span. */
function splitNote(span: Span, start: number, end: number): readonly number[] {
  if (start === end) return [];
  if (start === span.start && end === span.end && isOneValue(end - start)) return [end - start];
  const around = span.parts.find((part) => start >= part.start && end <= part.end);
  if (around !== undefined) return splitNote(around, start, end);
  if (span.parts.length === 0 || mayBridge(span, start, end)) return [end - start];
  // The tie stands at a border: the first after an off-beat start, else the last one that leaves a single value.
  const borders = span.parts.map((part) => part.end).filter((at) => at > start && at < end);
  const isOnPart = span.parts.some((part) => part.start === start);
  const tie = isOnPart ? (borders.findLast((at) => isOneValue(at - start)) ?? borders[0]) : borders[0];
  assert(tie !== undefined, 'a note over a border has one inside');
  return [...splitNote(span, start, tie), ...splitNote(span, tie, end)];
}

/** Lengths of the rests from `start` to `end`, both inside the span. */
function splitRest(span: Span, start: number, end: number): readonly number[] {
  if (start === end) return [];
  if (start === span.start && end === span.end && isOneValue(end - start)) return [end - start];
  if (span.parts.length === 0) return [end - start];
  const [one, two] = span.parts;
  const isTernary = span.parts.length === 3 && one !== undefined && one.end - one.start < 32;
  if (isTernary && start === span.start && end === two?.end) return [end - start];
  return span.parts.flatMap((part) => {
    const [from, to] = [Math.max(start, part.start), Math.min(end, part.end)];
    return from < to ? splitRest(part, from, to) : [];
  });
}

/**
 * The written values, to be tied, of a note from `at` for `duration` inside one bar; nothing in it lies in a tuplet.
 * In 4/4, a minim from the second quaver → quaver, crotchet, quaver: 1/8 3/8
 */
export function splitSpan(metre: Metre, at: Fraction, duration: Fraction): readonly Fraction[] {
  const [start, end] = ticksWithin(metre, at, duration);
  return splitNote(metreTree(metre), start, end).map(fromTicks);
}

/** The written values of a silence from `at` for `duration` inside one bar. In 3/4, from the second beat → two crotchets */
export function splitSilence(metre: Metre, at: Fraction, duration: Fraction): readonly Fraction[] {
  const [start, end] = ticksWithin(metre, at, duration);
  return splitRest(metreTree(metre), start, end).map(fromTicks);
}

function ticksWithin(metre: Metre, at: Fraction, duration: Fraction): readonly [number, number] {
  const end = plus(at, duration);
  assert(at.n >= 0 && compare(end, barLength(metre)) <= 0, 'a span inside the bar');
  return [toTicks(at), toTicks(end)];
}

/** The event as one of several values; all but the last held into the next, marks of the attack on the first only. */
function asPiece(event: ScoreEvent, duration: Fraction, isFirst: boolean, isLast: boolean): ScoreEvent {
  if (event.kind === 'rest') return { ...event, duration };
  if (event.kind === 'slash' || event.kind === 'hit') {
    const tied = { ...event, duration, isTied: isLast ? event.isTied : true };
    if (isFirst) return tied;
    const bare = { ...tied, articulations: [] };
    return bare.kind === 'hit' ? { ...bare, lyric: null } : bare;
  }
  const heads = event.heads.map((head) => ({
    ...head,
    isTied: isLast ? head.isTied : true,
    ...(isFirst ? {} : { fingering: null, string: null, fret: null, pluck: null }),
  }));
  const opens = event.slur === 'start' || event.slur === 'stop-start';
  const closes = event.slur === 'stop' || event.slur === 'stop-start';
  // A slur opens on the first of tied notes and closes on the last.
  const slur = isFirst && isLast ? event.slur : isFirst && opens ? 'start' : isLast && closes ? 'stop' : null;
  return {
    ...event,
    duration,
    heads,
    slur,
    articulations: isFirst ? event.articulations : [],
    lyric: isFirst ? event.lyric : null,
    grace: isFirst ? event.grace : [],
  };
}

/**
 * An event of any length, from `at` in a bar, as events of written values, bar by bar: notes tied, rests on the beat, a
 * silent bar as one whole-bar rest. Outside tuplets. `writeEvent(fourFour, fraction(7, 8), note(c5, fraction(1, 4)))` →
 * a quaver, and in the next bar a quaver.
 */
export function writeEvent<E extends ScoreEvent>(
  metre: Metre,
  at: Fraction,
  event: E,
): readonly (readonly ScoreEvent[])[] {
  const length = barLength(metre);
  const bars: Fraction[][] = [];
  let [start, left] = [at, event.duration];
  while (left.n > 0) {
    const room = minus(length, start);
    const here = compare(left, room) < 0 ? left : room;
    const split = event.kind === 'rest' ? splitSilence : splitSpan;
    const isBar = event.kind === 'rest' && compare(here, length) === 0;
    bars.push(isBar ? [here] : [...split(metre, start, here)]);
    [start, left] = [zero, minus(left, here)];
  }
  const lastBar = bars.length - 1;
  return bars.map((pieces, bar) =>
    pieces.map((duration, i) => {
      const piece = asPiece(
        event,
        duration,
        bar === 0 && i === 0,
        bar === lastBar && i === pieces.length - 1,
      );
      return piece.kind === 'rest' ? { ...piece, isWholeBar: compare(duration, length) === 0 } : piece;
    }),
  );
}
