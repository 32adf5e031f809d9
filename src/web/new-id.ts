// Ids are minted where the change is made, so that a queued change counts once. Chance comes from the browser's
// cryptographic source.

import { createId, type Id, type Random } from '#core';

/** Random from `crypto.getRandomValues`, 32 bits a draw. */
export const browserRandom: Random = {
  next() {
    const [draw = 0] = crypto.getRandomValues(new Uint32Array(1));
    return draw / 4294967296;
  },
};

/** A fresh id. `newId('student')` → `student:6h2k9v0c4m8qz1rt` (for example) */
export function newId<Prefix extends string>(prefix: Prefix): Id<Prefix> {
  return createId(prefix, browserRandom);
}
