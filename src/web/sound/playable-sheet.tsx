// A sheet that the band can be asked to play: as it is drawn, and with its band when somebody wants it.

import { Fragment, useState } from 'react';
import type { DrawnSheet } from '#engraving';
import { Button } from '../components/button.tsx';
import { Notation } from '../components/notation.tsx';
import { words } from '../words/index.ts';
import type { PageFrame } from './followed-sheet.tsx';
import { SheetWithBand } from './sheet-with-band.tsx';

const says = words.player;

export interface PlayableSheetProps {
  readonly drawn: DrawnSheet;
  readonly seed: number;
  readonly frame: PageFrame;
}

export function PlayableSheet({ drawn, seed, frame }: PlayableSheetProps) {
  const [isOpen, setIsOpen] = useState(false);
  const { score, title } = drawn.sheet;
  const hasChords = score.parts.some((part) => part.bars.some((bar) => bar.chords.length > 0));
  return (
    <>
      {hasChords && (
        <p className="no-print">
          <Button
            kind="plain"
            aria-expanded={isOpen}
            aria-label={`${isOpen ? says.putBand : says.playSheet}: ${title}`}
            onPress={() => setIsOpen(!isOpen)}
          >
            {isOpen ? says.putBand : says.playSheet}
          </Button>
        </p>
      )}
      {isOpen && hasChords ? (
        <SheetWithBand drawn={drawn} seed={seed} keysOnPage={false} frame={frame} />
      ) : (
        drawn.pages.map(({ page, svg }) => (
          <Fragment key={page}>{frame(page, <Notation svg={svg} />)}</Fragment>
        ))
      )}
    </>
  );
}
