// A sheet that follows what is wished: while one is drawn only the newest wish waits, so that turning a dial never queues up.

import { useEffect, useRef, useState } from 'react';
import { wishSheet } from './engraver.ts';
import type { SheetAnswer, SheetWish } from './sheet-wish.ts';

export interface SheetState {
  /** The newest sheet drawn or refused; null before the first. */
  readonly answer: SheetAnswer | null;
  /** Whether a newer one is on its way. */
  readonly isDrawing: boolean;
}

/** `null` wishes for nothing; then the last sheet stays. */
export function useSheet(wish: SheetWish | null): SheetState {
  const [state, setState] = useState<SheetState>({ answer: null, isDrawing: false });
  const newest = useRef<string | null>(null);
  const busy = useRef(false);
  const text = wish === null ? null : JSON.stringify(wish);
  useEffect(() => {
    newest.current = text;
    if (text === null || busy.current) return;
    busy.current = true;
    setState((now) => ({ ...now, isDrawing: true }));
    void drawNewest(newest).then((answer) => {
      busy.current = false;
      setState((now) => ({ answer: answer ?? now.answer, isDrawing: false }));
    });
  }, [text]);
  return state;
}

/** Draws until nothing newer was wished meanwhile. */
async function drawNewest(newest: { readonly current: string | null }): Promise<SheetAnswer | null> {
  for (;;) {
    const text = newest.current;
    const answer = text === null ? null : await wishSheet(JSON.parse(text));
    if (newest.current === text) return answer;
  }
}
