// The grid under a whole take. A given grid (a backing) is held when the playing fits it; otherwise a first guess from the
// opening is followed through the take, and tempo, drift and swing are read off the places the notes were put on.

import { present } from '#core';
import { beatFrame, type TakeContext } from '../context/take-context.ts';
import { coarseGrids, gapBelief, tempoBelief } from './coarse-grid.ts';
import { type Anchor, type Grid, steadyGrid } from './grid.ts';
import { type Placement, quantise, usualSpread } from './quantise.ts';
import { rhythmBelief } from './rhythm-belief.ts';
import { tickPlace, ticksPerBeat } from './slots.ts';

export interface Fit {
  readonly grid: Grid;
  readonly placement: Placement;
}

/** Fewest onsets a grid can be found from. */
export const fewestOnsets = 4;
/** Notes looked at first; more when the tempo has to be found too. */
const opening = 24;
const openingWithoutTempo = 40;
/** Notes added at a time, and looked back on: few, so that a tempo that moves is followed. */
const stride = 4;
const memory = 20;
const fading = 7;
/** Notes placed by the first guess alone. */
const firstNotes = 12;
/** Seconds a player may be late or early throughout before it counts as another place. */
const mostLate = 0.12;

/**
 * Fits a grid to onsets (seconds, rising); bars are not yet placed unless the grid is given. Null when there are too few
 * onsets and nothing is given.
 */
export function fitGrid(onsets: readonly number[], context: TakeContext): Fit | null {
  const { isCompound } = beatFrame(context.metre);
  const { tempo, offsetS } = context;
  const given =
    tempo !== null && offsetS !== null
      ? settleGiven(onsets, steadyGrid(offsetS, tempo, 0.5, true), context)
      : null;
  if (onsets.length < fewestOnsets) return given;
  const free = findFree(onsets, context, isCompound);
  if (given === null) return free;
  // the grid that was played to is believed unless the playing plainly keeps another
  const margin = (given.placement.cost - free.placement.cost) * onsets.length;
  return margin > 8 + 0.12 * onsets.length ? free : given;
}

/** Guesses that are followed where no tempo is known. */
const guesses = 10;
/** Notes they are followed for before one is chosen. */
const judged = 80;
/** Notes err together, so that each is less than a whole witness between one tempo and another. */
const witness = 0.4;
/** Cost of swing where the tempo is not known either: triplets at another tempo look like it. */
const openSwingCost = 2;
/** Share of onsets on the beat that is usual, and how far from it. */
const usualOnBeat = { share: 0.55, spread: 0.14 };

function findFree(onsets: readonly number[], context: TakeContext, isCompound: boolean): Fit {
  const { tempo, swing } = context;
  const first = tempo === null ? openingWithoutTempo : opening;
  const found = coarseGrids(
    onsets.slice(0, first),
    { tempo, swing, isCompound },
    tempo === null ? guesses : 1,
  );
  const opened = onsets.slice(0, judged);
  const scores =
    found.length < 2
      ? [0]
      : found.map((guess) => believe(followTake(opened, guess, context, isCompound), opened));
  const likeliest = present(found[scores.indexOf(Math.max(...scores))], 'a guess');
  return followTake(onsets, likeliest, context, isCompound);
}

/**
 * How well a grid without a known tempo explains the playing, natural log: how densely it expects notes just there, how usual
 * the tempo is, and how plainly the rhythm would be written.
 */
function believe({ grid, placement }: Fit, onsets: readonly number[]): number {
  const beat = 60 / grid.tempo;
  const gap = median(onsets.slice(1).map((onset, i) => onset - (onsets[i] ?? 0)));
  const onBeat = placement.placed.filter((p) => p.tick % ticksPerBeat === 0).length / placement.placed.length;
  // A slower beat has more notes to share out and wider places: without this, twice the tempo would always place better.
  const notesPerBeat = (onsets.length * beat) / Math.max(beat, (onsets.at(-1) ?? 0) - (onsets[0] ?? 0));
  const density = Math.log(notesPerBeat / usualSpread(beat));
  return (
    witness * (onsets.length * (density - placement.cost) + rhythmBelief(placement.placed)) +
    tempoBelief(grid.tempo, null) +
    gapBelief(gap / beat) -
    ((onBeat - usualOnBeat.share) / usualOnBeat.spread) ** 2 / 2 -
    (Math.abs(grid.swing - 0.5) > 0.05 ? openSwingCost : 0)
  );
}

