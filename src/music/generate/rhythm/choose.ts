// Seeded choices.

import { present, type Random } from '#core';

/** One of some things, likelier by weight. At least one weight is above 0. */
export function chooseWeighted<T>(random: Random, items: readonly T[], weight: (item: T) => number): T {
  const total = items.reduce((sum, item) => sum + weight(item), 0);
  let left = random.next() * total;
  for (const item of items) {
    left -= weight(item);
    if (left < 0) return item;
  }
  return present(
    items.findLast((item) => weight(item) > 0),
    'something to choose from',
  );
}
