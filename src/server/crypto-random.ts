// The platform's strong randomness in the shape that pure code draws from.

import { randomBytes } from 'node:crypto';
import type { Random } from '#core';

export function createRandom(): Random {
  let pool = randomBytes(4096);
  let at = 0;
  return {
    next() {
      if (at + 4 > pool.length) {
        pool = randomBytes(4096);
        at = 0;
      }
      const value = pool.readUInt32BE(at) / 4294967296;
      at += 4;
      return value;
    },
  };
}
