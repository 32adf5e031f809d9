// The five levels of a skill, in the studio's words.

import type { Level } from '#planning';

export const levels: Readonly<Record<Level, { readonly name: string; readonly says: string }>> = {
  0: { name: 'Not yet', says: 'has not met it' },
  1: { name: 'Introduced', says: 'has met it' },
  2: { name: 'With help', says: 'does it with help' },
  3: { name: 'Alone', says: 'does it alone' },
  4: { name: 'Transfers', says: 'does it in a new key, tune or tempo' },
};

export const levelWords = {
  label: 'Level',
  unknown: 'No level recorded',
} as const;
