// What a scale or arpeggio sheet is told to make.

import type { Key } from '../../key/key.ts';
import type { PitchName } from '../../pitch/pitch.ts';
import type { ScaleId } from '../../scale/scale.ts';
import type { ScaleSpec } from '../../spec/material-spec.ts';
import type { Steps } from './place-run.ts';
import type { RunFigure } from './run-notes.ts';

/** The fields scale and arpeggio specs share. */
export type RunSpec = Pick<
  ScaleSpec,
  | 'keys'
  | 'order'
  | 'start'
  | 'pitch'
  | 'octaves'
  | 'direction'
  | 'value'
  | 'metre'
  | 'articulation'
  | 'fingerings'
  | 'hands'
  | 'names'
  | 'tempo'
>;

/** What is studied: a scale or a chord, on any tonic. */
export interface Study {
  readonly title: string;
  readonly label: (tonic: PitchName) => string;
  readonly steps: (tonic: PitchName) => Steps;
  readonly keyOf: (tonic: PitchName) => Key;
  /** Most comfortable tonics first. */
  readonly comfortable: readonly PitchName[];
  /** The usual spelling of a tonic. */
  readonly respell: (tonic: PitchName) => PitchName;
  /** Tonics by an interval from one on. */
  readonly orderId: ScaleId;
  readonly figure: RunFigure;
  readonly rhythm: ScaleSpec['rhythm'];
  /** Octaves without which the figure says too little; the range permitting. */
  readonly leastOctaves: number;
  /** Whether the notes repeat at the octave; chords past it do not. */
  readonly repeats: boolean;
}
