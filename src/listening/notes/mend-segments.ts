// What the cutting took apart and is one note: an undertone heard while a tone settles, a scoop up to the pitch.

import { greatest } from '../signal/spans.ts';
import type { Moments } from './moments.ts';
import type { Segment } from './segment.ts';

/** Intervals in semitones between a tone and its undertones: octave, twelfth, two octaves, two octaves and a third. */
const undertoneIntervals: readonly number[] = [12, 19, 24, 28];
/** Longest settling, in moments of 10 ms. */
const longestUndertone = 12;
const longestScoop = 10;
/** A scoop moves at least this far, in semitones, and starts at most a tone away. */
const leastGlide = 0.25;
const widestScoop = 2;
/** Below this, nothing began. */
const noAttack = 0.5;
const someAttack = 0.3;

/** The segments with undertones and scoops joined to the note they belong to. */
export function mendSegments(segments: readonly Segment[], moments: Moments): readonly Segment[] {
  const mended: Segment[] = [];
  let waiting: Segment | null = null;
  for (const segment of segments) {
    if (waiting === null) {
      waiting = segment;
      continue;
    }
    const joined: Segment | null = join(mended[mended.length - 1] ?? null, waiting, segment, moments);
    if (joined === null) {
      mended.push(waiting);
      waiting = segment;
    } else waiting = joined;
  }
  if (waiting !== null) mended.push(waiting);
  return mended;
}

/** The two as one note, or null where they are two. */
function join(before: Segment | null, first: Segment, second: Segment, moments: Moments): Segment | null {
  if (second.from - first.to > 1) return null;
  if (greatest(moments.attack, second.from - 3, second.from + 3) >= noAttack) return null;
  const firstLength = first.to - first.from;
  const secondLength = second.to - second.from;
  const interval = Math.abs(second.key - first.key);
  if (undertoneIntervals.includes(interval)) {
    if (firstLength <= longestUndertone && secondLength > firstLength) return { ...second, from: first.from };
    if (secondLength <= longestUndertone && secondLength < firstLength) return { ...first, to: second.to };
  }
  if (firstLength > longestScoop || secondLength <= firstLength || interval > widestScoop) return null;
  const begins =
    before === null ||
    first.from - before.to > 2 ||
    greatest(moments.attack, first.from - 3, first.from + 3) > someAttack;
  return begins && glides(first, moments) ? { ...second, from: first.from } : null;
}

/** Whether the pitch moves through the segment instead of holding. */
function glides(segment: Segment, moments: Moments): boolean {
  let first = 0;
  let last = 0;
  for (let t = segment.from; t < segment.to; t++) {
    const pitch = moments.midi[t] ?? 0;
    if (pitch === 0 || Math.abs(pitch - segment.key) > 1.5) continue;
    if (first === 0) first = pitch;
    last = pitch;
  }
  return Math.abs(last - first) > leastGlide;
}
