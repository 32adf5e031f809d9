// listening: from the samples of a take to notes, and from notes to evidence.

export { type Alignment, alignTake, type RhythmNote } from './alignment/align-take.ts';
export { beatToSeconds, type Grid, secondsToBeat } from './alignment/grid.ts';
export {
  type ContextUnreadable,
  parseTakeContext,
  type TakeContext,
  unknownContext,
} from './context/take-context.ts';
export { type Hearing, type HearingContext, hearNotes } from './notes/hear-notes.ts';
export type { HeardNote } from './notes/heard-note.ts';
export type { Problem } from './notes/problem.ts';
