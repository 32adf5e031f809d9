// One connection that writes and, for a file, a few that read: in WAL mode a reader keeps its snapshot while a change
// is written, and neither waits for the other.

import { assert } from '#core';
import { sqliteDialect } from '../dialect/dialect.ts';
import { type Connections, tryToCompact } from '../store/connections.ts';
import { createRun, type Run } from '../store/statements.ts';
import { openConnection, type SqliteConnection } from './connection.ts';
import { givingWay } from './give-way.ts';

/** More would only help reads that wait on something else than the database. */
const mostReaders = 4;

interface Lane {
  readonly connection: SqliteConnection;
  waiting: number;
}

/** Connections on a file whose writer is open already. */
export function createFileConnections(path: string, writer: SqliteConnection): Connections {
  const lanes: Lane[] = [];

  /** An idle reader, else a new one, else the one with the fewest waiting. */
  const findLane = (): Lane => {
    assert(writer.handle.open, 'a store is not read after it was closed');
    const [quietest] = lanes.toSorted((a, b) => a.waiting - b.waiting);
    if (quietest !== undefined && (quietest.waiting === 0 || lanes.length >= mostReaders)) return quietest;
    const lane = { connection: openConnection(path, 'read'), waiting: 0 };
    lanes.push(lane);
    return lane;
  };

  /** Readers wait meanwhile: the file cannot be cut to its new length under one that reads. */
  let alone: Promise<unknown> = Promise.resolve();
  const compactAlone = async (): Promise<void> => {
    const free: (() => void)[] = [];
    try {
      for (const { connection } of lanes)
        await new Promise<void>((held, failed) => {
          onConnection(connection, () => {
            held();
            return new Promise<void>((done) => free.push(done));
          }).catch(failed);
        });
      await onConnection(writer, async () => compactFile(writer));
    } finally {
      for (const done of free) done();
    }
  };

  return {
    ...createMemoryConnections(writer),
    takesTurns: false,
    compact() {
      const compacted = tryToCompact(compactAlone);
      alone = compacted;
      return compacted;
    },
    async withReader(work) {
      for (let waited: unknown = null; waited !== alone; ) {
        waited = alone;
        await waited;
      }
      const lane = findLane();
      lane.waiting++;
      try {
        return await onConnection(lane.connection, work);
      } finally {
        lane.waiting--;
      }
    },
    async close() {
      for (const lane of lanes) await closeAfterWork(lane.connection);
      await closeAfterWork(writer); // last: it folds the WAL back into the file
    },
  };
}

/** A database in memory has one connection, so readers and writers take turns. */
export function createMemoryConnections(only: SqliteConnection): Connections {
  return {
    dialect: sqliteDialect,
    builder: only.database,
    takesTurns: true,
    withWriter: (work) => onConnection(only, work),
    withReader: (work) => onConnection(only, work),
    compact: () => tryToCompact(() => onConnection(only, async () => compactFile(only))),
    close: () => closeAfterWork(only),
  };
}

/**
 * Deleting overwrites rows, but a page that was split earlier may hold a second copy of one, and the WAL holds pages as they
 * were: only a file written anew holds nothing of them. `user_version` says that this is still to be done.
 */
export function compactFile({ handle }: SqliteConnection): void {
  handle.exec('vacuum');
  const busy = handle.pragma('wal_checkpoint(truncate)', { simple: true });
  if (busy !== 0) throw new Error('another program is reading the studio’s file');
  handle.pragma('user_version = 0');
}

const onConnection = <R>(connection: SqliteConnection, work: (run: Run) => Promise<R>): Promise<R> =>
  connection.database.connection().execute((held) => work(givingWay(createRun(held))));

/** Lets what is at work, or waits for its turn, end first. */
async function closeAfterWork(connection: SqliteConnection): Promise<void> {
  if (!connection.handle.open) return;
  await onConnection(connection, async () => undefined);
  await connection.database.destroy();
}
