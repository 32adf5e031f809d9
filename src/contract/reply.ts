// What the server answers to a command: what was done, or why not in words a teacher can act on.

import type { Id } from '#core';

export interface CommandReply {
  readonly change: Id<'change'>;
  /** What was done, as a sentence: "Closed Ana's lesson of 12 May". */
  readonly label: string;
  /** Courses whose plan changed, with their new revision. */
  readonly courses: readonly {
    readonly course: Id<'course'>;
    readonly revision: number;
    readonly moved: number;
  }[];
  /** Sentences worth telling: "Kept both versions of the note". */
  readonly notices: readonly string[];
  /** Only a running clock was kept: nothing that a person did. */
  readonly clockOnly?: true;
  /** Of a text that was written: what became of it. */
  readonly wrote?: WrittenText;
}

/** What became of a text that was written: the window that typed it goes on from here. */
export interface WrittenText {
  /** The text that the studio had once it was written. */
  readonly text: string;
  /** The text as it was sent, where it is another. */
  readonly typed?: string;
  /** What the studio had before, where others had written meanwhile. */
  readonly over?: string;
}

/**
 * Why a request was refused. `kind` is for the program, `message` says what, where and how to mend it, `field` points
 * into the request where one field is at fault.
 */
export interface Fault {
  readonly kind:
    | 'Invalid'
    | 'NotFound'
    | 'ChangedElsewhere'
    | 'NotAllowedNow'
    | 'NotEmpty'
    | 'NotSignedIn'
    | 'TooLarge'
    /** What the studio is kept on is full or fails: the same may be sent again once that is mended. */
    | 'CannotKeep'
    | 'Broken';
  readonly message: string;
  readonly field?: string;
  /** More than one thing to mend. */
  readonly details?: readonly string[];
  /** Of an undo: the changes that have to be taken back, newest first, it itself as the last. */
  readonly takeBack?: readonly Id<'change'>[];
}
export interface FaultReply {
  readonly fault: Fault;
}

/**
 * A header of every answer: how many changes the live line had told of when the server began on it. Where the line has told of
 * more since, the answer may be older than they are.
 */
export const toldHeader = 'levare-told';