function followTake(onsets: readonly number[], guess: Grid, context: TakeContext, isCompound: boolean): Fit {
  let grid = guess;
  const ticks: number[] = [];
  for (let from = 0; from < onsets.length; from += from === 0 ? firstNotes : stride) {
    const to = from === 0 ? firstNotes : from + stride;
    const back = Math.max(0, from - stride);
    for (let pass = 0; pass < 3; pass++) {
      const { placed } = quantise(onsets.slice(back, to), grid, isCompound);
      ticks.splice(back, ticks.length - back, ...placed.map((p) => p.tick));
      const since = Math.max(0, ticks.length - memory);
      const swing = measureSwing(onsets, ticks, grid, context, 0);
      const line = fitLine(onsets, ticks, { swing, isCompound, since, fading }, 60 / grid.tempo);
      grid = steadyGrid(line.offset, 60 / line.beat, swing, false);
    }
  }
  return smoothGrid(onsets, ticks, context, isCompound);
}

interface LineWish {
  readonly swing: number;
  readonly isCompound: boolean;
  /** First note that counts. */
  readonly since: number;
  /** Notes back at which one counts for a third. */
  readonly fading: number;
}

interface Line {
  /** Seconds at beat 0. */
  readonly offset: number;
  /** Seconds in a beat. */
  readonly beat: number;
  /** Standard error of `beat`. */
  readonly beatError: number;
}

/** A straight line through notes and places, strays held back (Huber's weights); few notes lean on the known beat. */
function fitLine(
  onsets: readonly number[],
  ticks: readonly number[],
  { swing, isCompound, since, fading }: LineWish,
  knownBeat: number,
): Line {
  const spread = usualSpread(knownBeat);
  const rows = ticks.slice(since).map((tick, i) => ({
    x: placeOf(tick, swing, isCompound),
    t: present(onsets[since + i], 'an onset'),
    own: Math.exp((since + i - ticks.length + 1) / fading),
    w: 1,
  }));
  for (const row of rows) row.w = row.own;
  let offset = 0;
  let beat = knownBeat;
  let spreadX = 1;
  for (let pass = 0; pass < 4; pass++) {
    const sum = rows.reduce((a, r) => a + r.w, 0);
    const mx = rows.reduce((a, r) => a + r.w * r.x, 0) / sum;
    const mt = rows.reduce((a, r) => a + r.w * r.t, 0) / sum;
    // one note of belief, two beats away, in the tempo so far
    const hold = 4;
    spreadX = rows.reduce((a, r) => a + r.w * (r.x - mx) ** 2, 0) + hold;
    beat = (rows.reduce((a, r) => a + r.w * (r.x - mx) * (r.t - mt), 0) + hold * knownBeat) / spreadX;
    offset = mt - beat * mx;
    for (const row of rows)
      row.w = row.own * Math.min(1, (1.5 * spread) / (Math.abs(row.t - offset - beat * row.x) + 1e-9));
  }
  return { offset, beat, beatError: spread / Math.sqrt(spreadX) };
}

/** Beats from bar 1 at which a tick sounds. */
function placeOf(tick: number, swing: number, isCompound: boolean): number {
  const whole = Math.floor(tick / ticksPerBeat);
  return whole + tickPlace(tick - whole * ticksPerBeat, swing, isCompound);
}

/**
 * The share of the beat off-beat quavers are played at, leaning on what was agreed when there are few. Off-beats between two
 * notes on the beat are measured against these, so that a tempo that moves is not taken for swing.
 */
