// Erasing a student for good: what is sent, and what a screen says before it is.

import { z } from 'zod';
import type { Id, PlainDate } from '#core';
import { idOf, seen } from './field.ts';

/** Names that a teacher may add to those Levare looks for. */
export const mostOtherNames = 5;
/** Those names, in a command and in an address: `?called=Nana&called=…`. */
export const otherNamesSchema = z
  .array(z.string().trim().min(2, 'must have two letters or more').max(120))
  .max(mostOtherNames);

export const eraseCommand = z.strictObject({
  type: z.literal('student.erase'),
  seen,
  student: idOf('student'),
  /** The student's name as it was typed by hand, so that nobody is erased by a slip. */
  name: z.string().max(200),
  /** Other names by which notes call the student. */
  called: otherNamesSchema,
  /** Places of `ErasureView.mentions` that stay as they are: what stands there is not about this student. */
  keep: z.array(z.string().max(120)).max(2000),
  /** Also in the copies that lie beside the studio. */
  copies: z.boolean(),
});

/** What erasing a student would come to. Nothing is changed by asking. */
export interface ErasureView {
  readonly student: Id<'student'>;
  readonly revision: number;
  readonly name: string;
  /** Their own courses. */
  readonly courses: number;
  readonly lessonsTaught: number;
  readonly lessonsPlanned: number;
  readonly levels: number;
  readonly takes: number;
  /** Those that are kept with their sound. */
  readonly sounds: number;
  /** Names of groups that go on without the student, and of those that go with them. */
  readonly groupsThatStay: readonly string[];
  readonly groupsThatGo: readonly string[];
  /** Ids of what this browser may keep something of: lessons, parts of lessons, units on courses. */
  readonly ids: readonly string[];
  /** The words that were looked for in what stays. */
  readonly words: readonly string[];
  readonly mentions: readonly MentionView[];
  /** Backups and copies beside the studio; null where somebody else looks after them. */
  readonly copies: {
    readonly files: number;
    readonly oldest: PlainDate | null;
    readonly newest: PlainDate | null;
  } | null;
}

/** A place that stays and names the student. */
export interface MentionView {
  readonly place: string;
  /** "Friday four’s lesson of 4 March 2026". */
  readonly where: string;
  readonly texts: readonly { readonly before: string; readonly name: string; readonly after: string }[];
  /** Whether it is surely about them: by their full name that nobody else has, or in what is written of people. */
  readonly isSure: boolean;
}
