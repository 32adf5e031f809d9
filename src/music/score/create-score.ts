// Makes the pieces of a score, each with its usual values, so that a generator names only what it means.

import { present } from '#core';
import type { Chord } from '../chord/chord.ts';
import { durationToValue, type NoteValue, type TupletRatio } from '../duration/note-value.ts';
import { type Fraction, fraction, times, zero } from '../fraction/fraction.ts';
import type { Instrument } from '../instrument/instrument.ts';
import type { WrittenPitch } from '../pitch/pitch.ts';
import { written } from '../pitch/pitch.ts';
import { barLength, createMetre, type Metre } from '../rhythm/metre.ts';
import type {
  ChordSymbol,
  Direction,
  Dynamic,
  HitEvent,
  NoteEvent,
  NoteHead,
  Part,
  PartBar,
  RestEvent,
  Score,
  ScoreBar,
  ScoreEvent,
  SlashEvent,
  Staff,
  SwingMark,
  TempoMark,
  TupletPlace,
} from './score.ts';

/** A note of one pitch, with whatever marks its head or event carries. `note(pitch, fraction(1, 4), { fingering: '2' })` */
export function note(
  pitch: WrittenPitch,
  duration: Fraction,
  marks: Partial<Omit<NoteEvent, 'kind' | 'heads' | 'duration'> & Omit<NoteHead, 'pitch'>> = {},
): NoteEvent {
  const { isTied, fingering, string, fret, pluck, shape, ...rest } = marks;
  const head = noteHead(pitch, {
    isTied: isTied ?? false,
    fingering: fingering ?? null,
    string: string ?? null,
    fret: fret ?? null,
    pluck: pluck ?? null,
    shape: shape ?? 'normal',
  });
  return notes([head], duration, rest);
}

/** One head of a chord, or of a note. */
export function noteHead(pitch: WrittenPitch, marks: Partial<Omit<NoteHead, 'pitch'>> = {}): NoteHead {
  return {
    pitch,
    isTied: false,
    fingering: null,
    string: null,
    fret: null,
    pluck: null,
    shape: 'normal',
    ...marks,
  };
}

/** Several heads sounding together, from the lowest up. */
export function notes(
  heads: readonly NoteHead[],
  duration: Fraction,
  marks: Partial<Omit<NoteEvent, 'kind' | 'heads' | 'duration'>> = {},
): NoteEvent {
  return {
    kind: 'note',
    heads,
    duration,
    tuplet: null,
    hasStem: true,
    articulations: [],
    slur: null,
    lyric: null,
    grace: [],
    ...marks,
  };
}

/** A rest of a written value. */
export function rest(duration: Fraction, marks: { readonly isHidden?: boolean } = {}): RestEvent {
  return { kind: 'rest', duration, tuplet: null, isWholeBar: false, isHidden: false, ...marks };
}

/** The rest that fills a bar, whatever its length. */
export function barRest(length: Fraction): RestEvent {
  return { ...rest(length), isWholeBar: true };
}

/** A slash: where the player improvises, or with `hasStem` the rhythm to improvise on. */
export function slash(
  duration: Fraction,
  marks: Partial<Omit<SlashEvent, 'kind' | 'duration'>> = {},
): SlashEvent {
  return {
    kind: 'slash',
    duration,
    tuplet: null,
    hasStem: false,
    articulations: [],
    isTied: false,
    ...marks,
  };
}

const middleLine = written({ letter: 'B', alter: 0, octave: 4 });
/** General MIDI percussion key of a low wood block: a plain click for rhythms without pitch. */
const woodBlock = 77;

/** A clap, tap or drum on the middle line, heard as a wood block unless told otherwise. */
export function hit(duration: Fraction, marks: Partial<Omit<HitEvent, 'kind' | 'duration'>> = {}): HitEvent {
  return {
    kind: 'hit',
    duration,
    tuplet: null,
    place: middleLine,
    drum: woodBlock,
    shape: 'normal',
    isTied: false,
    articulations: [],
    lyric: null,
    ...marks,
  };
}

/**
 * Events given at their written lengths, squeezed into a tuplet. `tuplet({ actual: 3, normal: 2 }, three quavers)` fills a
 * crotchet. At least two events.
 */
export function tuplet<E extends ScoreEvent>(ratio: TupletRatio, events: readonly E[]): readonly E[] {
  const scale = fraction(ratio.normal, ratio.actual);
  return events.map((event, i) => {
    const at: TupletPlace['at'] = i === 0 ? 'start' : i === events.length - 1 ? 'end' : 'middle';
    return { ...event, duration: times(event.duration, scale), tuplet: { ...ratio, at } };
  });
}

/** A chord symbol at a place in the bar; null is N.C. */
export function chordSymbol(chord: Chord | null, at: Fraction = zero): ChordSymbol {
  return { at, chord };
}

/** Words over the staff, such as *your turn*. */
export function words(
  text: string,
  place: {
    readonly at?: Fraction;
    readonly staff?: number;
    readonly style?: 'plain' | 'italic' | 'bold';
    readonly placement?: 'above' | 'below';
  } = {},
): Direction {
  return { kind: 'words', text, at: zero, staff: 1, style: 'plain', placement: 'above', ...place };
}

/** A dynamic under the staff. */
export function dynamic(
  mark: Dynamic,
  place: { readonly at?: Fraction; readonly staff?: number } = {},
): Direction {
  return { kind: 'dynamic', mark, at: zero, staff: 1, ...place };
}

