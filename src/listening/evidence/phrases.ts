// Phrases: stretches of playing between rests that let the line breathe.

import { ticksPerBeat } from '../alignment/slots.ts';
import { beatFrame } from '../context/take-context.ts';
import { barOfTick, beatOfTick, type EvidenceInput, notePassage } from './evidence-input.ts';
import { couldNotHear, figure, type Row, shareFigure } from './figure.ts';
import { mean } from './statistics.ts';

export interface Phrase {
  /** First and last note, as indices among the heard notes. */
  readonly first: number;
  readonly last: number;
  /** Seconds. */
  readonly from: number;
  readonly to: number;
  /** Length in bars, from the first note to where the last is meant to end. */
  readonly bars: number;
  /** Bar and beat (from 1) where it starts and where it has ended. */
  readonly start: { readonly bar: number; readonly beat: number };
  readonly end: { readonly bar: number; readonly beat: number };
  /** Rest before the next phrase in beats; null after the last. */
  readonly restBeats: number | null;
}

export type PhraseFigure = 'count' | 'shortest' | 'longest' | 'differentLengths' | 'meanRest' | 'restShare';
export type PhrasesRow = Row<PhraseFigure, { readonly phrases: readonly Phrase[] }>;

/** A silence of this many beats ends a phrase; common practice, no source. */
const phraseRest = 0.95;
/** Phrases whose lengths differ by less are of one length, in bars. */
const sameLength = 0.5;

/** Finds the phrases. A written rest of a beat or more ends one. */
export function hearPhrases(input: EvidenceInput): PhrasesRow {
  const { alignment, context, notes } = input;
  if (alignment === null)
    return couldNotHear('Phrases are counted in bars, and the beat could not be found.');
  if (notes.length < 3) return couldNotHear('Fewer than three notes were heard.');
  const { rhythm } = alignment;
  const bar = beatFrame(context.metre).beatsPerBar * ticksPerBeat;
  const phrases: Phrase[] = [];
  let first = 0;
  let doubtful = 0;
  let silent = 0;
  for (const [i, note] of rhythm.entries()) {
    const next = rhythm[i + 1];
    const end = note.tick + note.ticks;
    const rest = next === undefined ? null : (next.tick - end) / ticksPerBeat;
    if (rest !== null) {
      silent += Math.max(0, rest);
      if (rest >= 0.45 && rest < phraseRest) doubtful++;
    }
    if (rest !== null && rest < phraseRest) continue;
    const start = rhythm[first]?.tick ?? 0;
    phrases.push({
      first,
      last: i,
      from: notes[first]?.onset ?? 0,
      to: notes[i]?.offset ?? 0,
      bars: (end - start) / bar,
      start: { bar: barOfTick(start, context), beat: beatOfTick(start, context) },
      end: { bar: barOfTick(end - 1e-6, context), beat: beatOfTick(end - 1e-6, context) },
      restBeats: rest,
    });
    first = i + 1;
  }
  const lengths = phrases.map((p) => p.bars);
  const rests = phrases.flatMap((p) => (p.restBeats === null ? [] : [p.restBeats]));
  const total =
    ((rhythm.at(-1)?.tick ?? 0) + (rhythm.at(-1)?.ticks ?? 0) - (rhythm[0]?.tick ?? 0)) / ticksPerBeat;
  const halfBeat = 0.5 / beatFrame(context.metre).beatsPerBar;
  const lengthsInDoubt = rhythm.filter((note) => note.isDoubtful).length;
  const unsure = Math.min(phrases.length, doubtful * 0.5 + lengthsInDoubt * 0.4);
  return {
    heard: true,
    figures: {
      count: figure(phrases.length, unsure, 'count'),
      shortest: figure(Math.min(...lengths), halfBeat, 'bars'),
      // a rest in doubt may part the longest phrase
      longest: figure(
        Math.max(...lengths),
        unsure >= 0.5 ? Math.max(halfBeat, Math.max(...lengths) / 2) : halfBeat,
        'bars',
      ),
      differentLengths: figure(countLengths(lengths), unsure >= 0.5 ? 1 : 0, 'count'),
      ...(rests.length === 0 ? {} : { meanRest: figure(mean(rests), 0.5, 'beats') }),
      restShare: shareFigure(silent, total, doubtful * 0.25 + lengthsInDoubt * 0.5),
    },
    details: { phrases },
    passages: phrases.map((p) => notePassage(input, p.first, p.last, `a phrase of ${formatBars(p.bars)}`)),
  };
}

/** How many lengths there are when those less than half a bar apart count as one. `[1, 1.25, 2, 4]` → 3 */
export function countLengths(lengths: readonly number[]): number {
  let count = 0;
  let from = Number.NEGATIVE_INFINITY;
  for (const length of [...lengths].sort((a, b) => a - b)) {
    if (length - from < sameLength) continue;
    count++;
    from = length;
  }
  return count;
}

function formatBars(bars: number): string {
  const rounded = Math.round(bars * 4) / 4;
  return `${rounded} ${rounded === 1 ? 'bar' : 'bars'}`;
}
