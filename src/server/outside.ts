// The studio keeps its own time zone; until it is founded the machine's is used.

import { createSystemClock, type Random } from '#core';
import { coursePlanner, type Outside, type StarterLibrary, type Store, studioId } from '#studio';

/** What commands and views take from outside, with the clock in the studio's zone. */
export function createOutside(store: Store, random: Random, starter: StarterLibrary): () => Promise<Outside> {
  return async () => {
    const studio = await store.read((reader) => reader.get('studio', studioId));
    const clock = studio === null ? createSystemClock() : createSystemClock(studio.timeZone);
    return { clock, random, planner: coursePlanner, starter };
  };
}
