import type { Connections } from '../store/connections.ts';
import { type SqliteConnection } from './connection.ts';
/** Connections on a file whose writer is open already. */
export declare function createFileConnections(path: string, writer: SqliteConnection): Connections;
/** A database in memory has one connection, so readers and writers take turns. */
export declare function createMemoryConnections(only: SqliteConnection): Connections;
