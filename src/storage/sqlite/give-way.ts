// SQLite answers in the same breath, so that a long row of statements, as when a whole journal is gone through, would let no
// request in between. Here whoever has held this program for a while lets others have their turn before it goes on.

import { setImmediate } from 'node:timers/promises';
import type { Run } from '../store/statements.ts';

/** Short beside the tenth of a second in which a screen should answer, long beside what giving way costs. */
const longestHold = 15;

let heldSince = 0;

/** The same, giving way between two statements. Meanwhile other readers read, and other changes wait for this one to end. */
export function givingWay(run: Run): Run {
  return async (sql, parameters) => {
    if (performance.now() - heldSince > longestHold) {
      await setImmediate();
      heldSince = performance.now();
    }
    return run(sql, parameters);
  };
}
