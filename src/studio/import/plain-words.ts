// Words as they are compared: lower case, without accents, runs of other signs as one space.

/** `toPlainWords(' Schülername: ')` → `schulername` */
export function toPlainWords(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/ß/g, 'ss')
    .toLowerCase()
    .replace(/[’'`´_:*?()"“”]+/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}

/** A table of `a | b | c` lists as one lookup from word to key. */
export function listWords<Key extends string>(
  table: Readonly<Record<Key, string>>,
): ReadonlyMap<string, Key> {
  const keys = new Map<string, Key>();
  for (const key of Object.keys(table) as Key[]) // a record's keys are its type's keys
    for (const word of table[key].split('|')) keys.set(toPlainWords(word), key);
  return keys;
}
