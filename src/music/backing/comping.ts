// When the keys play: figures of a bar in common use for each feel, changed from bar to bar. Common practice, no source.

import { chooseOne, present, type Random } from '#core';
import type { FeelId } from './feel.ts';

/** A hit in quavers after the start of the bar; `early` sounds the chord that comes with the next beat. */
export interface Hit {
  readonly quaver: number;
  /** How long, in quavers. */
  readonly length: number;
  readonly accent: number;
  readonly early: boolean;
}

/** `0/3 3.5/1!`: starts and lengths in quavers, `!` for an early chord, `'` for an accent. */
function figure(text: string): readonly Hit[] {
  return text
    .split(' ')
    .filter((word) => word !== '')
    .map((word) => {
      const match = present(/^([\d.]+)\/([\d.]+)(['!]*)$/.exec(word), `a hit: ${word}`);
      return {
        quaver: Number(match[1]),
        length: Number(match[2]),
        accent: (match[3] ?? '').includes("'") ? 0.75 : 0.55,
        early: (match[3] ?? '').includes('!'),
      };
    });
}

const figuresOf = (...texts: readonly string[]) => texts.map(figure);

/** From sparse to busy. */
const figures: Readonly<Record<FeelId, readonly (readonly Hit[])[]>> = {
  swing: figuresOf(
    '3/1',
    "0/2' 3/1",
    '3/1 5/2',
    "1/1 4/2'",
    "0/3' 7/2!",
    '0/3 5/2',
    "3/2' 7/2!",
    '0/2 3/1 6/1',
    "1/1 3/1' 6/1",
    '0/2 3/1 5/1 7/2!',
  ),
  'two-feel': figuresOf('3/4', '0/3 4/4', "0/3' 3/4", '0/4 5/2', '2/3 7/2!'),
  shuffle: figuresOf("2/1' 6/1'", "2/1' 3/1 6/1'", "2/1' 6/1' 7/1!", "2/1' 3/1 6/1' 7/1!"),
  straight: figuresOf('0/3 3/4', "0/3' 3/3", '1/2 4/3', '0/3 3/2 6/2', '0/3 6/1 7/2!'),
  bossa: figuresOf('0/3 3/4', "0/2' 3/1 6/2", "1/1 4/2 6/1'", '0/1 3/2 5/1 7/2!', '0/1 2/1 5/2 7/2!'),
  // Those of the three-stroke bar of the clave; the other bar has its own.
  son: figuresOf('1/1 3/1 5/1 7/2!', "1/1' 3/1 4/1 5/1 7/2!", "1/1 2/1 3/1' 5/1 7/2!"),
  rumba: figuresOf('1/1 3/1 5/1 7/2!', "1/1' 3/1 5/1' 7/2!"),
  waltz: figuresOf('2/3', '3/2', "0/2' 3/3", '2/1 4/2', "1/1 3/2'"),
  'six-eight': figuresOf("0/3' 3/3", "0/2' 2/1 3/3", "0/2' 2/1 3/2' 5/1", '0/1 1/1 2/1 3/1 4/1 5/1'),
  rock: figuresOf("0/8'", "0/4' 4/4", "0/3' 3/1 4/4", "0/4' 4/2 7/2!", "0/2' 2/2 4/2' 6/2"),
  ballad: figuresOf("0/8'", '0/4 4/4', '0/6 6/2', '0/3 3/5'),
};

/** Bars of the side of the clave with two strokes begin on the beat. */
const twoSide: Partial<Record<FeelId, readonly (readonly Hit[])[]>> = {
  son: figuresOf("0/1' 2/1 3/1 5/1 7/2!", "0/1' 2/1' 3/1 5/1 6/1 7/2!"),
  rumba: figuresOf("0/1' 2/1 5/1 7/2!", "0/1' 2/1' 5/1 7/2!"),
};

export interface CompingPlace {
  readonly feel: FeelId;
  /** Bars since the band began; the clave has two sides. */
  readonly nth: number;
  /** 0 calm to 1 busy. */
  readonly intensity: number;
  /** Where the bar's chords begin, in quavers. */
  readonly starts: readonly number[];
}

/**
 * One bar's figure, another than in the bar before where there is one. Where a bar has several chords, each is struck as it
 * comes and held: more would clutter.
 */
export function chooseFigure(
  { feel, nth, intensity, starts }: CompingPlace,
  before: readonly Hit[] | null,
  random: Random,
): readonly Hit[] {
  const all = (nth % 2 === 1 ? twoSide[feel] : undefined) ?? figures[feel];
  const sounds = (one: readonly Hit[]) =>
    starts.every((start, at) =>
      one.some(
        (hit) =>
          !hit.early && hit.quaver >= start && hit.quaver < (starts[at + 1] ?? Number.POSITIVE_INFINITY),
      ),
    );
  const busyness = (at: number) => (all.length < 2 ? intensity : at / (all.length - 1));
  const suited = all.filter((one, at) => Math.abs(busyness(at) - intensity) <= 0.6 && sounds(one));
  const others = suited.filter((one) => one !== before);
  const options = others.length > 0 ? others : suited;
  if (options.length > 0 && (starts.length < 3 || feel === 'son' || feel === 'rumba'))
    return chooseOne(random, options);
  return starts.map((start, at) => ({
    quaver: start,
    length: Math.max(1, Math.min(3, (starts[at + 1] ?? start + 3) - start)),
    accent: 0.55,
    early: false,
  }));
}
