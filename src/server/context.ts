// Everything a route may need, made once in start-server.ts and handed down: no route reaches for the world itself.

import type { Clock, Random } from '#core';
import type { Skill, UnitDocument } from '#planning';
import type { Store } from '#studio';
import type { Hub } from './live/hub.ts';

export interface ServerContext {
  readonly store: Store;
  /** The studio's clock, in the studio's own time zone once it is founded. */
  readonly clock: () => Promise<Clock>;
  readonly random: Random;
  readonly library: StarterLibrary;
  readonly hub: Hub;
  readonly log: (line: string) => void;
}

export interface StarterLibrary {
  readonly skills: readonly Skill[];
  readonly units: readonly UnitDocument[];
}
