// A line of rhythm a teacher recognises: bars built from a few figures, bars that come back, and a close. The plan of
// bars is that of folk song and of studies (a b a z, a a b z; common practice, no source).

import { chooseOne, present, type Random } from '#core';
import { type BeatFigure, crotchet, type Slot } from './beat-figure.ts';
import { type Beat, barTicks, beatGrid } from './beat-grid.ts';
import { chooseWeighted } from './choose.ts';
import { choosePalette, type Palette, type RhythmOptions } from './rhythm-palette.ts';

/** One bar's place in the plan. */
export interface PlannedBar {
  /** Bars of one letter share their rhythm. */
  readonly letter: string;
  /** `half` closes a question, `full` the line. */
  readonly close: 'none' | 'half' | 'full';
}

export interface RhythmLine {
  /** `at` counts from the start of the line. */
  readonly slots: readonly Slot[];
  readonly plan: readonly PlannedBar[];
  readonly isWidened: boolean;
}

const plans4 = ['abaz', 'aabz', 'abcz', 'abbz'];
const plans4Easy = ['abaz', 'aabz', 'aaaz'];
const plans8 = ['abahabcz', 'abchabcz', 'aabhaacz', 'abchdbaz'];

/** Which bars are alike, and where the line closes. */
export function planBars(random: Random, bars: number, grade: number): readonly PlannedBar[] {
  let letters = '';
  while (letters.length < bars) {
    const left = bars - letters.length;
    if (left >= 8) letters += chooseOne(random, plans8);
    else if (left >= 4) letters += chooseOne(random, grade <= 2 ? plans4Easy : plans4);
    else letters += present(['', 'z', 'az', 'abz'][left], 'a plan for up to three bars');
  }
  return [...letters].map((letter, i): PlannedBar => {
    const isLast = i === bars - 1;
    if (isLast && bars > 1) return { letter: 'z', close: 'full' };
    const isMiddle = letter === 'h' || (letter === 'z' && !isLast);
    return isMiddle ? { letter: 'h', close: 'half' } : { letter: bars === 1 ? 'a' : letter, close: 'none' };
  });
}

/** Whether a figure can stand on a beat: it fills whole beats of its kind and leaves the bar's divisions in sight. */
function canStand(
  figure: BeatFigure,
  grid: readonly Beat[],
  index: number,
  options: RhythmOptions,
): number | null {
  const start = present(grid[index], 'a beat of the bar');
  let [filled, end] = [0, index];
  while (filled < figure.length) {
    const beat = grid[end];
    if (beat === undefined || beat.kind !== start.kind) return null;
    filled += beat.length;
    end++;
  }
  if (filled !== figure.length) return null;
  if (start.kind === 'compound' && figure.length % 72 !== 0) return null;
  const covered = grid.slice(index + 1, end).some((beat) => beat.isMain);
  const isSameWeight =
    options.metre.groups.every((group) => group === 1) || options.metre.groups.length === 3;
  if (!covered || index === 0 || isSameWeight) return end;
  const isPlainNote = figure.slots.length === 1 && !figure.hasRest;
  const mayCross = options.grade >= 3 && options.syncopation !== 'none' && grid.length === 4;
  return isPlainNote && mayCross && figure.length <= 144 ? end : null;
}

interface Stretch {
  readonly from: number;
  readonly to: number;
  /** Whether a rest may stand on the first beat. */
  readonly restsFirst: boolean;
}

/** Fills some beats of a bar with figures. */
function fillBeats(
  random: Random,
  grid: readonly Beat[],
  palette: Palette,
  options: RhythmOptions,
  { from, to, restsFirst }: Stretch,
): readonly BeatFigure[] {
  const chosen: BeatFigure[] = [];
  const figures = [...palette.weights.keys()];
  for (let index = from; index < to; ) {
    const fitting = figures.flatMap((figure) => {
      const end = canStand(figure, grid, index, options);
      return end === null || end > to ? [] : [{ figure, end }];
    });
    const last = chosen.at(-1);
    const mayRest = (index > from || restsFirst) && last?.hasRest !== true;
    const wantsRest =
      mayRest && random.next() < options.rests && fitting.some(({ figure }) => figure.hasRest);
    const isLong = (figure: BeatFigure) => figure.length > 2 * crotchet && figure.slots.length === 1;
    const { figure, end } = chooseWeighted(random, fitting, ({ figure: f }) => {
      if (f.hasRest !== wantsRest) return 0;
      const repeated = f === last && f.slots.length === 1 ? 0.5 : 1;
      return present(palette.weights.get(f), 'a figure of the palette') * repeated * (isLong(f) ? 0.6 : 1);
    });
    chosen.push(figure);
    index = end;
  }
  return chosen;
}

/** The slots of some figures one after the other, from a place in the bar. */
function layOut(figures: readonly BeatFigure[], start: number): readonly Slot[] {
  let at = start;
  return figures.flatMap((figure) => {
    const here = at;
    at += figure.length;
    return figure.slots.map((slot) => ({ ...slot, at: here + slot.at }));
  });
}

