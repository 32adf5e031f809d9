// A part bar by bar: attributes, directions and chords where they fall, voices one after another.

import { compare, type Fraction, minus, plus, zero } from '../fraction/fraction.ts';
import { keyFifths, signatureAlters } from '../key/key.ts';
import { formatPitch, type Pitch, type WrittenPitch } from '../pitch/pitch.ts';
import { beamEvents } from '../rhythm/beams.ts';
import { barOffsets, type EndingSpan, endingSpans } from '../score/bar-places.ts';
import { barRest } from '../score/create-score.ts';
import type { Part, PartBar, Score, ScoreBar, ScoreClef, ScoreEvent, Voice } from '../score/score.ts';
import { type Situation, writeAttributes } from './attributes.ts';
import { writeDirection, writeFrameDirections } from './direction.ts';
import { divisionsOf, toDivisions } from './divisions.ts';
import { element } from './element.ts';
import { writeHarmony } from './harmony.ts';
import { type NotePlace, writeEventNotes } from './note.ts';
import { createAccidentals } from './shown-accidentals.ts';

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

/** Something to write at a place in the bar, given how many divisions it lies from where the writer stands. */
interface Cue {
  readonly at: Fraction;
  readonly write: (offset: number) => string;
}

/** Chords first: they belong above words at the same place. */
function cuesOf(bar: PartBar, isOneStaff: boolean): readonly Cue[] {
  const chords = bar.chords.map(({ at, chord }) => ({
    at,
    write: (offset: number) => writeHarmony(chord, offset, isOneStaff ? null : 1),
  }));
  const directions = bar.directions.map((direction) => ({
    at: direction.at,
    write: (offset: number) => writeDirection(direction, offset, isOneStaff),
  }));
  return [...directions, ...chords].sort((a, b) => compare(a.at, b.at));
}

/** Whether the event, from its tied heads, holds a pitch on; null asks for a slash or hit. */
function holds(event: ScoreEvent | undefined, pitch: WrittenPitch | null): boolean {
  if (event === undefined || event.kind === 'rest') return false;
  if (event.kind !== 'note') return pitch === null && event.isTied;
  if (pitch === null) return false;
  const name = formatPitch(pitch);
  return event.heads.some((head) => head.isTied && formatPitch(head.pitch) === name);
}

/** Which events lie in tuplets without a beam over all of them. */
function bracketed(events: readonly ScoreEvent[], beams: readonly (readonly string[])[]): readonly boolean[] {
  const needs = events.map(() => false);
  let start = 0;
  events.forEach((event, i) => {
    if (event.tuplet?.at === 'start') start = i;
    if (event.tuplet?.at !== 'end') return;
    const inside = beams.slice(start, i + 1).map(([outer]) => outer);
    const isJoined =
      inside[0] === 'begin' &&
      inside.at(-1) === 'end' &&
      inside.slice(1, -1).every((beam) => beam === 'continue');
    needs.fill(!isJoined, start, i + 1);
  });
  return needs;
}

interface BarPlace {
  readonly frame: ScoreBar;
  readonly offset: Fraction;
  readonly divisions: number;
}

/** Every voice of the bar; a staff without one rests. Ids of added rests lie above those in use. */
function voicesOf(part: Part, bar: PartBar, length: Fraction): readonly Voice[] {
  const silent = part.staves.flatMap((_, i) =>
    bar.voices.some(({ staff }) => staff === i + 1)
      ? []
      : [{ id: 100 + i, staff: i + 1, events: [barRest(length)] }],
  );
  return [...bar.voices, ...silent].sort((a, b) => a.staff - b.staff || a.id - b.id);
}

function writeBarline(
  frame: ScoreBar,
  place: number,
  endings: readonly EndingSpan[],
  side: 'left' | 'right',
) {
  const ending = endings.find(({ first, last }) => place === (side === 'left' ? first : last));
  const isRepeat = side === 'left' ? frame.repeatStart : frame.repeatEnd;
  const styles = { single: null, double: 'light-light', final: 'light-heavy' } as const;
  const style = isRepeat
    ? side === 'left'
      ? 'heavy-light'
      : 'light-heavy'
    : side === 'left'
      ? null
      : styles[frame.barline];
  const endingType = side === 'left' ? 'start' : ending?.isClosed === true ? 'stop' : 'discontinue';
  const inside = [
    style === null ? '' : `<bar-style>${style}</bar-style>`,
    ending === undefined
      ? ''
      : element(
          'ending',
          { number: ending.number, type: endingType },
          side === 'left' ? `${ending.number}.` : '',
        ),
    isRepeat ? element('repeat', { direction: side === 'left' ? 'forward' : 'backward' }) : '',
  ].join('');
  return inside === '' ? [] : [element('barline', { location: side }, inside)];
}

