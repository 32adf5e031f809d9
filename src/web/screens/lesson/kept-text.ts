// Text that is saved as it is typed while others may write the same field. While the hands are on it the field shows what
// they type and nothing else moves under them; what others do meanwhile is kept as edits of what is shown, so that every
// keystroke can be made in the whole text too.

import { applyEdit, type Edit, editBetween, mergeEdits } from '#core';
import type { KnownText } from '../../app/outbox.ts';

export interface KeptText {
  /** What the field shows. */
  readonly shown: string;
  /** The whole text: as the studio has it once all that was typed here has arrived. */
  readonly whole: string;
  /** What others did since the hands came, one after the other: from what is shown to the whole. */
  readonly others: readonly Edit[];
}

/** A field as the studio has it. */
export const keptText = (whole: string): KeptText => ({ shown: whole, whole, others: [] });

/** What is shown becomes this; the whole text before and after is what has to be sent. */
export function typeText(state: KeptText, shown: string): KeptText {
  let typed = editBetween(state.shown, shown);
  let before = state.shown;
  const others = state.others.map((edit) => {
    const { overMine, overTheirs } = mergeEdits(before, edit, typed, true);
    before = applyEdit(before, edit);
    typed = overTheirs;
    return overMine;
  });
  return { shown, whole: applyEdit(state.whole, typed), others };
}

/** Others changed the whole text; it is not shown before the hands leave. */
export function hearText(state: KeptText, edit: Edit): KeptText {
  if (edit.length === 0) return state;
  return { ...state, whole: applyEdit(state.whole, edit), others: [...state.others, edit] };
}

/** As `hearText`, where only the text that came of it is known. */
export const hearWhole = (state: KeptText, whole: string): KeptText =>
  hearText(state, editBetween(state.whole, whole));

/** The hands leave the field: it shows the whole text. */
export const releaseText = (state: KeptText): KeptText =>
  state.shown === state.whole && state.others.length === 0 ? state : keptText(state.whole);

/**
 * The whole text as it is best known: what this window has on its way, or wrote after the studio told what is on screen,
 * else what the studio told at this revision of the course.
 */
export const bestText = (known: KnownText | null, stored: string, revision: number): string =>
  known !== null && (known.revision === null || known.revision > revision) ? known.text : stored;
