// What comes out of a spec for one student, and why it may not.

import type { Score } from '../../score/score.ts';
import type { MaterialSpec } from '../../spec/material-spec.ts';

export interface Sheet {
  readonly score: Score;
  readonly title: string;
  readonly seed: number;
  readonly spec: MaterialSpec;
  /** What was shaped to the student against the letter of the spec, for the teacher to know. */
  readonly notes: readonly ShapingNote[];
}

export type ShapingNote =
  | { readonly kind: 'OctavesCut'; readonly key: string; readonly text: string }
  | { readonly kind: 'KeyLeftOut'; readonly key: string; readonly text: string }
  | { readonly kind: 'KeyRespelled'; readonly key: string; readonly text: string }
  | { readonly kind: 'CompassCut'; readonly text: string }
  | { readonly kind: 'ValuesWidened'; readonly text: string }
  | { readonly kind: 'ChordsSkipped'; readonly text: string }
  | { readonly kind: 'TuneMoved'; readonly text: string };

export type SheetRefused =
  | { readonly kind: 'NoKeyFits'; readonly message: string }
  | { readonly kind: 'RangeTooSmall'; readonly message: string }
  | { readonly kind: 'TuneUnfit'; readonly message: string };

/** What a generator makes: the sheet but for what every sheet has. */
export interface Draft {
  readonly score: Score;
  readonly notes: readonly ShapingNote[];
}
