// What was changed in a text, as places and words rather than as a second text: two people's changes to one text can then
// both be made. Words are never parted: who types on at a word and who writes beside it are not in each other's way.

/** At this place of a text, so many characters go and these come. */
export interface Splice {
  readonly at: number;
  readonly cut: number;
  readonly put: string;
}

/** Splices in order of place, none touching the next. Places are those of the text before. */
export type Edit = readonly Splice[];

/** Above this many comparisons the middle of two texts is taken as one change. */
const mostComparisons = 1_000_000;

/** A letter, a figure, an apostrophe, or half of a character beyond them: no change begins or ends inside. */
const inWord = /[\p{L}\p{M}\p{N}\p{Surrogate}'’_\u200d]/u;
export const isInWord = (unit: string | undefined): boolean => unit !== undefined && inWord.test(unit);

/** A word with the space before it, or any one character else. */
const tokens = / ?[\p{L}\p{M}\p{N}'’_]+|[\s\S]/gu;

/** The text once the edit is made. `applyEdit('a c', [{ at: 1, cut: 0, put: ' b' }])` → `a b c` */
export function applyEdit(text: string, edit: Edit): string {
  let from = 0;
  let out = '';
  for (const { at, cut, put } of edit) {
    out += text.slice(from, at) + put;
    from = at + cut;
  }
  return out + text.slice(from);
}

/** An edit that turns one text into the other. What stands at both ends stays; what is between is compared by words. */
export function editBetween(from: string, to: string): Edit {
  const shortest = Math.min(from.length, to.length);
  let head = 0;
  while (head < shortest && from[head] === to[head]) head++;
  let tail = 0;
  while (tail < shortest - head && from[from.length - 1 - tail] === to[to.length - 1 - tail]) tail++;
  while (head > 0 && isInWord(from[head - 1]) && (isInWord(from[head]) || isInWord(to[head]))) head--;
  const before = (text: string) => text[text.length - tail - 1];
  while (tail > 0 && isInWord(from[from.length - tail]) && (isInWord(before(from)) || isInWord(before(to))))
    tail--;
  const old = from.slice(head, from.length - tail);
  const put = to.slice(head, to.length - tail);
  if (old === put) return [];
  const one = { at: head, cut: old.length, put };
  if (old === '' || put === '' || !/\s/.test(old + put)) return [one];
  // The first word is known by the space before it, as the others are. The end is compared too: where the same words come
  // again below, they were put there and not above.
  const space = from[head - 1] === ' ' ? ' ' : '';
  const edit = compareWords(
    from.slice(head - space.length).match(tokens) ?? [],
    to.slice(head - space.length).match(tokens) ?? [],
  );
  return (edit ?? [{ ...one, at: space.length }]).map((splice) => {
    const at = splice.at + head - space.length;
    const isSpaced = splice.cut > 0 && from[at] === ' ' && splice.put.startsWith(' ');
    return isSpaced ? { at: at + 1, cut: splice.cut - 1, put: splice.put.slice(1) } : { ...splice, at };
  });
}

/** The longest common subsequence of words stays, the first of several; null where that would take long. */
function compareWords(from: readonly string[], to: readonly string[]): Edit | null {
  if (from.length * to.length > mostComparisons) return null;
  // rest[i][j]: how many words the texts from the i-th and the j-th on have in common.
  const rest = Array.from({ length: from.length + 1 }, () => new Uint32Array(to.length + 1));
  const common = (i: number, j: number) => rest[i]?.[j] ?? 0;
  for (let i = from.length - 1; i >= 0; i--)
    for (let j = to.length - 1; j >= 0; j--) {
      const row = rest[i];
      if (row)
        row[j] = from[i] === to[j] ? common(i + 1, j + 1) + 1 : Math.max(common(i + 1, j), common(i, j + 1));
    }
  const edit: Splice[] = [];
  let at = 0;
  for (let i = 0, j = 0; i < from.length || j < to.length; ) {
    const [old, put] = [from[i], to[j]];
    if (old !== undefined && old === put) {
      at += old.length;
      i++;
      j++;
    } else if (old !== undefined && (put === undefined || common(i + 1, j) >= common(i, j + 1))) {
      pushSplice(edit, { at, cut: old.length, put: '' });
      at += old.length;
      i++;
    } else {
      pushSplice(edit, { at, cut: 0, put: put ?? '' });
      j++;
    }
  }
  return edit;
}

/** Adds a splice at the end of an edit; what touches the one before becomes one with it. */
export function pushSplice(edit: Splice[], splice: Splice): void {
  if (splice.cut === 0 && splice.put === '') return;
  const last = edit.at(-1);
  if (last && last.at + last.cut === splice.at)
    edit[edit.length - 1] = { at: last.at, cut: last.cut + splice.cut, put: last.put + splice.put };
  else edit.push(splice);
}
