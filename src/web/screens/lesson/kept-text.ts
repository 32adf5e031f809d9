// Text that is saved as it is typed while others may write the same field. The typed text is the truth on this screen
// while the hands are on it; what someone else put around or in place of it is kept beside it, never written over.

export interface KeptText {
  /** What the field shows. */
  readonly shown: string;
  /** The shown text as it was last sent, or as it was taken from the studio. */
  readonly sent: string;
  /** The whole text that the studio should have once everything sent has arrived. */
  readonly base: string;
  /** Text of others before and after ours, not shown while the field is in hand. */
  readonly before: string;
  readonly after: string;
  /** Whole texts sent from here whose echo may still come back. */
  readonly echoes: readonly string[];
  /** The text the studio told last: told again, it is no news. Null when it is to be taken at its word again. */
  readonly told: string | null;
}

/** More than a lesson's typing has keystrokes: every one may come back as an echo when the studio was away for long. */
const mostEchoes = 5_000;

/** A field as the studio has it. */
export function keptText(stored: string): KeptText {
  return { shown: stored, sent: stored, base: stored, before: '', after: '', echoes: [stored], told: stored };
}

export const typeText = (state: KeptText, shown: string): KeptText => ({ ...state, shown });

export const isUnsent = (state: KeptText): boolean => state.shown !== state.sent;

/** What has to be sent now, as base and text of the contract's write, and the state once it is on its way. */
export function sendText(
  state: KeptText,
): { readonly base: string; readonly text: string; readonly state: KeptText } | null {
  if (!isUnsent(state)) return null;
  const text = state.before + state.shown + state.after;
  const echoes = [...state.echoes, text].slice(-mostEchoes);
  return { base: state.base, text, state: { ...state, sent: state.shown, base: text, echoes } };
}

/**
 * The studio's text arrives. Echoes of what was sent from here change nothing. Text of others is shown at once when the
 * field is free; while it is in hand or has unsent words, ours stays shown and theirs is kept around it; where ours is
 * no longer to be found in theirs, theirs is kept above.
 */
export function storedText(state: KeptText, stored: string, inHand: boolean): KeptText {
  if (stored === state.told) return state;
  const free = !inHand && !isUnsent(state);
  const heard = { ...state, told: stored };
  if (stored === state.base) return free && state.shown !== stored ? keptText(stored) : heard;
  if (state.echoes.includes(stored)) return heard;
  if (free) return keptText(stored);
  const at = state.sent === '' ? -1 : stored.indexOf(state.sent);
  if (at >= 0)
    return {
      ...heard,
      base: stored,
      before: stored.slice(0, at),
      after: stored.slice(at + state.sent.length),
    };
  const before = stored === '' || stored.endsWith('\n') ? stored : `${stored}\n`;
  return { ...heard, base: stored, before, after: '' };
}

/** The hands leave the field: when all is sent, it shows the whole text that the studio has. */
export function releaseText(state: KeptText): KeptText {
  return isUnsent(state) || state.shown === state.base
    ? state
    : { ...keptText(state.base), echoes: state.echoes, told: state.told };
}

/**
 * The studio's texts were changed by other means, such as an undo: what it tells now is no echo, even where it is a text
 * that was once sent from here.
 */
export const forgetEchoes = (state: KeptText): KeptText => ({ ...state, echoes: [], told: null });
