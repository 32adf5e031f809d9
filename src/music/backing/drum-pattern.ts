// Drum patterns of one bar, by feel, on General MIDI percussion. Common practice, no source; son and rumba clave as in
// the shared reference table of rhythm (Gómez et al. 2005).

import { chooseOne, present, type Random } from '#core';
import type { FeelId } from './feel.ts';

/** General MIDI Level 1 percussion key map. */
export const kit = {
  kick: 36,
  sideStick: 37,
  snare: 38,
  // On the brush kit: a tap, a slap and a circle of the brush.
  brushTap: 38,
  brushSlap: 39,
  brushSwirl: 40,
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
  slapConga: 62,
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

/** `ride: X.xx` on a grid: `X` strong, `x` even, `-` soft, `_` felt more than heard, `.` nothing. */
function lanes(stepsInBar: number, quavers: number, text: Partial<Record<Drum, string>>): readonly Stroke[] {
  const force: Readonly<Record<string, number>> = { X: 0.85, x: 0.62, '-': 0.35, _: 0.12 };
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

/** What keeps time and what is added when all play, from calm to busy; the bars of a clave or of sticks take turns. */
interface Pattern {
  readonly time: readonly (readonly Stroke[])[];
  readonly full: readonly (readonly Stroke[])[];
  /** Whether `full` has a bar for each side in turn, and not for each busyness. */
  readonly takesTurns?: true;
}

const swingTime = inEight({ ride: 'x.X-x.X-', pedalHat: '..x...x.' });
// Three-two side first; the first bar has three strokes, the second two.
const sonClave = [inSixteen({ claves: 'X.....X.....X...' }), inSixteen({ claves: '....X...X.......' })];
const rumbaClave = [inSixteen({ claves: 'X.....X.......X.' }), inSixteen({ claves: '....X...X.......' })];
const congas = [
  inEight({ slapConga: '_.x__.__', highConga: '......xX', lowConga: '...x....', maracas: 'x-x-x-x-' }),
  inEight({ slapConga: '_.x__.__', highConga: '......xX', maracas: 'x-x-x-x-' }),
];
const bell = inEight({ cowbell: 'x.-.x.-.' });

const patterns: Readonly<Record<FeelId, Pattern>> = {
  swing: {
    time: [swingTime],
    full: [
      inEight({ kick: '_._._._.' }),
      inEight({ kick: '_._._._.', snare: '...-....' }),
      inEight({ kick: '_._._._.', snare: '.....-..' }),
      inEight({ kick: '_._.__.-', snare: '...-....' }),
      inEight({ kick: '_._._._.', snare: '...-...x' }),
      inEight({ kick: '_.__._-.', snare: '.-...-.-' }),
    ],
  },
  'two-feel': {
    time: [inEight({ brushSwirl: 'x...x...', pedalHat: '..x...x.' })],
    full: [
      inEight({ kick: '_..._...', brushTap: '..-...-.' }),
      inEight({ kick: '_..._...', brushTap: '..--..-.' }),
      inEight({ kick: '_..._...', brushTap: '..--..--' }),
    ],
  },
  shuffle: {
    time: [inEight({ ride: 'X-x-X-x-', pedalHat: '..x...x.' })],
    full: [
      inEight({ kick: 'x...x...', snare: '..X...X.' }),
      inEight({ kick: 'x..-x...', snare: '..X...X.' }),
      inEight({ kick: 'x..-x...', snare: '..X_..X-' }),
    ],
  },
  straight: {
    time: [inEight({ ride: 'x-x-x-x-', pedalHat: '..-...-.' })],
    full: [
      inEight({ kick: 'x..-....', sideStick: '....x...' }),
      inEight({ kick: 'x..-..-.', sideStick: '....x...' }),
      inEight({ kick: 'x..-..-.', sideStick: '....x..-' }),
    ],
  },
  bossa: {
    time: [inEight({ closedHat: 'x-x-x-x-' })],
    full: [
      inEight({ sideStick: 'x..x..x.', kick: '-.._-.._' }),
      inEight({ sideStick: '..x..x..', kick: '-.._-.._' }),
    ],
    takesTurns: true,
  },
  son: { time: sonClave, full: congas.map((bar) => [...bar, ...bell]), takesTurns: true },
  rumba: { time: rumbaClave, full: congas, takesTurns: true },
  waltz: {
    time: [inSix({ ride: 'x.X-x.', pedalHat: '..x...' })],
    full: [
      inSix({ kick: '_.....' }),
      inSix({ kick: '_.....', snare: '...-..' }),
      inSix({ kick: '_..._.', snare: '...-.-' }),
    ],
  },
  'six-eight': {
    time: [inSix({ closedHat: 'x--x--' })],
    full: [
      inSix({ kick: 'x.....', sideStick: '...x..' }),
      inSix({ kick: 'x....-', snare: '...x..' }),
      inSix({ kick: 'x.--..', snare: '...X..' }),
    ],
  },
  rock: {
    time: [inEight({ closedHat: 'x-x-x-x-' })],
    full: [
      inEight({ kick: 'X...X...', snare: '..X...X.' }),
      inEight({ kick: 'X..-X...', snare: '..X...X.' }),
      inEight({ kick: 'X...Xx..', snare: '..X...X.' }),
      inEight({ kick: 'X..xX..-', snare: '..X...X.' }),
    ],
  },
  ballad: {
    time: [inEight({ brushSwirl: 'x...x...', pedalHat: '..-...-.' })],
    full: [
      inEight({ kick: '_..._...' }),
      inEight({ kick: '_..._...', brushTap: '..-...-.' }),
      inEight({ kick: '_..._...', brushTap: '..-..--.' }),
    ],
  },
};

/** From short to long. */
const fills: readonly (readonly Stroke[])[] = [
  inEight({ snare: '......x-' }),
  inEight({ snare: '......xx', midTom: '.....-..' }),
  inEight({ snare: '.....xxX' }),
  inEight({ snare: '....x.x.', highTom: '.....x..', lowTom: '.......X' }),
];
const fillsInSix: readonly (readonly Stroke[])[] = [
  inSix({ snare: '....x-' }),
  inSix({ snare: '...xxX' }),
  inSix({ highTom: '...x..', lowTom: '....xX' }),
];
const fillsWithBrushes: readonly (readonly Stroke[])[] = [
  inEight({ brushTap: '.....--x' }),
  inEight({ brushTap: '....-.-.', brushSlap: '.......-' }),
];

/** The feels whose last bar of a section keeps its pattern: a fill would break the clave or the calm. */
const withoutFills: ReadonlySet<FeelId> = new Set(['son', 'rumba', 'ballad', 'bossa']);

function fillsOf(feel: FeelId): readonly (readonly Stroke[])[] {
  if (feel === 'waltz' || feel === 'six-eight') return fillsInSix;
  return feel === 'two-feel' ? fillsWithBrushes : fills;
}

export interface DrumPlace {
  readonly feel: FeelId;
  /** Bars since the band began: a clave never turns round. */
  readonly nth: number;
  /** Adds to the time what the whole band plays. */
  readonly isFull: boolean;
  /** Such a bar may have a fill in its second half. */
  readonly endsSection: boolean;
  /** 0 calm to 1 busy. */
  readonly intensity: number;
}

/** Strokes of a bar. */
export function drumBar(
  { feel, nth, isFull, endsSection, intensity }: DrumPlace,
  random: Random,
): readonly Stroke[] {
  const { time, full, takesTurns } = patterns[feel];
  const keeps = present(time[nth % time.length], 'a pattern that keeps time');
  if (!isFull) return keeps;
  const adds = takesTurns
    ? present(full[nth % full.length], 'a bar for each side')
    : byBusyness(full, intensity, random);
  if (!endsSection || withoutFills.has(feel)) return [...keeps, ...adds];
  const fill = byBusyness(fillsOf(feel), intensity, random);
  const from = Math.min(...fill.map((stroke) => stroke.quaver));
  return [...keeps, ...adds.filter((stroke) => stroke.quaver < from), ...fill];
}

/** One of some that go from calm to busy, near the intensity. */
function byBusyness<One>(options: readonly One[], intensity: number, random: Random): One {
  const suited = options.filter(
    (_, at) => options.length < 2 || Math.abs(at / (options.length - 1) - intensity) <= 0.6,
  );
  return chooseOne(random, suited);
}
