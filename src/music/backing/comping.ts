// When the keys play: figures of a bar in common use for each feel, changed from bar to bar. Common practice, no source.

import { present, type Random, randomInteger } from '#core';
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

const swing = figuresOf("0/2' 3/1", '3/1 5/2', "1/1 4/2'", '0/2 7/1!', '2/2 5/1', "3/2' 7/1!", '0/3 5/2');
const figures: Readonly<Record<FeelId, readonly (readonly Hit[])[]>> = {
  swing,
  'two-feel': figuresOf("0/3' 3/4", '3/4', '0/4 5/2', '2/3 7/1!'),
  shuffle: figuresOf("2/1' 6/1'", "2/1' 3/1 6/1'", "2/1' 6/1' 7/1!"),
  straight: figuresOf("0/3' 3/3", '0/3 3/2 6/2', '1/2 4/3', '0/3 6/2 7/1!'),
  bossa: figuresOf("0/2' 3/1 6/2", "1/1 4/2 6/1'", '0/2 3/2 5/1 7/1!', '0/1 2/1 5/2'),
  son: figuresOf("0/1' 2/1 3/1' 5/1 7/1!", "0/1' 1/1 3/1' 5/1 6/1 7/1!"),
  rumba: figuresOf("0/1' 3/1 5/1' 7/1!", "0/1 2/1 3/1' 6/1 7/1!"),
  waltz: figuresOf('2/2 4/2', '2/2', '3/2', "0/2' 3/3", '2/1 4/2'),
  'six-eight': figuresOf('0/1 1/1 2/1 3/1 4/1 5/1', "0/2' 2/1 3/2' 5/1", "0/3' 3/3'"),
  rock: figuresOf("0/4' 4/4'", "0/3' 3/1 4/4", "0/2' 2/2 4/2' 6/2", "0/4' 4/3 7/1!"),
  ballad: figuresOf("0/8'", "0/4' 4/4", '0/6 6/2', '2/6'),
};

/** One bar's figure, another than in the bar before where there is one. */
export function chooseFigure(feel: FeelId, before: readonly Hit[] | null, random: Random): readonly Hit[] {
  const options = figures[feel].filter((one) => one !== before);
  const all = options.length > 0 ? options : figures[feel];
  return present(all[randomInteger(random, 0, all.length - 1)], 'a figure for every feel');
}
