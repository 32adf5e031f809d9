// Lets go of changes that nobody takes back any more, so that the studio's file does not grow for ever, and so that it does
// not keep for ever what was changed or removed long ago.
//
// A year: a teacher looks back a term, at most to the same weeks of the year before; the list of changes shows the newest 200,
// which a studio of thirty students makes in days. What was typed, taught or recorded stays: only the way back to how it was
// before goes.

import { addDays, createSystemClock } from '#core';
import type { Store } from '#studio';

export const daysToTakeBack = 365;
const day = 86_400_000;

/** At once, and each day for as long as it runs. Returns how to stop. */
export function forgetOldChanges(store: Store, log: (line: string) => void): () => void {
  const forget = async () => {
    const before = `${addDays(createSystemClock('UTC').today(), -daysToTakeBack)}T00:00:00.000Z`;
    try {
      await store.forgetChanges(before);
    } catch (error) {
      // A full disk must not keep a teacher from the day's lessons; the next day tries again.
      log(`Old changes could not be dropped: ${error instanceof Error ? error.message : String(error)}`);
    }
  };
  void forget();
  const timer = setInterval(() => void forget(), day);
  timer.unref();
  return () => clearInterval(timer);
}
