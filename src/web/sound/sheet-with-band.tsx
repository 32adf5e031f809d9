// A sheet and the band that plays its chords: the player over the pages, and the bar that sounds lit on both.

import { lazy, Suspense } from 'react';
import type { DrawnSheet } from '#engraving';
import { words } from '../words/index.ts';
import { FollowedSheet, type PageFrame } from './followed-sheet.tsx';
import { useSheetBand } from './use-sheet-band.ts';

const BandPlayer = lazy(async () => ({ default: (await import('./band-player.tsx')).BandPlayer }));

export interface SheetWithBandProps {
  readonly drawn: DrawnSheet;
  readonly seed: number;
  /** As `BandPlayer` takes it. */
  readonly keysOnPage: boolean;
  readonly frame?: PageFrame;
}

export function SheetWithBand({ drawn, seed, keysOnPage, frame }: SheetWithBandProps) {
  const band = useSheetBand(drawn);
  if (band === null) return <p className="soft">{words.player.noBand}</p>;
  return (
    <>
      <Suspense fallback={null}>
        <div className="no-print">
          <BandPlayer
            spec={band.material}
            seed={seed}
            keysOnPage={keysOnPage}
            reader={drawn.sheet.score.parts[0]?.instrument ?? null}
            following={band.following}
            tune={band.tune}
          />
        </div>
      </Suspense>
      <FollowedSheet
        pages={drawn.pages}
        places={band.places}
        following={band.following}
        {...(frame === undefined ? {} : { frame })}
      />
    </>
  );
}
