// listening: from the samples of a take to notes, and from notes to evidence.

export { type Alignment, alignTake, type RhythmNote } from './alignment/align-take.ts';
export { beatToSeconds, type Grid, secondsToBeat } from './alignment/grid.ts';
export {
  type CheckField,
  type CheckKind,
  type CheckSpec,
  type CheckUnreadable,
  checkableValues,
  checkFields,
  findCrossedBounds,
  parseCheckSpec,
} from './check/check-spec.ts';
export { describeCheck, nameNotes } from './check/describe-check.ts';
export { type CheckAnswer, judgeCheck } from './check/judge-check.ts';
export {
  type ContextUnreadable,
  parseTakeContext,
  type TakeContext,
  unknownContext,
} from './context/take-context.ts';
export { compareTakes, type FigureChange, figuresOf } from './evidence/compare-takes.ts';
export { describeProblem } from './evidence/describe-problem.ts';
export type { EvidenceInput } from './evidence/evidence-input.ts';
export type { Figure, FigureUnit, HeardRow, Passage, Row, UnheardRow } from './evidence/figure.ts';
export {
  type Evidence,
  type EvidenceName,
  evidenceNames,
  gatherEvidence,
} from './evidence/gather-evidence.ts';
export type { Motif } from './evidence/motifs.ts';
export type { ValueShare } from './evidence/note-values.ts';
export type { Phrase } from './evidence/phrases.ts';
export type { LongNote } from './evidence/tone.ts';
export { type Listening, listen } from './listen.ts';
export { type TakeToWrite, type WrittenTake, writeTake } from './notation/write-take.ts';
export { type Hearing, type HearingContext, hearNotes } from './notes/hear-notes.ts';
export type { HeardNote } from './notes/heard-note.ts';
export { findLetGo } from './notes/let-go.ts';
export type { Problem } from './notes/problem.ts';
