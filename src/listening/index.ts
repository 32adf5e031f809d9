// listening: from the samples of a take to notes, and from notes to evidence.

export { type Hearing, type HearingContext, hearNotes } from './notes/hear-notes.ts';
export type { HeardNote } from './notes/heard-note.ts';
export type { Problem } from './notes/problem.ts';
