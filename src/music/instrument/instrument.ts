// What a student plays: the id that everything else (range, clef, transposition, fingering, sound) hangs on.

import { present, type Stage } from '#core';
import { type Interval, invertDirection, transposePitch } from '../pitch/interval.ts';
import {
  letters,
  type Pitch,
  parsePitch,
  pitchToMidi,
  type SoundingPitch,
  sounding,
  staffStep,
  type WrittenPitch,
  written,
} from '../pitch/pitch.ts';
import { instruments } from './instrument.data.ts';

export type Instrument = (typeof instruments)[number];
export type InstrumentId = Instrument['id'];
export type InstrumentFamily = Instrument['family'];
export type Clef = Instrument['clefs'][number];

/** Lowest and highest written pitch, both included. */
export interface WrittenRange {
  readonly low: WrittenPitch;
  readonly high: WrittenPitch;
}

const instrumentsById = new Map<string, Instrument>(instruments.map((i) => [i.id, i]));

/** The instrument with this id, or null. `findInstrument('alto_sax')?.name` → `Alto saxophone` */
export function findInstrument(id: string): Instrument | null {
  return instrumentsById.get(id) ?? null;
}

/** The instrument with this id, which the type already promises. */
export function instrumentOf(id: InstrumentId): Instrument {
  return present(instrumentsById.get(id), 'the instrument of a known id');
}

/** All instruments, in score order within each family. */
export function listInstruments(): readonly Instrument[] {
  return instruments;
}

/** From written to sounding pitch, octaves included. Alto saxophone → a major sixth down */
export function transpositionOf(instrument: Instrument): Interval {
  const [diatonic, chromatic, octaves] = instrument.transpose;
  return { diatonic: diatonic + 7 * octaves, chromatic: chromatic + 12 * octaves };
}

/** What is heard when the written pitch is played. Alto saxophone `F#5` → `A4` */
export function writtenToSounding(instrument: Instrument, pitch: WrittenPitch): SoundingPitch {
  return sounding(transposePitch(pitch, transpositionOf(instrument)));
}

/** What to write for a pitch to be heard. Horn in F `Eb4` → `Bb4` */
export function soundingToWritten(instrument: Instrument, pitch: SoundingPitch): WrittenPitch {
  return written(transposePitch(pitch, invertDirection(transpositionOf(instrument))));
}

function readRange(text: string): WrittenRange {
  const [low, high] = text.split(' ');
  return {
    low: written(present(parsePitch(low ?? ''), 'what the table holds')),
    high: written(present(parsePitch(high ?? ''), 'what the table holds')),
  };
}

/** The natural note half-way, in letter steps, from `from` to `to`. */
function halfWay(from: Pitch, to: Pitch, towards: 'up' | 'down'): WrittenPitch {
  if (pitchToMidi(from) === pitchToMidi(to)) return written(from);
  const middle = (staffStep(from) + staffStep(to)) / 2;
  const step = towards === 'up' ? Math.floor(middle) : Math.ceil(middle);
  if (step === staffStep(from)) return written(from);
  const octave = Math.floor(step / 7);
  return written({
    letter: present(letters[step - 7 * octave], 'what the table holds'),
    alter: 0,
    octave,
  });
}

/**
 * What a student of this stage can be asked to play, written. Elementary lies half-way from beginner to intermediate
 * (common practice, no source).
 */
export function rangeAtStage(instrument: Instrument, stage: Stage): WrittenRange {
  if (stage !== 'elementary') return readRange(instrument.stages[stage]);
  const beginner = readRange(instrument.stages.beginner);
  const next = readRange(instrument.stages.intermediate);
  return { low: halfWay(beginner.low, next.low, 'down'), high: halfWay(beginner.high, next.high, 'up') };
}

/** The whole written range of the instrument, from handbooks. */
export function fullRange(instrument: Instrument): WrittenRange {
  return readRange(instrument.range);
}

/** Whether a written pitch lies inside a range, by how it sounds. */
export function isInRange(range: WrittenRange, pitch: WrittenPitch): boolean {
  const midi = pitchToMidi(pitch);
  return midi >= pitchToMidi(range.low) && midi <= pitchToMidi(range.high);
}

/** Sounding open strings, in the order of the courses (the ukulele's is re-entrant); empty without strings. */
export function openStrings(instrument: Instrument): readonly SoundingPitch[] {
  if (instrument.strings === null) return [];
  return instrument.strings
    .split(' ')
    .map((name) => sounding(present(parsePitch(name), 'what the table holds')));
}
