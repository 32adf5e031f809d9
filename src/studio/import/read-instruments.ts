// Which instruments a cell names.

import { err, ok, type Result } from '#core';
import { type InstrumentId, listInstruments } from '#music';
import { instrumentWords, unclearInstruments } from './instrument-words.data.ts';
import { listWords, toPlainWords } from './plain-words.ts';

const idByWord: ReadonlyMap<string, InstrumentId> = new Map<string, InstrumentId>([
  ...listInstruments().flatMap((i): [string, InstrumentId][] => [
    [toPlainWords(i.name), i.id],
    [toPlainWords(i.id), i.id],
  ]),
  ...listWords(instrumentWords),
]);
const askByWord = listWords(
  Object.fromEntries(Object.entries(unclearInstruments).map(([words, ask]) => [ask, words])),
);

/**
 * The instruments named in a cell, several parted by commas, slashes, plus signs or "and". A child's voice is known by
 * the age. `readInstruments('Bb trumpet / piano', 12)` → trumpet_bb, piano
 */
export function readInstruments(cell: string, age: number | null): Result<readonly InstrumentId[], string> {
  const ids: InstrumentId[] = [];
  for (const part of cell.split(/[,;/+&]|\band\b|\bund\b|\bet\b/i)) {
    const word = toPlainWords(part);
    if (word === '') continue;
    const found = findInstrumentId(word, age);
    if (!found.ok) return found;
    if (!ids.includes(found.value)) ids.push(found.value);
  }
  return ok(ids);
}

function findInstrumentId(word: string, age: number | null): Result<InstrumentId, string> {
  const plain = word
    .replace(/\b([abef]) ?(?:flat|♭|bemol)\b/g, '$1b')
    .replace(/♭/g, 'b')
    .replace(/\.$/, '')
    .replace(/\b(?:lessons?|unterricht|beginners?)\b/g, '')
    .trim();
  const ask = askByWord.get(plain);
  // A voice is called “Bass”; whoever writes that of a player means something else.
  const id =
    ask !== undefined
      ? undefined
      : (idByWord.get(word) ?? idByWord.get(plain) ?? idByWord.get(plain.replace(/ in [a-g]b?$/, '')));
  if (id !== undefined) return ok(id);
  if (ask?.startsWith('child') && age !== null && age <= oldestChildVoice) return ok('voice_child');
  return err(
    ask === undefined
      ? `“${word}” is no instrument we know. ${sayNear(word)}`
      : `“${word}” may mean several. Write which: ${ask}.`,
  );
}

const mostNear = 3;
/** Shorter words (in, low, bb) say nothing of an instrument. */
const leastLetters = 4;

/** How to mend it: with instruments that share a word with it, where there are any. */
function sayNear(word: string): string {
  const own = word.split(' ').filter((part) => part.length >= leastLetters);
  // The last word names the kind (bass recorder), and so counts for more than those before it.
  const nearness = (name: string): number => {
    const parts = toPlainWords(name.replace(/\(.*\)/, '')).split(/[^\p{L}]+/u);
    return own.reduce(
      (sum, part, at) => sum + (parts.includes(part) ? (at === own.length - 1 ? 2 : 1) : 0),
      0,
    );
  };
  const near = listInstruments()
    .map((i) => ({ ...i, nearness: nearness(i.name) }))
    .filter((i) => i.nearness > 0)
    .sort((a, b) => b.nearness - a.nearness);
  const later = 'or leave the cell empty and choose it later';
  return near.length === 0
    ? `Write it in full, such as “alto saxophone” or “violin”, ${later}.`
    : `Near to it: ${near
        .slice(0, mostNear)
        .map((i) => `“${i.name}”`)
        .join(', ')}. Write one of these, ${later}.`;
}

/** Common practice, no source. */
const oldestChildVoice = 12;