/** A tempo, figure shown. `tempoMark(96, { type: 'quarter', dots: 0 }, 'Allegretto')` */
export function tempoMark(
  perMinute: number,
  unit: NoteValue = { type: 'quarter', dots: 0 },
  text: string | null = null,
): TempoMark {
  return { unit, perMinute, text, isFigureShown: true };
}

/** Swung quavers, 2 to 1 unless told otherwise. */
export function swingMark(marks: Partial<SwingMark> = {}): SwingMark {
  return { long: 2, short: 1, unit: 'eighth', text: 'Swing', ...marks };
}

/** A full bar of the frame. `scoreBar(1, metre, { section: 'A' })` */
export function scoreBar(
  number: number,
  metre: Metre,
  marks: Partial<Omit<ScoreBar, 'number' | 'metre'>> = {},
): ScoreBar {
  return {
    number,
    metre,
    length: barLength(metre),
    isFree: false,
    section: null,
    repeatStart: false,
    repeatEnd: false,
    ending: null,
    barline: 'single',
    tempo: null,
    swing: null,
    startsSystem: false,
    ...marks,
  };
}

/** A bar of so many notes out of time, as crotchets without stems. */
export function freeBar(count: number, marks: Partial<Omit<ScoreBar, 'number' | 'metre'>> = {}): ScoreBar {
  return scoreBar(0, createMetre(count, 4), { isFree: true, ...marks });
}

/** A bar of one voice on one staff. */
export function partBar(
  place: Pick<PartBar, 'key'> & Partial<Pick<PartBar, 'clefs' | 'clefChanges' | 'chords' | 'directions'>>,
  events: readonly ScoreEvent[],
): PartBar {
  return {
    key: place.key,
    clefs: place.clefs ?? ['treble'],
    clefChanges: place.clefChanges ?? [],
    voices: [{ id: 1, staff: 1, events }],
    chords: place.chords ?? [],
    directions: place.directions ?? [],
  };
}

/** A part of one five-line staff without a printed name, unless told otherwise. */
export function part(
  instrument: Instrument,
  bars: readonly PartBar[],
  marks: Partial<{ name: string; abbreviation: string; staves: readonly Staff[] }> = {},
): Part {
  return { instrument, name: '', abbreviation: '', staves: ['five-line'], bars, ...marks };
}

/** A score; `bars` and every part's bars run one for one. */
export function createScore(
  frame: { readonly bars: readonly ScoreBar[]; readonly parts: readonly Part[] } & Partial<
    Pick<Score, 'title' | 'subtitle' | 'credit' | 'footer'>
  >,
): Score {
  return { title: '', subtitle: null, credit: null, footer: null, ...frame };
}

/**
 * Opens a system after at most `count` bars; a pickup rides along, and a section starts afresh. Where a section does not
 * fill its systems, all of them get nearly the same: six bars stand as three and three, not as four and a stretched pair;
 * only the last of the score, which is not stretched, may be shorter. An existing `startsSystem` is kept.
 */
export function withSystems(score: Score, count: number): Score {
  const opens = (i: number): boolean => {
    const bar = score.bars[i];
    return i === 0 || bar?.startsSystem === true || (bar?.section != null && score.bars[i - 1]?.number !== 0);
  };
  let left = 0;
  let systems = 0;
  let filled = 0;
  const bars = score.bars.map((bar, i) => {
    const isSection = opens(i);
    if (isSection) {
      let end = i + 1;
      while (end < score.bars.length && !opens(end)) end++;
      left = end - i - (bar.number === 0 ? 1 : 0);
      systems = end === score.bars.length ? Number.POSITIVE_INFINITY : Math.ceil(left / count);
      filled = 0;
    }
    const room = Number.isFinite(systems) ? Math.ceil(left / systems) : count;
    const startsSystem = isSection || filled >= room;
    if (startsSystem && !isSection) {
      left -= filled;
      systems--;
      filled = 0;
    }
    if (bar.number !== 0) filled++;
    return { ...bar, startsSystem };
  });
  return { ...score, bars };
}

/**
 * The part with a tablature staff under its first one: the same notes by string and fret. Notes without both are left
 * out by engravers, so every head should carry them.
 */
export function withTablature(part: Part): Part {
  const staff = part.staves.length + 1;
  const bars = part.bars.map((bar) => {
    const copies = bar.voices
      .filter((voice) => voice.staff === 1)
      .map((voice) => ({ ...voice, id: voice.id + 50, staff, events: voice.events.map(bareEvent) }));
    return { ...bar, clefs: [...bar.clefs, 'tab' as const], voices: [...bar.voices, ...copies] };
  });
  return { ...part, staves: [...part.staves, 'tablature'], bars };
}

/** The event with strings and frets only: all other marks stand on the staff above. */
function bareEvent(event: ScoreEvent): ScoreEvent {
  if (event.kind !== 'note') return event;
  const heads = event.heads.map((head) => ({ ...head, fingering: null, pluck: null }));
  return { ...event, heads, articulations: [], slur: null, lyric: null, grace: [] };
}

/** The written value of an event that is no whole-bar rest. */
export function eventValue(event: ScoreEvent): NoteValue {
  return present(durationToValue(event.duration, event.tuplet), 'a duration with a written value');
}
