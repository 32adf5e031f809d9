// The draft of one editor: offered when one was kept, kept as it is written, thrown away when it is saved.

import { useCallback, useEffect, useRef, useState } from 'react';
import {
  type DraftPlace,
  dropDrafts,
  findDraft,
  type KeptDraft,
  keepDraft,
  type Shelf,
} from './keep-draft.ts';
import { isUntouched, type UnitDraft } from './unit-draft.ts';

/** Storage throws on being named in a browser that forbids it. */
function theShelf(): Shelf | null {
  try {
    return window.localStorage;
  } catch {
    return null;
  }
}

export interface UnitDraftInHand {
  readonly draft: UnitDraft;
  readonly setDraft: (change: (draft: UnitDraft) => UnitDraft) => void;
  /** Kept from before and neither taken up nor thrown away yet: nothing is written until it is. */
  readonly offered: KeptDraft | null;
  readonly goOn: () => void;
  readonly startAgain: () => void;
  readonly touched: boolean;
  /** False when the browser would not keep it. */
  readonly kept: boolean;
  /** Throws away what is kept and stops keeping: after saving. */
  readonly finish: () => void;
  /** The same, when it is given up. Returns how to keep it again, or null when there was nothing to keep. */
  readonly giveUp: () => (() => void) | null;
}

/** `from` is what the editor starts with; what it was at first counts. */
export function useUnitDraft(place: DraftPlace, from: UnitDraft): UnitDraftInHand {
  const [start] = useState(from);
  const [draft, setDraft] = useState(from);
  const [offered, setOffered] = useState(() => {
    const shelf = theShelf();
    const found = shelf && findDraft(shelf, place);
    return found && !isUntouched(found.draft, from) ? found : null;
  });
  const [kept, setKept] = useState(true);
  const finished = useRef(false);
  const touched = !isUntouched(draft, start);

  useEffect(() => {
    if (finished.current || offered) return;
    const shelf = theShelf();
    if (!shelf) {
      setKept(false);
      return;
    }
    // One place holds one draft: what was begun from an earlier version goes when this one is written to.
    dropDrafts(shelf, place);
    if (touched)
      setKept(keepDraft(shelf, { place, version: draft.version, at: new Date().toISOString(), draft }));
  }, [draft, offered, place, touched]);

  const goOn = useCallback(() => {
    if (offered) setDraft(offered.draft);
    setOffered(null);
  }, [offered]);
  const startAgain = useCallback(() => setOffered(null), []);
  const finish = useCallback(() => {
    finished.current = true;
    const shelf = theShelf();
    if (shelf) dropDrafts(shelf, place);
  }, [place]);
  const giveUp = useCallback(() => {
    const shelf = theShelf();
    const given = shelf && findDraft(shelf, place);
    finish();
    return shelf && given ? () => void keepDraft(shelf, given) : null;
  }, [finish, place]);
  return { draft, setDraft, offered, goOn, startAgain, touched, kept, finish, giveUp };
}
