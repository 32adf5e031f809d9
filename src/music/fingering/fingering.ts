// How a written note is taken on an instrument: which valves, slide position, string and finger, key or holes.

import type { Stage } from '#core';

export interface ValveFingering {
  readonly kind: 'valves';
  /** Valves pressed, 1 to 4, rising; empty for an open note. */
  readonly valves: readonly number[];
  /** The B flat side of a double horn, which the thumb opens. */
  readonly thumb: boolean;
  /** Which note of the harmonic series sounds; the fundamental is 1. */
  readonly partial: number;
  /** How far the partial and the tubes lie from equal temperament before the lips or a slide mend it. */
  readonly cents: number;
}

export interface SlideFingering {
  readonly kind: 'slide';
  /** 1 closed, 7 furthest out. */
  readonly position: number;
  /** Held a little shorter than the position, for the seventh partial is flat. */
  readonly raised: boolean;
  /** With the F attachment. */
  readonly trigger: boolean;
  readonly partial: number;
  readonly cents: number;
}

/** 0 is the open string. The thumb stops strings only on cello and double bass. */
export type StringFinger = 0 | 1 | 2 | 3 | 4 | 'thumb';

export interface StringFingering {
  readonly kind: 'fretted' | 'bowed';
  /** Counted from the highest, which is 1; on the ukulele the A string is 1 and the re-entrant G string 4. */
  readonly string: number;
  /** Semitones above the open string: the fret, where there are frets. */
  readonly stop: number;
  readonly finger: StringFinger;
  /**
   * Where the hand lies. Fretted: the fret of the first finger. Bowed: the name players give it (first is 1, half
   * position 0.5, between two positions on the double bass 2.5); an open string has that of the notes around it.
   */
  readonly position: number;
  /** Reached by stretching out of the hand's frame. */
  readonly stretch: boolean;
}

export interface KeyboardFingering {
  readonly kind: 'keyboard';
  readonly hand: 'right' | 'left';
  /** 1 is the thumb. */
  readonly finger: number;
}

export interface HoleFingering {
  readonly kind: 'holes';
  /** Names of the holes covered and keys pressed, as the instrument's own layout calls them: `T`, `1` to `7`, `Eb`. */
  readonly pressed: readonly string[];
  /** Those only half covered, or pinched by the thumb. */
  readonly half: readonly string[];
}

export type NoteFingering =
  | ValveFingering
  | SlideFingering
  | StringFingering
  | KeyboardFingering
  | HoleFingering;

/** All ways to take one note, the usual one apart. */
export interface Fingering {
  readonly usual: NoteFingering;
  /** Better known first. */
  readonly alternates: readonly NoteFingering[];
}

/** What decides between fingerings that are all right. */
export interface FingeringOptions {
  /** How high the hand may go, whether it stretches, which side of a horn is usual. Beginner if absent. */
  readonly stage?: Stage;
  /** Keyboard only: right if absent. */
  readonly hand?: KeyboardFingering['hand'];
}

/** What a score writes at the note: MusicXML `<fingering>`, `<string>` and `<fret>`. Null where there is nothing. */
export interface FingeringMarks {
  readonly fingering: string | null;
  readonly string: number | null;
  readonly fret: number | null;
}

/**
 * The marks of a fingering. Trumpet E4 → fingering `12`; guitar C4 → fingering `3`, string 5, fret 3; an open brass note
 * and an open string → `0`. Holes have none: they are drawn, not written.
 */
export function fingeringMarks(note: NoteFingering): FingeringMarks {
  const none = { fingering: null, string: null, fret: null };
  switch (note.kind) {
    case 'valves': {
      const valves = note.valves.length === 0 ? '0' : note.valves.join('');
      return { ...none, fingering: (note.thumb ? 'T' : '') + valves };
    }
    case 'slide':
      return { ...none, fingering: `${note.trigger ? 'T' : ''}${note.position}${note.raised ? '+' : ''}` };
    case 'keyboard':
      return { ...none, fingering: String(note.finger) };
    case 'fretted':
      return { fingering: String(note.finger), string: note.string, fret: note.stop };
    case 'bowed':
      return {
        fingering: note.finger === 'thumb' ? 'T' : String(note.finger),
        string: note.string,
        fret: null,
      };
    case 'holes':
      return none;
  }
}
