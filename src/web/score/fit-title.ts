// Fits a title into the room it has, as an engraver would: whole if it can be, over two lines if there are two, then
// with the last words left away, then with its first word shortened, and at last not at all.

/** Width in pixels of a text at a font size in pixels. */
export type Measure = (text: string, size: number) => number;

export interface FittedTitle {
  readonly lines: readonly string[];
  /** False when something is left away; the caption has the whole of it. */
  readonly whole: boolean;
  /** Of the longest line. */
  readonly width: number;
}

/** The title within `width` pixels and `lines` lines, or null where not even a shortened word fits. */
export function fitTitle(
  title: string,
  width: number,
  lines: number,
  size: number,
  measure: Measure,
): FittedTitle | null {
  const words = title.trim().split(/\s+/).filter(Boolean);
  if (words.length === 0) return null;
  const fitted = (held: readonly string[], whole: boolean): FittedTitle => ({
    lines: held,
    whole,
    width: Math.max(...held.map((line) => measure(line, size))),
  });
  for (let count = words.length; count >= 1; count--) {
    // "The…" tells nothing: what follows a short first word says more, even cut.
    const [first = '', ...rest] = words;
    if (count === 1 && rest.length > 0 && first.length <= 3) {
      const later = fitTitle(rest.join(' '), width, lines, size, measure);
      if (later) return { ...later, whole: false };
    }
    const whole = count === words.length;
    const text = whole
      ? words
      : [...words.slice(0, count - 1), `${(words[count - 1] ?? '').replace(/[,:;–—-]+$/, '')}…`];
    const held = wrap(text, width, lines, size, measure);
    if (held) return fitted(held, whole);
  }
  const short = shortenWord(words[0] ?? '', width, size, measure);
  return short === null ? null : fitted([short], false);
}

/** Greedy lines, then balanced: the narrowest width that needs no more lines reads best. */
function wrap(
  words: readonly string[],
  width: number,
  lines: number,
  size: number,
  measure: Measure,
): string[] | null {
  const held: string[] = [];
  for (const word of words) {
    const last = held.at(-1);
    const joined = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && measure(joined, size) <= width) held[held.length - 1] = joined;
    else {
      if (measure(word, size) > width) return null;
      held.push(word);
    }
    if (held.length > lines) return null;
  }
  return held;
}

/** `shortenWord('Improvisation', …)` → `Improv.`: cut after a consonant, three letters at least. */
function shortenWord(word: string, width: number, size: number, measure: Measure): string | null {
  for (let end = word.length - 2; end >= 3; end--) {
    if (/[aeiou]/i.test(word[end - 1] ?? '')) continue;
    const short = `${word.slice(0, end)}.`;
    if (measure(short, size) <= width) return short;
  }
  return null;
}
