/**
 * A title as it stands alone on its line. A skill's title goes on from "can do:" and begins small, which is right within
 * a sentence and wrong at the head of one. `sentenceCase('holds a long note')` → `Holds a long note`
 */
export function sentenceCase(title: string): string {
  const first = title.codePointAt(0);
  if (first === undefined) return title;
  const letter = String.fromCodePoint(first);
  return letter.toUpperCase() + title.slice(letter.length);
}
