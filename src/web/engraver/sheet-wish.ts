// What the screens and the engraver's worker say to each other.

import type { Result } from '#core';
import type { DrawnSheet, EngravedPage, EngravingFault, SheetDrawing } from '#engraving';
import type { InstrumentId, MaterialSpec, Score, SheetRefused, Stage } from '#music';

/** A sheet somebody wants to see. */
export interface SheetWish {
  readonly spec: MaterialSpec;
  readonly instrument: InstrumentId;
  readonly stage: Stage;
  readonly age: number | null;
  readonly seed: number;
  readonly drawing: SheetDrawing;
}

export type SheetAnswer = Result<DrawnSheet, SheetRefused | EngravingFault>;

/** A score that is there already: a take as it was heard. */
export interface ScoreWish {
  readonly score: Score;
  readonly drawing: SheetDrawing;
}

export type ScoreAnswer = Result<readonly EngravedPage[], EngravingFault>;

export interface WishMessage {
  readonly number: number;
  /** null only loads the engraver. */
  readonly wish: SheetWish | ScoreWish | null;
}

export interface AnswerMessage {
  readonly number: number;
  readonly answer: SheetAnswer | ScoreAnswer | null;
}