/** A closing bar: a long note on the bar or on its last division, now and then with a rest to breathe in after a half. */
function closingBar(
  random: Random,
  grid: readonly Beat[],
  palette: Palette,
  options: RhythmOptions,
  close: 'half' | 'full',
): readonly Slot[] {
  const length = barTicks(options.metre);
  const mains = grid.flatMap((beat, i) => (beat.isMain && i > 0 ? [i] : []));
  const lastMain = mains.at(-1);
  const split = lastMain !== undefined && random.next() < 0.55 ? lastMain : 0;
  const before = layOut(
    fillBeats(random, grid, palette, { ...options, rests: 0 }, { from: 0, to: split, restsFirst: false }),
    0,
  );
  const at = present(grid[split], 'a beat of the bar').at;
  const long = length - at;
  if (options.values !== null && longestPlain(options) < long) {
    const rest = layOut(
      fillBeats(
        random,
        grid,
        palette,
        { ...options, rests: 0 },
        { from: split, to: grid.length, restsFirst: false },
      ),
      at,
    );
    return [...before, ...rest];
  }
  const lastBeat = present(grid.at(-1), 'a last beat');
  const breathes = close === 'half' && options.grade >= 2 && lastBeat.at > at && random.next() < 0.5;
  const held = breathes ? lastBeat.at - at : long;
  const slots: Slot[] = [...before, { at, length: held, isRest: false, tuplet: null }];
  if (breathes) slots.push({ at: at + held, length: long - held, isRest: true, tuplet: null });
  return slots;
}

/** Longest note the wanted values allow, dots not counted. */
function longestPlain({ values }: RhythmOptions): number {
  if (values === null || values.includes('semibreve')) return 192;
  return values.includes('minim') ? 144 : values.includes('crotchet') ? 72 : 0;
}

/** Ties notes into the next where both sound outside tuplets; `chance` for each barline and middle of a bar. */
function tieOver(
  random: Random,
  slots: readonly Slot[],
  length: number,
  options: RhythmOptions,
): readonly Slot[] {
  const total = length * options.bars;
  const tied: Slot[] = [];
  let lastTie = -length;
  for (const slot of slots) {
    const before = tied.at(-1);
    const inBar = slot.at % length;
    const isPlace = inBar === 0 || inBar * 2 === length;
    const isFree = !slot.isRest && slot.tuplet === null && slot.length <= 2 * crotchet;
    const canTie =
      before !== undefined && !before.isRest && before.tuplet === null && before.length <= crotchet && isFree;
    const isEarly = slot.at < total - length && slot.at - lastTie >= length;
    if (isPlace && canTie && isEarly && options.ties > 0 && random.next() < options.ties) {
      tied.pop();
      tied.push({ ...before, length: before.length + slot.length });
      lastTie = slot.at;
    } else tied.push(slot);
  }
  return tied;
}

/** A line of rhythm. The same random state and options give the same line. */
export function composeRhythm(random: Random, options: RhythmOptions): RhythmLine {
  const grid = beatGrid(options.metre);
  const length = barTicks(options.metre);
  const palette = choosePalette(random, options);
  const plan = planBars(random, options.bars, options.grade);
  const barsByLetter = new Map<string, readonly Slot[]>();
  const slots = plan.flatMap(({ letter, close }, i) => {
    const known = close === 'none' ? barsByLetter.get(letter) : undefined;
    const bar = known ?? composeBar(random, grid, palette, options, close, i === 0);
    barsByLetter.set(letter, bar);
    return bar.map((slot) => ({ ...slot, at: slot.at + i * length }));
  });
  return { slots: tieOver(random, slots, length, options), plan, isWidened: palette.isWidened };
}

function composeBar(
  random: Random,
  grid: readonly Beat[],
  palette: Palette,
  options: RhythmOptions,
  close: PlannedBar['close'],
  isFirst: boolean,
): readonly Slot[] {
  if (close !== 'none') return closingBar(random, grid, palette, options, close);
  const whole = { from: 0, to: grid.length, restsFirst: !isFirst && options.grade >= 4 };
  const asksOffbeat = options.syncopation === 'some' || options.syncopation === 'much';
  const hasOffbeat = [...palette.weights.keys()].some((figure) => figure.isOffbeat);
  // One held note says nothing in the middle of a line, and four equal beats not much; a line that is to have its
  // stress off the beat has it in its first bar.
  for (let tries = 0; ; tries++) {
    const figures = fillBeats(random, grid, palette, options, whole);
    const slots = layOut(figures, 0);
    const sounds = slots.filter((slot) => !slot.isRest).length;
    const isHeld = sounds < 2 && grid.length > 1;
    const isEven =
      options.grade >= 2 && grid.length > 2 && new Set(slots.map(({ length }) => length)).size < 2;
    const misses = asksOffbeat && hasOffbeat && isFirst && !figures.some((figure) => figure.isOffbeat);
    if (!(isHeld || isEven || misses) || (tries >= 8 && !misses) || tries >= 40) return slots;
  }
}
