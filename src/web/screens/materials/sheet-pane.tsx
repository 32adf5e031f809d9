// The sheet while it is shaped, with its files. It hears of each drawing alone, so that the new page is on the screen before
// the rest of the screen is told of it.

import { startTransition, useEffect } from 'react';
import type { SheetPdf } from '#contract';
import type { DrawnSheet } from '#engraving';
import type { SheetWish } from '../../engraver/sheet-wish.ts';
import { useSheet } from '../../engraver/use-sheet.ts';
import { SheetView } from './sheet-view.tsx';
import { TakeFiles } from './take-files.tsx';

export interface SheetPaneProps {
  /** null where the spec has a fault; the last sheet is kept for when it is mended. */
  readonly wish: SheetWish | null;
  /** The fault in words; shown in the sheet's place. */
  readonly fault: string | null;
  /** What the files are made from. */
  readonly pdf: SheetPdf;
  /** Hears of each sheet drawn; null where it was refused. */
  readonly onDrawn: (drawn: DrawnSheet | null) => void;
}

export function SheetPane({ wish, fault, pdf, onDrawn }: SheetPaneProps) {
  const state = useSheet(wish);
  const drawn = wish !== null && state.answer?.ok === true ? state.answer.value : null;
  useEffect(() => startTransition(() => onDrawn(drawn)), [drawn, onDrawn]);
  return (
    <div>
      {drawn !== null && <TakeFiles drawn={drawn} wish={pdf} />}
      {fault === null ? <SheetView {...state} /> : <p className="fault">{fault}</p>}
    </div>
  );
}
