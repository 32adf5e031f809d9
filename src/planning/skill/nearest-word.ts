// "Did you mean …?": the known word closest to a mistyped one, by edit distance (Levenshtein 1966, deletions,
// insertions and reversals; here insertions, deletions and substitutions, each counting one).

/**
 * The closest of the known words, or null when none is near: more than two edits for short words, more than a third of
 * its letters for long ones. `nearestWord('minuts', ['minutes', 'title'])` → `'minutes'`
 */
export function nearestWord<Word extends string>(word: string, known: Iterable<Word>): Word | null {
  if (word.length > 120) return null;
  let best: Word | null = null;
  let bestDistance = Math.max(2, Math.floor(word.length / 3)) + 1;
  for (const candidate of known) {
    if (Math.abs(candidate.length - word.length) >= bestDistance) continue;
    const distance = editDistance(word, candidate);
    if (distance < bestDistance) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

function editDistance(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const substituted = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(substituted, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}
