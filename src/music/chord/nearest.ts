// The nearest of some words to a mistyped one, for messages that offer a mend.

import { present } from '#core';

/** Single-character edits between two texts (Levenshtein 1966). */
function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = present(row[j - 1], 'a cell for every letter') + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(
        Math.min(
          present(row[j], 'a cell for every letter') + 1,
          present(next[j - 1], 'a cell for every letter') + 1,
          change,
        ),
      );
    }
    row = next;
  }
  return present(row[b.length], 'a cell for every letter');
}

/** The choice with fewest edits to `text`; the earlier one on a tie. `choices` is not empty. */
export function nearestWord(text: string, choices: readonly string[]): string {
  let best = present(choices[0], 'a cell for every letter');
  let fewest = Number.POSITIVE_INFINITY;
  for (const choice of choices) {
    const edits = editDistance(text.toLowerCase(), choice.toLowerCase());
    if (edits < fewest) [best, fewest] = [choice, edits];
  }
  return best;
}
