// The two questions of this folder: how is this note taken, and how does this line lie under the hand?

import type { Stage } from '#core';
import {
  fullRange,
  type Instrument,
  type InstrumentId,
  instrumentOf,
  isInRange,
  writtenToSounding,
} from '../instrument/instrument.ts';
import { pitchToMidi, type WrittenPitch } from '../pitch/pitch.ts';
import type { Fingering, FingeringOptions, KeyboardFingering, NoteFingering } from './fingering.ts';
import { isInFivePosition, pianoLineFingers } from './piano-line.ts';
import { pianoManualFingers } from './piano-scale.ts';
import { slideFingerings } from './slide.ts';
import { isStopped, sharedStringPosition, stringFingering, stringLine } from './string-line.ts';
import { valveFingerings } from './valves.ts';
import { woodwindFingerings } from './woodwind.ts';

function fingeringOn(
  instrument: Instrument,
  pitch: WrittenPitch,
  options: FingeringOptions,
): Fingering | null {
  if (!isInRange(fullRange(instrument), pitch)) return null;
  const stage = options.stage ?? 'beginner';
  if (isStopped(instrument)) return stringFingering(instrument, pitch, stage);
  const sounding = pitchToMidi(writtenToSounding(instrument, pitch));
  const [usual, ...alternates] = [
    ...valveFingerings(instrument, sounding, stage),
    ...slideFingerings(instrument, sounding),
    ...woodwindFingerings(instrument, pitchToMidi(pitch)),
  ];
  return usual === undefined ? null : { usual, alternates };
}

/**
 * How one written note is taken, the usual way and the others. Null where there is nothing to say: on the keyboard (any
 * finger takes any key), for mallets and voices, outside the instrument, or where our woodwind tables hold no fingering we
 * vouch for. Trumpet `F#4` → valve 2, or 1 2 3
 */
export function fingeringOf(
  instrumentId: InstrumentId,
  pitch: WrittenPitch,
  options: FingeringOptions = {},
): Fingering | null {
  return fingeringOn(instrumentOf(instrumentId), pitch, options);
}

function keyboardLine(
  pitches: readonly WrittenPitch[],
  options: FingeringOptions,
): readonly KeyboardFingering[] {
  const hand = options.hand ?? 'right';
  const fingers = pianoManualFingers(pitches, hand) ?? pianoLineFingers(pitches, hand);
  return fingers.map((finger) => ({ kind: 'keyboard', hand, finger }));
}

/**
 * How a whole line is taken, one entry for each pitch: on strings with string, finger and position chosen so that shifts,
 * stretches and crossings cost least over the whole; on the keyboard by the standard fingering where the line is a scale or
 * broken triad over octaves, else by an ergonomic model; on winds the usual fingering of each note. Null at a note that has
 * none (see {@link fingeringOf}). {@link fingeringMarks} turns an entry into what a score writes.
 */
export function fingerLine(
  instrumentId: InstrumentId,
  pitches: readonly WrittenPitch[],
  options: FingeringOptions = {},
): readonly (NoteFingering | null)[] {
  const instrument = instrumentOf(instrumentId);
  if (isStopped(instrument)) return stringLine(instrument, pitches, options.stage ?? 'beginner');
  if (instrument.id === 'piano') return keyboardLine(pitches, options);
  return pitches.map((pitch) => fingeringOn(instrument, pitch, options)?.usual ?? null);
}

/**
 * The lowest position in which a line lies under the hand with neither shift nor stretch, as far up as the stage goes; null
 * when there is none, or the instrument knows no positions. Guitar, beginner: C4 E4 G4 → 1; C4 E4 C6 → null
 */
export function sharedPosition(
  instrumentId: InstrumentId,
  pitches: readonly WrittenPitch[],
  stage: Stage,
): number | null {
  const instrument = instrumentOf(instrumentId);
  return isStopped(instrument) ? sharedStringPosition(instrument, pitches, stage) : null;
}

/**
 * Whether a line asks for no change of position at this stage: one position on strings, five keys under one hand on the
 * keyboard, always true elsewhere. For generators of lines that beginners can take in.
 */
export function isInOnePosition(
  instrumentId: InstrumentId,
  pitches: readonly WrittenPitch[],
  stage: Stage,
  hand: KeyboardFingering['hand'] = 'right',
): boolean {
  if (pitches.length === 0) return true;
  const instrument = instrumentOf(instrumentId);
  if (isStopped(instrument)) return sharedStringPosition(instrument, pitches, stage) !== null;
  return instrument.id !== 'piano' || isInFivePosition(pitches, hand);
}
