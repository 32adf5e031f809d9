// Text typed in two places at once: nothing that was typed is ever lost. Text arrives from queues that were cut off for
// hours, so it is never refused; where two windows wrote different things both stand, one above the other.

export interface MergedText {
  readonly text: string;
  /** Whether both versions were kept. */
  readonly bothKept: boolean;
}

const gap = '\n\n';

/**
 * The text to keep, when `typed` was typed over `base` while `stored` is what is kept now.
 * `mergeText({ stored: 'a', base: 'a', typed: 'ab' })` → `ab`; `mergeText({ stored: 'x', base: 'a', typed: 'ab' })` →
 * `x`, an empty line, `ab`.
 */
export function mergeText(of: {
  readonly stored: string;
  readonly base: string;
  readonly typed: string;
}): MergedText {
  const { stored, base, typed } = of;
  if (stored === base || stored === typed) return { text: typed, bothKept: false };
  if (typed === base) return { text: stored, bothKept: false };
  if (base !== '') {
    // A later message of the same queue: its base is the lower part of what was put together before, and grows there.
    if (stored.endsWith(gap + base)) {
      const upper = stored.slice(0, stored.length - gap.length - base.length);
      return { text: joinParts(upper, typed), bothKept: true };
    }
    if (stored.startsWith(base + gap)) {
      const lower = stored.slice(base.length + gap.length);
      return { text: joinParts(typed, lower), bothKept: true };
    }
  }
  if (typed === '' || stored.split(gap).includes(typed)) return { text: stored, bothKept: false };
  return { text: joinParts(stored, typed), bothKept: stored !== '' };
}

function joinParts(upper: string, lower: string): string {
  if (upper === '') return lower;
  return lower === '' ? upper : upper + gap + lower;
}
