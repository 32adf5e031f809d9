// One connection that writes and, for a file, a few that read: in WAL mode a reader keeps its snapshot while a change
// is written, and neither waits for the other.

import { assert } from '#core';
import { sqliteDialect } from '../dialect/dialect.ts';
import type { Connections } from '../store/connections.ts';
import { createRun, type Run } from '../store/statements.ts';
import { openConnection, type SqliteConnection } from './connection.ts';

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

  return {
    ...createMemoryConnections(writer),
    takesTurns: false,
    async withReader(work) {
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
    close: () => closeAfterWork(only),
  };
}

const onConnection = <R>(connection: SqliteConnection, work: (run: Run) => Promise<R>): Promise<R> =>
  connection.database.connection().execute((held) => work(createRun(held)));

/** Lets what is at work, or waits for its turn, end first. */
async function closeAfterWork(connection: SqliteConnection): Promise<void> {
  if (!connection.handle.open) return;
  await onConnection(connection, async () => undefined);
  await connection.database.destroy();
}
