// The grid under a take: where each beat falls in time. A steady grid is a straight line; one that drifts is bent at anchors.

import { present } from '#core';

export interface Anchor {
  /** Beats from bar 1. */
  readonly beat: number;
  /** Seconds from the file's start. */
  readonly seconds: number;
}

/** A grid laid under a take. */
export interface Grid {
  /** Seconds from the file's start to the first beat of bar 1. */
  readonly offset: number;
  /** Beats a minute, over the whole take. */
  readonly tempo: number;
  /** Share of the beat the first of two quavers takes. */
  readonly swing: number;
  /** Change of tempo from the first to the last note in percent of the tempo; positive is faster. */
  readonly drift: number;
  /** Whether place and tempo were given (a backing) and held, rather than found from the playing. */
  readonly isGiven: boolean;
  /** Where beats fall: at least two, rising; straight between them and beyond them. */
  readonly anchors: readonly Anchor[];
}

/** Seconds at which a beat (with fractions, unswung) falls. */
export function beatToSeconds(grid: Grid, beat: number): number {
  const [a, b] = around(grid, (anchor) => anchor.beat > beat);
  return a.seconds + ((b.seconds - a.seconds) * (beat - a.beat)) / (b.beat - a.beat);
}

/** The beat (with fractions) at a moment. */
export function secondsToBeat(grid: Grid, seconds: number): number {
  const [a, b] = around(grid, (anchor) => anchor.seconds > seconds);
  return a.beat + ((b.beat - a.beat) * (seconds - a.seconds)) / (b.seconds - a.seconds);
}

/** A steady grid. */
export function steadyGrid(offset: number, tempo: number, swing: number, isGiven: boolean): Grid {
  const anchors = [
    { beat: 0, seconds: offset },
    { beat: 1, seconds: offset + 60 / tempo },
  ];
  return { offset, tempo, swing, drift: 0, isGiven, anchors };
}

/** The two anchors a place lies between, or the outermost two on its side. */
function around(grid: Grid, isBehind: (anchor: Anchor) => boolean): readonly [Anchor, Anchor] {
  const { anchors } = grid;
  let low = 1;
  let high = anchors.length - 1;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (isBehind(present(anchors[middle], 'an anchor'))) high = middle;
    else low = middle + 1;
  }
  return [present(anchors[low - 1], 'an anchor'), present(anchors[low], 'an anchor')];
}
