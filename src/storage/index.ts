// storage: keeps a studio in SQLite or PostgreSQL. Alone in knowing SQL.

export { formatOpenFault, type OpenFault } from './open-fault.ts';
export {
  createMemoryStore,
  createSqliteStore,
  type SqliteStoreOptions,
} from './sqlite/create-sqlite-store.ts';
