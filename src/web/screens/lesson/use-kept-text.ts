import { useCallback, useEffect, useRef, useState } from 'react';
import { useOutbox } from '../../hooks/use-outbox.ts';
import {
  forgetEchoes,
  isUnsent,
  type KeptText,
  keptText,
  releaseText,
  sendText,
  storedText,
  typeText,
} from './kept-text.ts';

export interface KeptTextField {
  readonly value: string;
  readonly change: (text: string) => void;
  readonly take: () => void;
  readonly leave: () => void;
}

/**
 * The last words in a place that is written before the key is up: the outbox's own store is written a moment later, and
 * a page that dies in that moment would lose a letter. Each window has its own: what another is still typing is not
 * this one's to send.
 */
const mirror = {
  key: (field: string) => `levare-text ${field}`,
  write(field: string, base: string, text: string) {
    try {
      sessionStorage.setItem(mirror.key(field), JSON.stringify({ base, text }));
    } catch {
      // Full or forbidden: the outbox still has it.
    }
  },
  read(field: string): { readonly base: string; readonly text: string } | null {
    try {
      const found: unknown = JSON.parse(sessionStorage.getItem(mirror.key(field)) ?? 'null');
      if (typeof found !== 'object' || found === null || !('base' in found) || !('text' in found))
        return null;
      const { base, text } = found;
      return typeof base === 'string' && typeof text === 'string' ? { base, text } : null;
    } catch {
      return null;
    }
  },
  drop(field: string) {
    try {
      sessionStorage.removeItem(mirror.key(field));
    } catch {
      // Nothing was kept.
    }
  },
};

/**
 * A text field whose every keystroke is sent through the outbox. `stored` is the text as the studio last told it,
 * `field` names it in this browser. A change of `field` begins anew.
 */
export function useKeptText(
  field: string,
  stored: string,
  post: (base: string, text: string) => void,
): KeptTextField {
  const { pending, epoch } = useOutbox();
  const seenEpoch = useRef(epoch);
  const state = useRef<KeptText>(keptText(stored));
  const inHand = useRef(false);
  const postNow = useRef(post);
  postNow.current = post;
  const [, redraw] = useState(0);

  const put = useCallback((next: KeptText) => {
    if (next === state.current) return;
    state.current = next;
    redraw((n) => n + 1);
  }, []);

  const send = useCallback(() => {
    const out = sendText(state.current);
    if (!out) return;
    mirror.write(field, out.base, out.text);
    postNow.current(out.base, out.text);
    put(out.state);
  }, [field, put]);

  // What a page that died had typed and not handed on.
  // biome-ignore lint/correctness/useExhaustiveDependencies: once for each field; later texts of the studio are joined below
  useEffect(() => {
    inHand.current = false;
    state.current = keptText(stored);
    const left = mirror.read(field);
    if (left && left.text !== stored && !stored.includes(left.text)) {
      postNow.current(left.base, left.text);
      state.current = { ...keptText(left.text), echoes: [stored, left.base, left.text], told: stored };
    } else mirror.drop(field);
    redraw((n) => n + 1);
  }, [field]);

  useEffect(() => {
    if (pending > 0) return;
    if (!isUnsent(state.current)) mirror.drop(field);
    const isNew = seenEpoch.current !== epoch;
    seenEpoch.current = epoch;
    put(storedText(isNew ? forgetEchoes(state.current) : state.current, stored, inHand.current));
  }, [stored, pending, field, epoch, put]);

  return {
    value: state.current.shown,
    change(text) {
      put(typeText(state.current, text));
      send();
    },
    take() {
      inHand.current = true;
    },
    leave() {
      inHand.current = false;
      send();
      put(releaseText(state.current));
    },
  };
}
