// Drum patterns of one bar, by feel, on General MIDI percussion. Common practice, no source; son and rumba clave as in
// the shared reference table of rhythm (Gómez et al. 2005).

import { present, type Random, randomInteger } from '#core';
import type { FeelId } from './feel.ts';

/** General MIDI Level 1 percussion key map. */
export const kit = {
  kick: 36,
  sideStick: 37,
  snare: 38,
  brushTap: 38,
  lowTom: 45,
  midTom: 47,
  highTom: 50,
  closedHat: 42,
  pedalHat: 44,
  openHat: 46,
  ride: 51,
  crash: 49,
  cowbell: 56,
  claves: 75,
  maracas: 70,
  highConga: 63,
  lowConga: 64,
} as const;

export type Drum = keyof typeof kit;

export interface Stroke {
  readonly drum: Drum;
  /** In quavers after the start of the bar; halves are semiquavers. */
  readonly quaver: number;
  /** 0 to 1. */
  readonly force: number;
}

/** `ride: X.xx` on a grid: `X` strong, `x` even, `-` soft, `.` nothing. */
function lanes(stepsInBar: number, quavers: number, text: Partial<Record<Drum, string>>): readonly Stroke[] {
  const force: Readonly<Record<string, number>> = { X: 0.85, x: 0.62, '-': 0.35 };
  return Object.entries(text).flatMap(([drum, steps]) =>
    [...steps].slice(0, stepsInBar).flatMap((step, at): Stroke[] => {
      const given = force[step];
      return given === undefined
        ? []
        : [{ drum: drum as Drum, quaver: (at * quavers) / stepsInBar, force: given }];
    }),
  );
}

const inEight = (text: Partial<Record<Drum, string>>) => lanes(8, 8, text);
const inSixteen = (text: Partial<Record<Drum, string>>) => lanes(16, 8, text);
const inSix = (text: Partial<Record<Drum, string>>) => lanes(6, 6, text);

/** What keeps time and what is added when all play; the bar of son and rumba clave depends on the side. */
interface Pattern {
  readonly time: readonly (readonly Stroke[])[];
  readonly full: readonly (readonly Stroke[])[];
}

const swingTime = inEight({ ride: 'x.Xxx.Xx', pedalHat: '..x...x.' });
// Three-two side first; the first bar has three strokes, the second two.
const sonClave = [inSixteen({ claves: 'X.....X.....X...' }), inSixteen({ claves: '....X...X.......' })];
const rumbaClave = [inSixteen({ claves: 'X.....X.......X.' }), inSixteen({ claves: '....X...X.......' })];
const conga = inEight({ highConga: '--x---..', lowConga: '......XX', maracas: 'x-x-x-x-' });
const bossaSticks = [inEight({ sideStick: 'X..X..X.' }), inEight({ sideStick: '..X..X..' })];

const patterns: Readonly<Record<FeelId, Pattern>> = {
  swing: {
    time: [swingTime],
    full: [
      inEight({ kick: '-.-.-.-.' }),
      inEight({ kick: '-.-.-.-.', snare: '...-....' }),
      inEight({ kick: '-.-.--..', snare: '.......-' }),
    ],
  },
  'two-feel': {
    time: [inEight({ ride: 'x...Xx..', pedalHat: '..x...x.' })],
    full: [inEight({ kick: '-...-...' }), inEight({ brushTap: '..-...-.' })],
  },
  shuffle: {
    time: [inEight({ ride: 'XxXxXxXx', pedalHat: '..x...x.' })],
    full: [
      inEight({ kick: 'x...x...', snare: '..X...X.' }),
      inEight({ kick: 'x..-x...', snare: '..X...X-' }),
    ],
  },
  straight: {
    time: [inEight({ ride: 'x-x-x-x-', pedalHat: '..x...x.' })],
    full: [
      inEight({ kick: 'x..-....', sideStick: '....x..-' }),
      inEight({ kick: 'x.....-.', sideStick: '....x...' }),
    ],
  },
  bossa: {
    time: [inEight({ closedHat: 'x-x-x-x-' })],
    full: bossaSticks.map((sticks) => [...sticks, ...inEight({ kick: 'x..-x..-' })]),
  },
  son: { time: sonClave, full: [[...conga, ...inEight({ cowbell: 'x...x...' })]] },
  rumba: { time: rumbaClave, full: [conga] },
  waltz: {
    time: [inSix({ ride: 'x.XxXx', pedalHat: '..x.x.' })],
    full: [inSix({ kick: 'x.....' }), inSix({ kick: '-.....', snare: '...-..' })],
  },
  'six-eight': {
    time: [inSix({ closedHat: 'x--x--' })],
    full: [inSix({ kick: 'x..-..', snare: '...X..' }), inSix({ kick: 'x.--..', snare: '...X..' })],
  },
  rock: {
    time: [inEight({ closedHat: 'x-x-x-x-' })],
    full: [
      inEight({ kick: 'X...X...', snare: '..X...X.' }),
      inEight({ kick: 'X..-X...', snare: '..X...X.' }),
      inEight({ kick: 'X...Xx..', snare: '..X...X.' }),
    ],
  },
  ballad: {
    time: [inEight({ closedHat: '--------', pedalHat: '..-...-.' })],
    full: [inEight({ kick: '-...-...', brushTap: '..-...-.' })],
  },
};

const fills: readonly (readonly Stroke[])[] = [
  inEight({ snare: '.....xxX' }),
  inEight({ snare: '....x.x.', highTom: '.....x..', lowTom: '.......X' }),
  inEight({ snare: '......xx', midTom: '.....-..' }),
];
const fillsInSix: readonly (readonly Stroke[])[] = [
  inSix({ snare: '...xxX' }),
  inSix({ highTom: '...x..', lowTom: '....xX' }),
];

/** The feels whose last bar of a section keeps its pattern: a fill would break the clave. */
const withoutFills: ReadonlySet<FeelId> = new Set(['son', 'rumba', 'ballad', 'two-feel', 'bossa']);

/**
 * Strokes of a bar. `nth` counts bars of the chorus, for patterns of two bars; `isFull` adds to the time what the whole
 * band plays; a bar that ends a section may have a fill in its second half.
 */
export function drumBar(
  feel: FeelId,
  nth: number,
  isFull: boolean,
  endsSection: boolean,
  random: Random,
): readonly Stroke[] {
  const { time, full } = patterns[feel];
  const keeps = present(time[nth % time.length], 'a pattern that keeps time');
  if (!isFull) return keeps;
  const isPair = full.length === 2 && (feel === 'bossa' || feel === 'son');
  const adds = present(full[isPair ? nth % 2 : randomInteger(random, 0, full.length - 1)], 'a full pattern');
  if (!endsSection || withoutFills.has(feel)) return [...keeps, ...adds];
  const all = feel === 'waltz' || feel === 'six-eight' ? fillsInSix : fills;
  const fill = present(all[randomInteger(random, 0, all.length - 1)], 'a fill');
  const from = Math.min(...fill.map((stroke) => stroke.quaver));
  return [...keeps, ...adds.filter((stroke) => stroke.quaver < from), ...fill];
}
