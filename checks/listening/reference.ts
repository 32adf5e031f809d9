// The tables of this folder.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';

interface TimedPitch {
  readonly onset: number;
  readonly offset: number;
  readonly hz: number;
}
interface Scores {
  readonly precision: number;
  readonly recall: number;
  readonly f1: number;
  readonly avg_overlap?: number;
}

export interface ListeningTable {
  readonly transcription: {
    readonly example: {
      readonly ref: readonly TimedPitch[];
      readonly est: readonly TimedPitch[];
      readonly with_offsets: Scores;
      readonly without_offsets: Scores;
      readonly onsets_only: Scores;
    };
  };
  readonly cents: readonly { readonly hz: number; readonly ref: number; readonly cents: number }[];
  readonly swing_ratio: readonly { readonly ratio: string; readonly percent_first: number }[];
  readonly syncopation_lhl: {
    readonly examples: readonly {
      readonly iois: readonly number[];
      readonly meter: readonly number[];
      readonly sum: number;
    }[];
  };
  readonly timing_jnd: { readonly table: readonly { readonly ioi_ms: number; readonly jnd_ms: number }[] };
}

export const listeningTable = JSON.parse(
  readFileSync(join(import.meta.dirname, 'data', 'listening.json'), 'utf8'),
) as ListeningTable;