function measureSwing(
  onsets: readonly number[],
  ticks: readonly number[],
  grid: Grid,
  context: TakeContext,
  since: number,
): number {
  if (beatFrame(context.metre).isCompound) return 0.5;
  const between: number[] = [];
  const alone: number[] = [];
  for (let i = since; i < ticks.length; i++) {
    const tick = present(ticks[i], 'a tick');
    const whole = Math.floor(tick / ticksPerBeat);
    if (tick - whole * ticksPerBeat !== ticksPerBeat / 2) continue;
    const onset = present(onsets[i], 'an onset');
    const [before, after] = [onsets[i - 1], onsets[i + 1]];
    const isBetween = ticks[i - 1] === whole * ticksPerBeat && ticks[i + 1] === (whole + 1) * ticksPerBeat;
    if (isBetween && before !== undefined && after !== undefined)
      between.push((onset - before) / (after - before));
    else alone.push((onset - grid.offset) / (60 / grid.tempo) - whole);
  }
  const places = between.length >= fewestBetween ? between : [...between, ...alone];
  const agreed = context.swing ?? 0.5;
  const trust = places.length / (places.length + (context.swing === null ? 1 : 4));
  const heard = places.length === 0 ? agreed : median(places);
  return Math.min(0.78, Math.max(0.46, trust * heard + (1 - trust) * agreed));
}

const fewestBetween = 3;
const startSwings = [0.5, 0.6, 0.67, 0.74] as const;
/** Cost of a swing nobody agreed on, for the whole take: straight quavers are usual. */
const swingCost = 2;

/** A given grid with the likeliest swing: each start settles on its own, and the best explained wins. */
function settleGiven(onsets: readonly number[], given: Grid, context: TakeContext): Fit {
  const { isCompound } = beatFrame(context.metre);
  const starts = isCompound ? [0.5] : [context.swing ?? 0.5, ...startSwings];
  let best: { readonly fit: Fit; readonly cost: number } | null = null;
  for (const swing of starts) {
    const fit = settleSwing(onsets, { ...given, swing }, context);
    const isUsual = Math.abs(fit.grid.swing - (context.swing ?? 0.5)) < 0.04;
    const cost = fit.placement.cost * onsets.length + (isUsual ? 0 : swingCost);
    if (best === null || cost < best.cost) best = { fit, cost };
  }
  return present(best, 'a start').fit;
}

/**
 * A given grid with the swing that is played on it. A player who is late throughout is late, not elsewhere: notes are put
 * on places as if the grid had waited, and their lateness is told against the grid itself.
 */
function settleSwing(onsets: readonly number[], given: Grid, context: TakeContext): Fit {
  const { isCompound } = beatFrame(context.metre);
  const beat = 60 / given.tempo;
  let late = 0;
  let swing = given.swing;
  for (let pass = 0; pass < 3; pass++) {
    const waiting = steadyGrid(given.offset + late, given.tempo, swing, true);
    const ticks = quantise(onsets, waiting, isCompound).placed.map((p) => p.tick);
    const onBeat = ticks.flatMap((tick, i) =>
      tick % ticksPerBeat === 0
        ? [present(onsets[i], 'an onset') - given.offset - (tick / ticksPerBeat) * beat]
        : [],
    );
    late = Math.max(-mostLate, Math.min(mostLate, (median(onBeat) * onBeat.length) / (onBeat.length + 1)));
    swing = measureSwing(
      onsets,
      ticks,
      steadyGrid(given.offset + late, given.tempo, swing, true),
      context,
      0,
    );
  }
  const waiting = quantise(onsets, steadyGrid(given.offset + late, given.tempo, swing, true), isCompound);
  return {
    grid: { ...given, swing },
    placement: {
      cost: waiting.cost,
      placed: waiting.placed.map((p) => ({ ...p, late: p.late + late / beat })),
    },
  };
}

