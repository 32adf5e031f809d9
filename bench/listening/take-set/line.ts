// Seeded monophonic lines of our own over a chart: scale runs, broken chords, steps with rests, repeated notes, long
// notes. Written in crotchets from the first bar line; a line knows nothing of sound.

import { chooseOne, modulo, present, type Random, randomInteger } from '#core';
import { findScale, parsePitchName, pitchClass } from '#music';

export interface LineNote {
  /** Crotchets from bar 1. */
  readonly at: number;
  /** Written length in crotchets. */
  readonly length: number;
  readonly midi: number;
  /** Whether a rest or a longer note closes a phrase after it. */
  readonly closes: boolean;
}

export interface Line {
  readonly metre: readonly [number, number];
  readonly bars: number;
  readonly scale: { readonly tonic: string; readonly name: string };
  readonly chart: string;
  readonly notes: readonly LineNote[];
}

export interface LineWish {
  readonly low: number;
  readonly high: number;
  readonly bars: number;
  /** `plain` up to quavers, `lively` with semiquavers and triplets, `running` mostly semiquavers. */
  readonly rhythm: 'plain' | 'lively' | 'running';
  /** Mostly leaps and broken chords. */
  readonly leaps?: boolean;
}

// Each cell fills two crotchets (or three for a bar of three): positive lengths sound, negative ones rest.
const cells = {
  plain: [
    '1 1',
    '.5 .5 1',
    '1 .5 .5',
    '.5 .5 .5 .5',
    '2',
    '1.5 .5',
    '.5 1 .5',
    '1 -1',
    '-.5 .5 1',
    '.5 .5 -1',
  ],
  lively: [
    '.5 .5 .5 .5',
    '.25 .25 .5 1',
    '.5 .25 .25 .5 .5',
    '.3333333333333333 .3333333333333333 .3333333333333333 1',
    '.75 .25 1',
    '.5 1 .5',
    '1 1',
    '2',
    '-.5 .5 .5 .5',
    '.5 .5 -1',
    '1.5 .5',
  ],
  running: [
    '.25 .25 .25 .25 .25 .25 .25 .25',
    '.5 .25 .25 .25 .25 .5',
    '.25 .25 .25 .25 1',
    '.25 .25 .5 .25 .25 .5',
    '.5 .5 .25 .25 .25 .25',
    '.25 .25 .25 .25 -.5 .5',
  ],
} as const;

const majorTurns = [
  ['1', '6m', '2m', '57'],
  ['1', '4', '57', '1'],
  ['1', '4', '1', '57'],
  ['6m', '4', '1', '57'],
] as const;
const tonics = ['C', 'G', 'D', 'F', 'Bb', 'A', 'Eb'] as const;
const degreeSteps: Readonly<Record<string, number>> = { '1': 0, '2m': 2, '4': 5, '57': 7, '6m': 9 };
const flatNames = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'Gb', 'G', 'Ab', 'A', 'Bb', 'B'] as const;

/** Draws a line. */
export function drawLine(wish: LineWish, random: Random): Line {
  const pick = <T>(list: readonly T[]): T => chooseOne(random, list);
  const tonic = pick(tonics);
  const name = pick(['major', 'major', 'mixolydian', 'major_pentatonic'] as const);
  const three = random.next() < 0.2 && wish.rhythm === 'plain';
  const beats = three ? 3 : 4;
  const root = pitchClassOf(tonic);
  const turn = pick(majorTurns);
  const chart = Array.from({ length: wish.bars }, (_, bar) => {
    const degree = present(turn[bar % 4], 'a degree');
    const pc = (root + present(degreeSteps[degree], 'steps')) % 12;
    return `${flatNames[pc]}${degree === '57' ? '7' : degree.endsWith('m') ? 'm' : ''}`;
  });
  const notes: LineNote[] = [];
  const ladder = scaleLadder(tonic, name, wish.low, wish.high);
  let step = Math.floor(ladder.length / 2);
  let direction = 1;
  const total = wish.bars * beats;
  let at = 0;
  while (at < total) {
    if (at % beats === beats - 1 && three) {
      if (random.next() < 0.3) {
        at += 1;
        continue;
      }
      push(at, 1);
      at += 1;
      continue;
    }
    if (at % 8 === 6 && random.next() < 0.5) {
      push(at, 1); // the phrase ends with a crotchet and a rest
      close();
      at += 2;
      continue;
    }
    const figure = pick(
      wish.leaps
        ? (['leap', 'leap', 'chord', 'chord', 'repeat', 'run'] as const)
        : (['run', 'run', 'chord', 'repeat', 'step', 'leap'] as const),
    );
    for (const word of pick(cells[wish.rhythm]).split(' ')) {
      const length = Number(word);
      if (length < 0) {
        close();
        at += -length;
        continue;
      }
      move(figure, Math.floor(at / beats));
      push(at, length);
      at += length;
    }
    at = Math.round(at * 12) / 12;
  }
  close();
  return { metre: [beats, 4], bars: wish.bars, scale: { tonic, name }, chart: chart.join(' | '), notes };

  function push(place: number, length: number): void {
    notes.push({
      at: place,
      length,
      // now and then a chromatic neighbour from below, as a learner of improvising would try it
      midi: present(ladder[step], 'a step of the ladder') - (random.next() < 0.04 ? 1 : 0),
      closes: false,
    });
  }
  function close(): void {
    const last = notes.at(-1);
    if (last !== undefined) notes[notes.length - 1] = { ...last, closes: true };
  }
  function move(figure: 'run' | 'chord' | 'repeat' | 'step' | 'leap', bar: number): void {
    if (figure === 'repeat' && random.next() < 0.65) return;
    if (random.next() < 0.15) direction = -direction;
    let by = figure === 'chord' ? 2 : figure === 'leap' ? randomInteger(random, 2, 5) : 1;
    if (figure === 'step' && random.next() < 0.3) by = 2;
    if (step + by * direction < 0 || step + by * direction >= ladder.length) direction = -direction;
    step = Math.min(ladder.length - 1, Math.max(0, step + by * direction));
    if (figure === 'chord' && bar % 2 === 0 && random.next() < 0.5) {
      // towards a tone of the chord that sounds
      const chordRoot = (root + present(degreeSteps[present(turn[bar % 4], 'a degree')], 'steps')) % 12;
      const near = [0, 1, -1].find((d) =>
        [0, 3, 4, 7].includes(modulo((ladder[step + d] ?? 0) - chordRoot, 12)),
      );
      step = Math.min(ladder.length - 1, Math.max(0, step + (near ?? 0)));
    }
  }
}

function pitchClassOf(name: string): number {
  return pitchClass(present(parsePitchName(name), `pitch name ${name}`));
}

function scaleLadder(tonic: string, name: string, low: number, high: number): readonly number[] {
  const scale = present(findScale(name), `scale ${name}`);
  const root = pitchClassOf(tonic);
  const classes = new Set(scale.steps.map((s) => (root + s.chromatic) % 12));
  return Array.from({ length: high - low + 1 }, (_, i) => low + i).filter((m) => classes.has(m % 12));
}
