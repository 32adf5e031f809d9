// Fits a title into the room it has, as an engraver would: whole if it can be, over two lines if there are two, then
// with the last words left away, then with its first word shortened, and at last not at all: a stump tells nothing.

/** Width in pixels of a text at a font size in pixels. */
export type Measure = (text: string, size: number) => number;

export interface FittedTitle {
  readonly lines: readonly string[];
  /** False when something is left away; the caption has the whole of it. */
  readonly whole: boolean;
  /** Of the longest line. */
  readonly width: number;
}

/** Letters that must be left of a title that is cut, unless asked otherwise. */
const fewestLetters = 6;

/**
 * The title within `width` pixels and `lines` lines, or null where fewer than `fewest` of its letters could be shown.
 * What is cut does not end in a short word: "Ribbon and…" says no more than "Ribbon…".
 */
export function fitTitle(
  title: string,
  width: number,
  lines: number,
  size: number,
  measure: Measure,
  fewest = fewestLetters,
): FittedTitle | null {
  const words = title.trim().split(/\s+/).filter(Boolean);
  if (words.length === 0) return null;
  const fitted = (held: readonly string[], whole: boolean): FittedTitle => ({
    lines: held,
    whole,
    width: Math.max(...held.map((line) => measure(line, size))),
  });
  const whole = wrap(words, width, lines, size, measure);
  if (whole) return fitted(whole, true);
  for (let count = words.length - 1; count >= 1; count--) {
    const last = (words[count - 1] ?? '').replace(/[,:;–—-]+$/, '');
    if (lettersIn(last) <= 3) continue;
    const text = [...words.slice(0, count - 1), `${last}…`];
    if (lettersIn(text.join('')) < fewest) break;
    const held = wrap(text, width, lines, size, measure);
    if (held) return fitted(held, false);
  }
  const [first = '', ...rest] = words;
  // "The…" tells nothing: what follows a short first word says more, even cut.
  if (rest.length > 0 && lettersIn(first) <= 3) {
    const later = fitTitle(rest.join(' '), width, lines, size, measure, fewest);
    return later && { ...later, whole: false };
  }
  const short = shortenWord(first, width, size, measure, fewest);
  return short === null ? null : fitted([short], false);
}

const lettersIn = (text: string): number => text.match(/\p{L}/gu)?.length ?? 0;

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

/** `shortenWord('Improvisation', …)` → `Improv.`: cut after a consonant. */
function shortenWord(
  word: string,
  width: number,
  size: number,
  measure: Measure,
  fewest: number,
): string | null {
  for (let end = word.length - 2; end >= fewest; end--) {
    if (/[aeiou]/i.test(word[end - 1] ?? '')) continue;
    const short = `${word.slice(0, end)}.`;
    if (measure(short, size) <= width) return short;
  }
  return null;
}
