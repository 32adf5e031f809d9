// A name in running text: found as a whole word, with or without the s of a genitive, and put out of it. Full names are
// found in whatever case they are typed; a single word only as a name is written, so that “mark the beat” stays.

/** What stands where a name stood. */
export const nameErased = '[name erased]';

export interface NameWord {
  readonly text: string;
  /** A full name, or one given by hand; else the given name or the family name alone. */
  readonly isWhole: boolean;
  /** Whether somebody else in the studio has this word in their name: it may be about them. */
  readonly isShared: boolean;
}

export interface NameFound {
  readonly at: number;
  readonly end: number;
  readonly word: NameWord;
}

const honorific = /^(mr|mrs|ms|miss|mx|dr|prof|sir|herr|frau|sr|sra|srta|mme|mlle|m)\.?$/i;
const wordsOf = (name: string): readonly string[] => name.split(/\s+/u).filter((word) => word !== '');
const fold = (text: string): string => text.normalize('NFC').toLowerCase();

/**
 * The words by which a student is named: full names, earlier ones and those given by hand; their given name; and the family
 * name, unless somebody else has it. `nameWords(['Ana Marsh'], [], ['Tom Marsh'])` → `Ana Marsh`, `Ana`
 */
export function nameWords(
  fullNames: readonly string[],
  called: readonly string[],
  othersNames: readonly string[],
): readonly NameWord[] {
  const others = new Set(othersNames.map((name) => fold(wordsOf(name).join(' '))));
  const othersWords = new Set(othersNames.flatMap(wordsOf).map(fold));
  const words = new Map<string, NameWord>();
  const add = (text: string, isWhole: boolean, isShared: boolean) => {
    if (text.length > 1 && !words.has(fold(text))) words.set(fold(text), { text, isWhole, isShared });
  };
  for (const name of [...fullNames, ...called].map((one) => wordsOf(one).join(' ')))
    add(name, true, others.has(fold(name)) || (!name.includes(' ') && othersWords.has(fold(name))));
  for (const name of fullNames) {
    const parts = wordsOf(name).filter((word) => !honorific.test(word));
    const [given] = parts;
    const family = parts.at(-1);
    if (given !== undefined && wordsOf(name).length > 1) add(given, false, othersWords.has(fold(given)));
    if (family !== undefined && parts.length > 1 && !othersWords.has(fold(family))) add(family, false, false);
  }
  // Longer ones first, so that a full name is not found in pieces.
  return [...words.values()].sort((a, b) => b.text.length - a.text.length);
}

/** Finds names in a text; `words` as `nameWords` gives them. */
export function createNameFinder(words: readonly NameWord[]): (text: string) => readonly NameFound[] {
  const patterns = words.map((word) => ({ word, pattern: patternOf(word) }));
  return (text) => {
    const found: NameFound[] = [];
    for (const { word, pattern } of patterns)
      for (const match of text.matchAll(pattern)) {
        const at = match.index;
        const end = at + match[0].length;
        if (!found.some((one) => at < one.end && one.at < end)) found.push({ at, end, word });
      }
    return found.sort((a, b) => a.at - b.at);
  };
}

/** The text without the names found in it. */
export function eraseFound(text: string, found: readonly NameFound[]): string {
  let erased = '';
  let from = 0;
  for (const { at, end } of found) {
    erased += `${text.slice(from, at)}${nameErased}`;
    from = end;
  }
  return erased + text.slice(from);
}

function patternOf({ text }: NameWord): RegExp {
  const anyCase = text.includes(' ');
  const forms = new Set(anyCase ? [text] : [text, text.charAt(0).toUpperCase() + text.slice(1)]);
  // An accent may be typed as a letter of its own or as part of one.
  const spellings = [...forms].flatMap((form) => [form.normalize('NFC'), form.normalize('NFD')]);
  const alternatives = [...new Set(spellings)].map((form) => form.split(' ').map(escapePattern).join('\\s+'));
  const letter = '[\\p{L}\\p{M}\\p{N}]';
  return new RegExp(`(?<!${letter})(?:${alternatives.join('|')})s?(?!${letter})`, anyCase ? 'giu' : 'gu');
}

const escapePattern = (text: string): string => text.replaceAll(/[\\^$.*+?()[\]{}|/]/g, '\\$&');
