// storage: keeps a studio in SQLite or PostgreSQL. Alone in knowing SQL.

export type { Backup } from './backup/backup-name.ts';
export { listBackups } from './backup/backups.ts';
export { type Restored, restoreBackup } from './backup/restore-backup.ts';
export { formatRestoreFault, type RestoreFault } from './backup/restore-fault.ts';
export type { Copy, CopyLeft } from './backup/rewrite-copies.ts';
export type { FileDoubtful } from './backup/verify-file.ts';
export { formatOpenFault, type OpenFault } from './open-fault.ts';
export { createPostgresStore, type PostgresStoreOptions } from './postgres/create-postgres-store.ts';
export {
  createMemoryStore,
  createSqliteStore,
  type SqliteStore,
  type SqliteStoreOptions,
} from './sqlite/create-sqlite-store.ts';
export { makeFolder } from './sqlite/make-folder.ts';
export { explainTrouble } from './sqlite/sqlite-error.ts';
export { parseDump } from './store/parse-dump.ts';
