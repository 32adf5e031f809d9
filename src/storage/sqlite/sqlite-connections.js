// One connection that writes and, for a file, a few that read: in WAL mode a reader keeps its snapshot while a change
// is written, and neither waits for the other.
import { assert } from '#core';
import { sqliteDialect } from '../dialect/dialect.js';
import { createRun } from '../store/statements.js';
import { openConnection } from './connection.js';
/** More would only help reads that wait on something else than the database. */
const mostReaders = 4;
/** Connections on a file whose writer is open already. */
export function createFileConnections(path, writer) {
    const lanes = [];
    /** An idle reader, else a new one, else the one with the fewest waiting. */
    const findLane = () => {
        assert(writer.handle.open, 'a store is not read after it was closed');
        const [quietest] = lanes.toSorted((a, b) => a.waiting - b.waiting);
        if (quietest !== undefined && (quietest.waiting === 0 || lanes.length >= mostReaders))
            return quietest;
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
            }
            finally {
                lane.waiting--;
            }
        },
        async close() {
            for (const lane of lanes)
                await closeAfterWork(lane.connection);
            await closeAfterWork(writer); // last: it folds the WAL back into the file
        },
    };
}
/** A database in memory has one connection, so readers and writers take turns. */
export function createMemoryConnections(only) {
    return {
        dialect: sqliteDialect,
        builder: only.database,
        takesTurns: true,
        withWriter: (work) => onConnection(only, work),
        withReader: (work) => onConnection(only, work),
        close: () => closeAfterWork(only),
    };
}
const onConnection = (connection, work) => connection.database.connection().execute((held) => work(createRun(held)));
/** Lets what is at work, or waits for its turn, end first. */
async function closeAfterWork(connection) {
    if (!connection.handle.open)
        return;
    await onConnection(connection, async () => undefined);
    await connection.database.destroy();
}
//# sourceMappingURL=sqlite-connections.js.map