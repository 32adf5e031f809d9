// The band that goes with a drawn sheet, and how the two go along together.

import { useMemo } from 'react';
import type { DrawnSheet } from '#engraving';
import {
  type BackingMaterial,
  type BackingTune,
  backingToSpec,
  type SheetPlaces,
  scoreToBacking,
  scoreToTune,
  sheetPlaces,
} from '#music';
import { type Following, useFollowing } from './use-following.ts';

export interface SheetBand {
  readonly material: BackingMaterial;
  readonly tune: BackingTune | null;
  readonly places: SheetPlaces;
  readonly following: Following;
}

/** The band that plays a sheet's own chords; null where it has none, or no metre that a band plays. */
export function useSheetBand(drawn: DrawnSheet | null): SheetBand | null {
  const score = drawn?.sheet.score ?? null;
  const material = useMemo(() => (score === null ? null : scoreToBacking(score)), [score]);
  const places = useMemo(
    () =>
      score === null || material === null ? null : sheetPlaces(score.bars, backingToSpec(material).chart),
    [score, material],
  );
  const tune = useMemo(() => (score === null ? null : scoreToTune(score)), [score]);
  const following = useFollowing(material?.chart ?? '');
  return material === null || places === null ? null : { material, tune, places, following };
}
