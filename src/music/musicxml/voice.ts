// One voice of one bar: its events in order, with chords, words and dynamics where they fall.

import { compare, type Fraction, minus, plus, zero } from '../fraction/fraction.ts';
import { keyFifths, signatureAlters } from '../key/key.ts';
import { formatPitch, type Pitch, type WrittenPitch } from '../pitch/pitch.ts';
import { type Beam, beamEvents } from '../rhythm/beams.ts';
import type { Metre } from '../rhythm/metre.ts';
import type { Direction, PartBar, ScoreClef, ScoreEvent, Staff, Voice } from '../score/score.ts';
import { writeClefChange } from './attributes.ts';
import { isBetweenNotes, writeDirection } from './direction.ts';
import { toDivisions } from './divisions.ts';
import { writeEventNotes } from './note.ts';
import type { ShownAccidental } from './shown-accidentals.ts';

/** Something to write at a place in the bar, given how many divisions it lies from where the writer stands. */
export interface Cue {
  readonly at: Fraction;
  readonly write: (offset: number) => string;
}

/** What a voice's notes need to know of their part and bar. */
export interface VoicePlace {
  readonly partId: string;
  readonly staves: readonly Staff[];
  readonly bar: PartBar;
  readonly metre: Metre;
  /** How far into the metre the bar starts. */
  readonly offset: Fraction;
  readonly divisions: number;
  /** The voice's last event in the bar before. */
  readonly before: ScoreEvent | undefined;
  /** By `event:head`. */
  readonly accidental: (key: string) => ShownAccidental | null;
}

/** The natural on each clef's middle line: where slashes sit. */
const middleLines: Readonly<Record<ScoreClef, Pitch>> = {
  treble: { letter: 'B', alter: 0, octave: 4 },
  treble_8: { letter: 'B', alter: 0, octave: 3 },
  bass: { letter: 'D', alter: 0, octave: 3 },
  alto: { letter: 'C', alter: 0, octave: 4 },
  tenor: { letter: 'A', alter: 0, octave: 3 },
  percussion: { letter: 'B', alter: 0, octave: 4 },
  tab: { letter: 'B', alter: 0, octave: 4 },
};

/** The middle line as the signature has it, so that no accidental is called for. */
function middleOf(bar: PartBar, staff: number): Pitch {
  const line = middleLines[bar.clefs[staff - 1] ?? 'treble'];
  return { ...line, alter: signatureAlters(keyFifths(bar.key))[line.letter] };
}

/** Whether an event holds a pitch into the next; null asks for a slash or hit. */
export function holds(event: ScoreEvent | undefined, pitch: WrittenPitch | null): boolean {
  if (event === undefined || event.kind === 'rest') return false;
  if (event.kind !== 'note') return pitch === null && event.isTied;
  if (pitch === null) return false;
  const name = formatPitch(pitch);
  return event.heads.some((head) => head.isTied && formatPitch(head.pitch) === name);
}

/** Which events lie in tuplets without one beam over all of them. */
function bracketed(events: readonly ScoreEvent[], beams: readonly (readonly Beam[])[]): readonly boolean[] {
  const needs = events.map(() => false);
  let start = 0;
  events.forEach((event, i) => {
    if (event.tuplet?.at === 'start') start = i;
    if (event.tuplet?.at !== 'end') return;
    const [first, ...rest] = beams.slice(start, i + 1).map(([outer]) => outer);
    const last = rest.pop();
    const isJoined = first === 'begin' && last === 'end' && rest.every((beam) => beam === 'continue');
    needs.fill(!isJoined, start, i + 1);
  });
  return needs;
}

/** The voice's events as lines of XML. Takes from `cues` what falls before the bar's end, in their order. */
export function writeVoice(voice: Voice, place: VoicePlace, cues: Cue[]): readonly string[] {
  const { events, staff } = voice;
  const kind = place.staves[staff - 1];
  const isOneStaff = place.staves.length === 1;
  // Under a staff with the rhythm, tablature shows places only.
  const isBare = kind === 'tablature' && !isOneStaff;
  const beams = isBare ? [] : beamEvents(place.metre, events, place.offset);
  const brackets = isBare ? [] : bracketed(events, beams);
  const lines: string[] = [];
  const isFirstVoice = place.bar.voices.find((other) => other.staff === staff)?.id === voice.id;
  const octaves = isFirstVoice
    ? place.bar.directions.filter((direction) => direction.staff === staff && !isBetweenNotes(direction))
    : [];
  const writeOctaves = (kind: Direction['kind'], time: Fraction) => {
    for (const direction of octaves)
      if (direction.kind === kind && compare(direction.at, time) === 0)
        lines.push(writeDirection(direction, 0, isOneStaff));
  };
  const changes = isFirstVoice ? place.bar.clefChanges.filter((change) => change.staff === staff) : [];
  let at = zero;
  events.forEach((event, e) => {
    const start = at;
    for (const change of changes)
      if (compare(change.at, start) === 0) lines.push(writeClefChange(change, isOneStaff));
    writeOctaves('octave-up', start);
    at = plus(at, event.duration);
    const isLast = e === events.length - 1;
    for (let cue = cues[0]; cue !== undefined && (isLast || compare(cue.at, at) < 0); cue = cues[0]) {
      lines.push(cue.write(toDivisions(minus(cue.at, start), place.divisions)));
      cues.shift();
    }
    const previous = e === 0 ? place.before : events[e - 1];
    lines.push(
      writeEventNotes(event, {
        duration: toDivisions(event.duration, place.divisions),
        voice: voice.id,
        staff: isOneStaff ? null : staff,
        beams: beams[e] ?? [],
        isHeld: (pitch) => holds(previous, pitch),
        accidental: (head) => (kind === 'tablature' ? null : place.accidental(`${e}:${head}`)),
        middle: middleOf(place.bar, staff),
        isBracketed: brackets[e] ?? false,
        isStemless: isBare,
        drumId: (drum) => `${place.partId}-D${drum}`,
        isOneLine: kind === 'one-line',
      }),
    );
    writeOctaves('octave-end', at);
  });
  return lines;
}
