// What the page and the band's worker say to each other.

import type { BackingSpec, PartName } from '#music';

export interface TrackWish {
  readonly spec: BackingSpec;
  readonly seed: number;
  /** Bars of the chart to go round, as numbered there; null to play the track. */
  readonly loop: { readonly first: number; readonly last: number } | null;
}

export type ToBand =
  | {
      readonly kind: 'open';
      readonly number: number;
      readonly sampleRate: number;
      readonly wish: TrackWish;
    }
  | { readonly kind: 'render'; readonly number: number; readonly frames: number };

/** A bar of the track, where it begins in samples. */
export interface TrackBar {
  readonly frame: number;
  /** As numbered on the chart; 0 before the first. */
  readonly written: number;
  readonly chorus: number;
  readonly role: string;
}

export interface OpenTrack {
  readonly bars: readonly TrackBar[];
  /** Samples in all; null for a loop. */
  readonly length: number | null;
  /** From where to where it goes round, in samples. */
  readonly loop: { readonly from: number; readonly to: number } | null;
}

export interface Stem {
  readonly name: PartName;
  readonly left: Float32Array<ArrayBuffer>;
  readonly right: Float32Array<ArrayBuffer>;
}

export type FromBand =
  | { readonly kind: 'opened'; readonly number: number; readonly track: OpenTrack }
  | {
      readonly kind: 'piece';
      readonly number: number;
      readonly from: number;
      readonly stems: readonly Stem[];
    }
  | { readonly kind: 'failed'; readonly number: number };
