// "Did you mean …?": the known word nearest to a mistyped one, for messages that offer a mend.

import { present } from './assert.ts';

/** The choice with fewest edits to `text`, whatever their case; the earlier one on a tie. `choices` is not empty. */
export function nearestWord<Word extends string>(text: string, choices: readonly Word[]): Word {
  let best = present(choices[0], 'a word to choose');
  let fewest = Number.POSITIVE_INFINITY;
  for (const choice of choices) {
    const edits = countEdits(text.toLowerCase(), choice.toLowerCase());
    if (edits < fewest) [best, fewest] = [choice, edits];
  }
  return best;
}

/**
 * As `nearestWord`, or null when none is near: more than two edits for short words, more than a third of its letters for
 * long ones (common practice, no source). `nearWord('minuts', ['minutes', 'title'])` → `'minutes'`
 */
export function nearWord<Word extends string>(text: string, known: Iterable<Word>): Word | null {
  const most = Math.max(2, Math.floor(text.length / 3));
  const choices = [...known].filter((word) => Math.abs(word.length - text.length) <= most);
  if (text.length > 120 || choices.length === 0) return null;
  const nearest = nearestWord(text, choices);
  return countEdits(text.toLowerCase(), nearest.toLowerCase()) <= most ? nearest : null;
}

/** Letters to put in, take out or exchange (V. Levenshtein 1966). */
function countEdits(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const exchanged = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(exchanged, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}