/** A part of the score as `<part>`. `isFirst`: the top part carries what belongs to the whole score. */
export function writePart(score: Score, part: Part, id: string, isFirst: boolean): string {
  const divisions = divisionsOf(part, score.bars);
  const offsets = barOffsets(score.bars);
  const endings = endingSpans(score.bars);
  const accidentals = createAccidentals();
  const isOneStaff = part.staves.length === 1;
  /** The last event of each voice in the bar before: what ties lead from. */
  let lastEvents = new Map<number, ScoreEvent>();
  let before: Situation | null = null;

  const writeVoice = (
    voice: Voice,
    v: number,
    bar: PartBar,
    place: BarPlace,
    cues: Cue[],
    shown: ReturnType<typeof accidentals>,
  ) => {
    const { frame, offset } = place;
    const beams = beamEvents(frame.metre, voice.events, offset);
    const brackets = bracketed(voice.events, beams);
    const clef = bar.clefs[voice.staff - 1] ?? 'treble';
    const line = middleLines[clef];
    const middle = { ...line, alter: signatureAlters(keyFifths(bar.key))[line.letter] };
    let at = zero;
    return voice.events.flatMap((event, e) => {
      const start = at;
      at = plus(at, event.duration);
      const xml: string[] = [];
      // A cue inside the event is written before it, with the way still to go.
      while (cues[0] !== undefined && (compare(cues[0].at, at) < 0 || e === voice.events.length - 1)) {
        const cue = cues.shift();
        if (cue !== undefined) xml.push(cue.write(toDivisions(minus(cue.at, start), divisions)));
      }
      const previous = e === 0 ? lastEvents.get(voice.id) : voice.events[e - 1];
      const notePlace: NotePlace = {
        duration: toDivisions(event.duration, divisions),
        voice: voice.id,
        staff: isOneStaff ? null : voice.staff,
        beams: beams[e] ?? [],
        isHeld: (pitch) => holds(previous, pitch),
        accidental: (head) => shown.get(`${v}:${e}:${head}`) ?? null,
        middle,
        isBracketed: brackets[e] ?? false,
        drumId: (drum) => `${id}-D${drum}`,
        isOneLine: part.staves[voice.staff - 1] === 'one-line',
      };
      xml.push(writeEventNotes(event, notePlace));
      return xml;
    });
  };

  const measures = part.bars.flatMap((bar, i) => {
    const frame = score.bars[i];
    if (frame === undefined) return [];
    const place = { frame, offset: offsets[i] ?? zero, divisions };
    const now = { frame, bar };
    const voices = voicesOf(part, bar, frame.length);
    const shown = accidentals({ ...bar, voices }, (voice, pitch) => holds(lastEvents.get(voice.id), pitch));
    const cues = [...cuesOf(bar, isOneStaff)];
    const backup = element('backup', {}, `<duration>${toDivisions(frame.length, divisions)}</duration>`);
    const music = voices.flatMap((voice, v) => [
      ...(v === 0 ? [] : [backup]),
      ...writeVoice(voice, v, bar, place, cues, shown),
    ]);
    const attributes = writeAttributes(part, divisions, now, before);
    const xml = [
      frame.startsSystem && i > 0 ? element('print', { 'new-system': 'yes' }) : '',
      attributes,
      ...writeBarline(frame, i, endings, 'left'),
      isFirst ? writeFrameDirections(frame) : '',
      ...music,
      ...writeBarline(frame, i, endings, 'right'),
    ].filter((line) => line !== '');
    before = now;
    lastEvents = new Map(
      voices.flatMap((voice) => {
        const last = voice.events.at(-1);
        return last === undefined ? [] : [[voice.id, last]];
      }),
    );
    const isShort = compare(frame.length, zero) > 0 && frame.number === 0;
    return [
      element('measure', { number: frame.number, implicit: isShort ? 'yes' : null }, `\n${xml.join('\n')}\n`),
    ];
  });
  return element('part', { id }, `\n${measures.join('\n')}\n`);
}
