// Names as a hand types them.

import { mostOtherNames } from '#contract';

const plain = (name: string) => name.normalize('NFC').trim().replaceAll(/\s+/gu, ' ');

/** Whether a name was typed as it stands, whatever the spaces around it. */
export const isTyped = (typed: string, name: string): boolean => plain(typed) === plain(name);

/** `splitNames('Nana, Zé ,')` → `['Nana', 'Zé']`; single letters and more than a few are left out. */
export function splitNames(text: string): readonly string[] {
  const names = text
    .split(',')
    .map(plain)
    .filter((name) => name.length > 1 && name.length <= 120);
  return [...new Set(names)].slice(0, mostOtherNames);
}
