// Everything a route may need, made once in start-server.ts and handed down: no route reaches for the world itself.

import type { SqliteStore } from '#storage';
import type { Outside, Store } from '#studio';
import type { Hub } from './live/hub.ts';

export interface ServerContext {
  readonly store: Store;
  /** Time in the studio's own zone, chance, the planner and the starter library. */
  readonly outside: () => Promise<Outside>;
  readonly hub: Hub;
  /** The backups and copies beside the studio; null where somebody else looks after them. */
  readonly copies: Pick<SqliteStore, 'listCopies' | 'rewriteCopies'> | null;
  readonly log: (line: string) => void;
}