/** From places to the final grid: straight when the playing keeps one tempo, bent bar by bar when it does not. */
function smoothGrid(
  onsets: readonly number[],
  ticks: readonly number[],
  context: TakeContext,
  isCompound: boolean,
): Fit {
  const whole = { isCompound, since: 0, fading: Number.POSITIVE_INFINITY };
  const rough = fitLine(onsets, ticks, { ...whole, swing: 0.5 }, 60 / (context.tempo ?? 100));
  let swing = measureSwing(onsets, ticks, steadyGrid(rough.offset, 60 / rough.beat, 0.5, false), context, 0);
  let line = fitLine(onsets, ticks, { ...whole, swing }, rough.beat);
  swing = measureSwing(onsets, ticks, steadyGrid(line.offset, 60 / line.beat, swing, false), context, 0);
  line = fitLine(onsets, ticks, { ...whole, swing }, line.beat);
  const places = ticks.map((tick) => placeOf(tick, swing, isCompound));
  const known = context.tempo === null ? null : 60 / context.tempo;
  // one part in two hundred of the agreed tempo is the agreed tempo
  const keepsTempo =
    known !== null && Math.abs(line.beat / known - 1) < Math.max(0.002, (2 * line.beatError) / line.beat);
  const straight =
    keepsTempo && known !== null
      ? steadyGrid(median(onsets.map((t, i) => t - known * (places[i] ?? 0))), 60 / known, swing, false)
      : steadyGrid(line.offset, 60 / line.beat, swing, false);
  const bent = bendGrid(straight, onsets, places);
  const straightFit = { grid: straight, placement: quantise(onsets, straight, isCompound) };
  if (bent === null) return straightFit;
  const bentFit = { grid: bent, placement: quantise(onsets, bent, isCompound) };
  const margin = (straightFit.placement.cost - bentFit.placement.cost) * onsets.length;
  return margin > 6 ? bentFit : straightFit;
}

const bendReach = 14;

/** A grid with an anchor every four beats, each from the notes around it; null when the take is too short to bend. */
function bendGrid(straight: Grid, onsets: readonly number[], places: readonly number[]): Grid | null {
  const first = places[0] ?? 0;
  const last = places.at(-1) ?? 0;
  if (onsets.length < 12 || last - first < 12) return null;
  const beat = 60 / straight.tempo;
  const anchors: Anchor[] = [];
  let low = 0;
  for (let at = Math.floor(first / 4) * 4; at <= last + 4; at += 4) {
    while ((places[low] ?? 0) < at - bendReach) low++;
    let [sw, sx, sy, sxx, sxy] = [0, 0, 0, 0, 0];
    for (let i = low; i < places.length && (places[i] ?? 0) <= at + bendReach; i++) {
      const x = (places[i] ?? 0) - at;
      const y = (onsets[i] ?? 0) - straight.offset - beat * (places[i] ?? 0);
      const w = (1 - Math.abs(x / bendReach) ** 3) ** 3;
      [sw, sx, sy, sxx, sxy] = [sw + w, sx + w * x, sy + w * y, sxx + w * x * x, sxy + w * x * y];
    }
    if (sw < 2) continue;
    const slope = (sw * sxy - sx * sy) / (sw * sxx - sx * sx + 40);
    anchors.push({ beat: at, seconds: straight.offset + beat * at + (sy - slope * sx) / sw });
  }
  const [a, b] = [anchors[0], anchors[1]];
  const [y, z] = [anchors.at(-2), anchors.at(-1)];
  if (a === undefined || b === undefined || y === undefined || z === undefined || anchors.length < 3)
    return null;
  if (anchors.some((anchor, i) => i > 0 && anchor.seconds <= (anchors[i - 1]?.seconds ?? 0))) return null;
  const startTempo = (60 * (b.beat - a.beat)) / (b.seconds - a.seconds);
  const endTempo = (60 * (z.beat - y.beat)) / (z.seconds - y.seconds);
  const offset = a.seconds - (a.beat * (b.seconds - a.seconds)) / (b.beat - a.beat);
  return {
    ...straight,
    offset,
    tempo: (60 * (z.beat - a.beat)) / (z.seconds - a.seconds),
    drift: (endTempo / startTempo - 1) * 100,
    anchors,
  };
}

function median(list: readonly number[]): number {
  const sorted = [...list].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}
