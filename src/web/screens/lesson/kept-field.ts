// One text field between the hands, the outbox and the studio: every keystroke is sent, and what others write is heard.

import type { Outbox } from '../../app/outbox.ts';
import {
  bestText,
  hearText,
  hearWhole,
  type KeptText,
  keptText,
  releaseText,
  typeText,
} from './kept-text.ts';

/** A text as the studio last told it. */
export interface ToldText {
  /** Names the field as the outbox does (see `fieldOf`). */
  readonly field: string;
  readonly stored: string;
  /** The revision of the course that had it. */
  readonly revision: number;
}

export interface KeptField {
  value(): string;
  change(text: string): void;
  take(): void;
  leave(): void;
  /** The studio told its text, or what the outbox has on its way is another. */
  look(told: ToldText): void;
  /** Hears what others did to a text on its way, until the returned function is called. */
  listen(): () => void;
}

export interface KeptFieldParts {
  readonly outbox: Pick<Outbox, 'known' | 'onCarried'>;
  readonly post: (base: string, text: string) => void;
  /** Called when the field shows something else than before. */
  readonly redraw: () => void;
}

/** A field that begins with what is told. */
export function createKeptField(
  { field, stored, revision }: ToldText,
  { outbox, post, redraw }: KeptFieldParts,
): KeptField {
  let state: KeptText = keptText(bestText(outbox.known(field), stored, revision));
  let inHand = false;

  function put(next: KeptText): void {
    const { shown } = state;
    state = inHand ? next : releaseText(next);
    if (state.shown !== shown) redraw();
  }

  return {
    value: () => state.shown,
    change(text) {
      const base = state.whole;
      put(typeText(state, text));
      if (state.whole !== base) post(base, state.whole);
    },
    take() {
      inHand = true;
    },
    leave() {
      inHand = false;
      put(state);
    },
    look(told) {
      put(hearWhole(state, bestText(outbox.known(field), told.stored, told.revision)));
    },
    listen: () =>
      outbox.onCarried((about, from, edit) => {
        if (about === field && from === state.whole) put(hearText(state, edit));
      }),
  };
}
