// The one intermediate form of all notation. Everything that is printed, played or read aloud is a `Score` first; the
// writers (MusicXML, MIDI, text) know nothing else.
//
// What all parts share bar by bar (metre, repeats, sections, tempo, system breaks) stands in `Score.bars`; what a part
// plays stands in `Part.bars`, one for one. Pitches, keys and chord symbols are written, as the player reads them; the
// part's instrument leads to sound. Durations and offsets are exact fractions of a semibreve (whole note): a crotchet
// is 1/4. Beams and the accidentals shown are worked out by the writers from metre and key, and stand nowhere here.
//
// Make scores with the functions of create-score.ts; `findScoreFaults` says whether one is sound.

import type { Chord } from '../chord/chord.ts';
import type { NoteValue, TupletRatio } from '../duration/note-value.ts';
import type { Fraction } from '../fraction/fraction.ts';
import type { Clef, Instrument } from '../instrument/instrument.ts';
import type { Key } from '../key/key.ts';
import type { WrittenPitch } from '../pitch/pitch.ts';
import type { Metre } from '../rhythm/metre.ts';

export interface Score {
  /** Over the first system; empty for a snippet without a head. */
  readonly title: string;
  readonly subtitle: string | null;
  /** At the right under the title: composer, `Traditional`, or the student's name. */
  readonly credit: string | null;
  /** At the foot: rights, source, or how it was made. */
  readonly footer: string | null;
  readonly bars: readonly ScoreBar[];
  readonly parts: readonly Part[];
}

/** What all parts share in a bar. The fields of repeats are those `unfoldRepeats` reads. */
export interface ScoreBar {
  /** The number printed; 0 for a pickup bar and a free one. */
  readonly number: number;
  /** The metre in force. */
  readonly metre: Metre;
  /** How long the bar is: the metre's length, or less for a pickup and for the bar that completes it. */
  readonly length: Fraction;
  /** Notes to look at, not to count: the metre only holds them and is not printed, and the number is 0. */
  readonly isFree: boolean;
  /** The name, boxed over the bar, of the section that starts here. */
  readonly section: string | null;
  readonly repeatStart: boolean;
  readonly repeatEnd: boolean;
  /** Number of the ending that starts here; `endingSpans` says how far it reaches. */
  readonly ending: number | null;
  /** The line at the bar's end where no repeat stands: `final` for the end of a piece, `double` for the end of a section. */
  readonly barline: 'single' | 'double' | 'final';
  /** A tempo that starts with the bar. */
  readonly tempo: TempoMark | null;
  /** A feel that starts with the bar. */
  readonly swing: SwingMark | null;
  /** Whether the bar opens a new system; the first bar does in any case. */
  readonly startsSystem: boolean;
}

/** `Allegretto ♩ = 96`, or the words alone. */
export interface TempoMark {
  readonly unit: NoteValue;
  /** Units in a minute, above 0. */
  readonly perMinute: number;
  readonly text: string | null;
  /** False where only the words are printed and `perMinute` is for playback. */
  readonly isFigureShown: boolean;
}

/** How pairs of notes are played: `long` to `short`, whole numbers above 0; 1 to 1 is straight. */
export interface SwingMark {
  readonly long: number;
  readonly short: number;
  readonly unit: 'eighth' | '16th';
  /** Printed words, `Swing` or `Straight`; null prints nothing. */
  readonly text: string | null;
}

export interface Part {
  readonly instrument: Instrument;
  /** Before the first system; empty for none. */
  readonly name: string;
  /** Before the later systems; empty for none. */
  readonly abbreviation: string;
  /** Top down: a piano has two. */
  readonly staves: readonly Staff[];
  /** One for each of the score's bars. */
  readonly bars: readonly PartBar[];
}

/** `tablature` shows strings and frets of heads that carry both; `one-line` is for rhythm without pitch. */
export type Staff = 'five-line' | 'one-line' | 'tablature';

/** A clef by name: the instruments' own and those of percussion and tablature. */
export type ScoreClef = Clef | 'percussion' | 'tab';

export interface PartBar {
  /** Written key in force. */
  readonly key: Key;
  /** Clefs in force at the bar's start, one for each staff. */
  readonly clefs: readonly ScoreClef[];
  /** Clefs that come inside the bar, in order of time; each stands before a note of its staff's first voice. */
  readonly clefChanges: readonly ClefChange[];
  /** A staff without a voice in this bar is silent. Voices of one staff: upper first. */
  readonly voices: readonly Voice[];
  readonly chords: readonly ChordSymbol[];
  readonly directions: readonly Direction[];
}

/** One line of events; their durations add up to the bar. */
export interface Voice {
  /** The same from bar to bar for ties and slurs; from 1. */
  readonly id: number;
  /** From 1, top down. */
  readonly staff: number;
  readonly events: readonly ScoreEvent[];
}

