// What the screens and the engraver's worker say to each other.

import type { Result } from '#core';
import type { DrawnSheet, EngravingFault, SheetDrawing } from '#engraving';
import type { InstrumentId, MaterialSpec, SheetRefused, Stage } from '#music';

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

export interface WishMessage {
  readonly number: number;
  /** null only loads the engraver. */
  readonly wish: SheetWish | null;
}

export interface AnswerMessage {
  readonly number: number;
  readonly answer: SheetAnswer | null;
}
