// Timing: early or late against the grid, how evenly, whether the tempo holds, and how quavers swing.

import { ticksPerBeat } from '../alignment/slots.ts';
import { shareToRatio } from '../alignment/swing.ts';
import { beatFrame } from '../context/take-context.ts';
import { type EvidenceInput, notePassage } from './evidence-input.ts';
import { couldNotHear, figure, type Row } from './figure.ts';
import { meanUncertainty, middle, spreadUncertainty, steadyMean } from './statistics.ts';

export type TimingFigure = 'late' | 'lateShareOfBeat' | 'spread' | 'drift' | 'swing';
export type TimingRow = Row<
  TimingFigure,
  {
    /** Late (positive) or early in ms, by note. */
    readonly lateByNote: readonly number[];
    /** Length of the first to the second of each pair of quavers on a beat. */
    readonly swingPairs: readonly number[];
    readonly tempo: number;
  }
>;

/** Onsets are heard with about this error in ms, from the take set; it cannot be told from the player's own. */
const hearingSpread = 6;
/** One take's onsets are heard more finely than another's: the spread is told no finer than this, in ms. */
const hearingSpreadError = 8;
/** Slow attacks are heard this much earlier or later, the same for the whole take, in ms. */
const hearingBias = 8;
const fewestPairs = 4;
/** Share of the beat by which off-beats are heard early or late throughout. */
const leastPlaceError = 0.004;

/** Measures timing. The mean can be told only against a grid that was given. */
export function hearTiming(input: EvidenceInput): TimingRow {
  const { alignment } = input;
  if (alignment === null) return couldNotHear('Timing needs the beat, and it could not be found.');
  const { rhythm, grid } = alignment;
  if (rhythm.length < 8) return couldNotHear('Fewer than eight notes were heard.');
  const late = rhythm.map((note) => note.late * 1000);
  const steady = steadyMean(late);
  const beat = 60_000 / grid.tempo;
  const meanError = Math.hypot(meanUncertainty(steady.spread, steady.count), hearingBias);
  const spread = Math.sqrt(Math.max(0, steady.spread ** 2 - hearingSpread ** 2));
  const pairs = swingPairs(input);
  const places = pairs.map((ratio) => ratio / (1 + ratio));
  const place = middle(places);
  const placeError =
    meanUncertainty(Math.hypot(steadyMean(places).spread, hearingSpread / beat), pairs.length) +
    leastPlaceError;
  const span = ((rhythm.at(-1)?.tick ?? 0) - (rhythm[0]?.tick ?? 0)) / ticksPerBeat;
  const worst = rhythm
    .map((note, i) => ({ i, ms: note.late * 1000 }))
    .filter(({ ms }) => Math.abs(ms - steady.mean) > Math.max(25, 2 * steady.spread))
    .sort((a, b) => Math.abs(b.ms) - Math.abs(a.ms))
    .slice(0, 6)
    .sort((a, b) => a.i - b.i);
  return {
    heard: true,
    figures: {
      ...(grid.isGiven
        ? {
            late: figure(steady.mean, meanError, 'ms'),
            lateShareOfBeat: figure(steady.mean / beat, meanError / beat, 'share'),
          }
        : {}),
      spread: figure(
        spread,
        Math.hypot(spreadUncertainty(steady.spread, steady.count), hearingSpreadError),
        'ms',
      ),
      ...(grid.isGiven || span < 12
        ? {}
        : {
            drift: figure(
              grid.drift,
              ((400 * steady.spread) / beat / span) * (3 / Math.sqrt(rhythm.length)),
              'percent',
            ),
          }),
      ...(pairs.length < fewestPairs
        ? {}
        : {
            swing: figure(
              shareToRatio(place),
              (shareToRatio(Math.min(0.85, place + placeError)) - shareToRatio(place - placeError)) / 2,
              'ratio',
            ),
          }),
    },
    details: { lateByNote: late, swingPairs: pairs, tempo: grid.tempo },
    passages: worst.map(({ i, ms }) =>
      notePassage(input, i, i, `${Math.round(Math.abs(ms))} ms ${ms > 0 ? 'late' : 'early'}`),
    ),
  };
}

/** Ratios of quavers that fill a beat: on the beat, off it, and a note on the next. */
function swingPairs({ alignment, notes, context }: EvidenceInput): readonly number[] {
  if (alignment === null || beatFrame(context.metre).isCompound) return [];
  const { rhythm } = alignment;
  return rhythm.flatMap((note, i) => {
    const [off, next] = [rhythm[i + 1], rhythm[i + 2]];
    if (off === undefined || next === undefined || note.tick % ticksPerBeat !== 0) return [];
    if (off.tick !== note.tick + ticksPerBeat / 2 || next.tick !== note.tick + ticksPerBeat) return [];
    const [a, b, c] = [notes[i]?.onset ?? 0, notes[i + 1]?.onset ?? 0, notes[i + 2]?.onset ?? 0];
    return c > b ? [(b - a) / (c - b)] : [];
  });
}