export type ScoreEvent = NoteEvent | RestEvent | SlashEvent | HitEvent;

interface Timed {
  /** Real length, tuplets reckoned in. With `tuplet` it has exactly one written value (`eventValue`). */
  readonly duration: Fraction;
  readonly tuplet: TupletPlace | null;
}

/** Membership in a tuplet; it begins with a `start` and ends with an `end` in the same voice and bar. */
export interface TupletPlace extends TupletRatio {
  readonly at: 'start' | 'middle' | 'end';
}

/** A note, or several sounding together from the lowest up. */
export interface NoteEvent extends Timed {
  readonly kind: 'note';
  readonly heads: readonly NoteHead[];
  /** False for heads alone, whose length is not to be read. */
  readonly hasStem: boolean;
  readonly articulations: readonly Articulation[];
  readonly slur: SlurPlace;
  /** Under the staff: a note name, a syllable, a count. */
  readonly lyric: string | null;
  /** Slashed small notes before it. */
  readonly grace: readonly WrittenPitch[];
}

export interface NoteHead {
  readonly pitch: WrittenPitch;
  /** Held into the next event of the voice, which must have a head of the same pitch. */
  readonly isTied: boolean;
  /** `1`, `4`, `T`, valves `1-3`, slide position `4`; several for an alternative. */
  readonly fingering: string | null;
  /** Course, 1 the highest string. */
  readonly string: number | null;
  /** 0 is open. */
  readonly fret: number | null;
  /** Plucking finger: p i m a, or the bassist's i m. */
  readonly pluck: string | null;
  /** `ghost` stands in brackets. */
  readonly shape: 'normal' | 'cross' | 'ghost';
}

export interface RestEvent extends Timed {
  readonly kind: 'rest';
  /** Drawn as the centred whole-bar rest whatever the metre; then `duration` is the bar's length. */
  readonly isWholeBar: boolean;
  /** Holds its time without being drawn. */
  readonly isHidden: boolean;
}

/** Where the player makes it up: a beat slash, or with a stem a rhythm to be played on free notes. */
export interface SlashEvent extends Timed {
  readonly kind: 'slash';
  readonly hasStem: boolean;
  readonly articulations: readonly Articulation[];
  readonly isTied: boolean;
}

/** A sound without pitch: clapping, tapping, a drum. */
export interface HitEvent extends Timed {
  readonly kind: 'hit';
  /** Line or space as if in the treble clef; the middle line is B4. */
  readonly place: WrittenPitch;
  /** General MIDI percussion key, 35 to 81. */
  readonly drum: number;
  readonly shape: 'normal' | 'cross';
  readonly isTied: boolean;
  readonly articulations: readonly Articulation[];
  readonly lyric: string | null;
}

/** `start` opens a slur, `stop` closes it, `stop-start` closes one and opens the next. */
export type SlurPlace = 'start' | 'stop' | 'stop-start' | null;

export type Articulation =
  | 'staccato'
  | 'tenuto'
  | 'accent'
  | 'marcato'
  | 'staccatissimo'
  | 'fermata'
  | 'up-bow'
  | 'down-bow'
  | 'breath';

/** A chord over the staff, as written for the player. */
export interface ChordSymbol {
  /** From the bar's start. */
  readonly at: Fraction;
  /** null is N.C. */
  readonly chord: Chord | null;
}

export type Dynamic = 'pp' | 'p' | 'mp' | 'mf' | 'f' | 'ff' | 'fp' | 'sfz';

interface Placed {
  /** From the bar's start, up to its end. */
  readonly at: Fraction;
  /** From 1, top down. */
  readonly staff: number;
}

/** A clef from its place on, until the next one. */
export interface ClefChange extends Placed {
  readonly clef: ScoreClef;
}

/**
 * Text, dynamics and pedal at a place in the bar. A hairpin runs until the next `hairpin-end` of its staff. From
 * `octave-up` to `octave-end`, on a staff of one voice of the first part, untied notes are drawn an octave below their
 * pitches, under a line that says so (Verovio 6.3 misreads such lines elsewhere).
 */
export type Direction = Placed &
  (
    | {
        readonly kind: 'words';
        readonly text: string;
        readonly style: 'plain' | 'italic' | 'bold';
        readonly placement: 'above' | 'below';
      }
    | { readonly kind: 'dynamic'; readonly mark: Dynamic }
    | { readonly kind: 'hairpin'; readonly shape: 'crescendo' | 'diminuendo' }
    | { readonly kind: 'hairpin-end' }
    | { readonly kind: 'octave-up' }
    | { readonly kind: 'octave-end' }
    | { readonly kind: 'pedal'; readonly foot: 'down' | 'up' }
  );
