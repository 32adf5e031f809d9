// From the samples of a take to the notes in it: pitch at every moment, onsets, notes.

import { findInstrument, fullRange, pitchToMidi, writtenToSounding } from '#music';
import type { ExpectedRange } from '../pitch-track/candidates.ts';
import { choosePath } from '../pitch-track/choose-path.ts';
import { commonRate, hop, observeTake } from '../pitch-track/observe-take.ts';
import { createSampleReader } from '../signal/sample-reader.ts';
import { quantile } from '../signal/spans.ts';
import { confirmRepeats } from './confirm-repeats.ts';
import { type Company, findCompany } from './count-voices.ts';
import { describeNote } from './describe-note.ts';
import { findClipping } from './find-clipping.ts';
import { findTuning } from './find-tuning.ts';
import { type KnownGrid, leanOnGrid } from './grid-prior.ts';
import type { HeardNote } from './heard-note.ts';
import { judgeTake } from './judge-take.ts';
import { keepToRange } from './keep-to-range.ts';
import { leaveOutBacking } from './leave-out-backing.ts';
import { endNotes } from './let-go.ts';
import { mendSegments } from './mend-segments.ts';
import { gatherMoments, leanMoments, type Moments } from './moments.ts';
import type { Problem } from './problem.ts';
import { segmentMoments } from './segment.ts';
import { settlePitch } from './settle-pitch.ts';
import { unclearInside } from './unclear-inside.ts';

/** What is known of a take beforehand; all of it may be unknown. */
export interface HearingContext extends KnownGrid {
  /** An instrument's id from #music: its range is expected, but what is clear outside it is heard too. */
  readonly instrument?: string | null;
}

/** What was heard in a take. */
export interface Hearing {
  readonly notes: readonly HeardNote[];
  /** The pitch every `hop` seconds from the file's start, as fractional MIDI number, null where none is heard. */
  readonly f0: { readonly hop: number; readonly midi: readonly (number | null)[] };
  readonly problems: readonly Problem[];
}

const pathCosts = { threshold: 0.5, perOctave: 0.3, mostJump: 0.4, voicing: 0.15 };
const segmentWeights = { begin: 4, onsetBegin: 3.5, repeat: 2, onsetRepeat: 4, gap: 0.3, width: 0.8 };
/** Handbook ranges end where most players do; some go on. */
const aboveRange = 4;
/** Shortest take that is listened to, seconds. */
const shortestTake = 0.1;
const lowestRate = 4000;
const highestRate = 400_000;
/** Loud moments below this level, dB relative to full scale, are silence. */
const audibleLevel = -75;
/** Notes less sure than this are none. */
const leastConfidence = 0.2;
/** Shares above which a take is called clipped, or more than one voice (whose notes are then left out). */
const mostClipped = 0.02;
const mostCrowded = 0.12;
/** Where both are more, two voices take turns in being heard (one voice, dry or in a room: at most 0.05 unclear). */
const mostUnclear = 0.06;
const mostStrange = 0.05;
/** Shortest note, seconds. */
const shortestNote = 0.035;

/**
 * Hears the notes of a take. `samples` are mono, -1 … 1, at `sampleRate` hertz (4 000 – 400 000; made for 8 000 – 96 000). Never throws: what
 * cannot be heard is told in `problems`, and then there are no notes rather than invented ones.
 */
export function hearNotes(samples: Float32Array, sampleRate: number, context: HearingContext = {}): Hearing {
  if (!(sampleRate >= lowestRate && sampleRate <= highestRate))
    return nothing({ kind: 'RateUnusable', sampleRate });
  const seconds = samples.length / sampleRate;
  if (seconds < shortestTake) return nothing({ kind: 'TooShort', seconds });
  const reader = createSampleReader(samples, sampleRate, commonRate);
  const range = expectRange(context.instrument ?? null);
  const observation = observeTake(reader, range);
  const loud = quantile(observation.level, 0.99);
  if (loud < audibleLevel) return nothing({ kind: 'TooQuiet', db: loud });
  const path = choosePath(observation, pathCosts);
  const moments = gatherMoments(observation, path);
  const tuning = findTuning(moments);
  const alone = cutNotes(moments, tuning);
  const odds = leanOnGrid(alone, context, moments.count);
  const described = odds === null ? alone : cutNotes(leanMoments(moments, odds), tuning);
  const { notes: heard, outside } = keepToRange(leaveOutBacking(confirmRepeats(reader, described)), range);
  const judgement = judgeTake(observation, path, moments, heard);
  const f0 = { hop, midi: settlePitch(observation, moments.midi, heard) };
  const company = findCompany(reader, heard, f0);
  const crowd = crowdShare(company, unclearInside(observation, path, heard));
  const problems: Problem[] = [...judgement.problems];
  const clipped = findClipping(samples, sampleRate);
  if (clipped > mostClipped) problems.push({ kind: 'Clipped', share: clipped });
  if (!judgement.discards && outside > 0) problems.push({ kind: 'OutsideRange', share: outside });
  if (!judgement.discards && crowd > 0) problems.push({ kind: 'MoreThanOneVoice', share: crowd });
  const kept = heard.filter((_, i) => crowd === 0 || company[i]?.isCrowded !== true);
  return {
    notes: judgement.discards ? [] : endNotes(samples, sampleRate, kept),
    f0,
    problems,
  };
}

/** The share of the notes beside which another voice sounds, 0 when they are one player's. */
function crowdShare(company: readonly Company[], unclear: number): number {
  const count = Math.max(1, company.length);
  const crowded = company.filter(({ isCrowded }) => isCrowded).length / count;
  if (crowded > mostCrowded) return crowded;
  const strange = company.filter(({ hasStrangePeak }) => hasStrangePeak).length / count;
  return unclear > mostUnclear && strange > mostStrange ? Math.max(unclear, strange) : 0;
}

function cutNotes(moments: Moments, tuning: number): readonly HeardNote[] {
  const segments = mendSegments(segmentMoments(moments, tuning, segmentWeights), moments);
  return segments
    .map((segment, i) => describeNote(segment, segment.from - (segments[i - 1]?.to ?? -9) < 3, moments))
    .filter((note) => note.offset - note.onset > shortestNote && note.confidence > leastConfidence);
}

function nothing(problem: Problem): Hearing {
  return { notes: [], f0: { hop, midi: [] }, problems: [problem] };
}

/** The sounding range to expect of an instrument, null where it is unknown. */
export function expectRange(id: string | null): ExpectedRange | null {
  const instrument = id === null ? null : findInstrument(id);
  if (instrument === null) return null;
  const { low, high } = fullRange(instrument);
  return {
    low: pitchToMidi(writtenToSounding(instrument, low)),
    high: pitchToMidi(writtenToSounding(instrument, high)) + aboveRange,
  };
}
