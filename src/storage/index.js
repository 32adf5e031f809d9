// storage: keeps a studio in SQLite or PostgreSQL. Alone in knowing SQL.
export { listBackups } from './backup/backups.js';
export { restoreBackup } from './backup/restore-backup.js';
export { formatRestoreFault } from './backup/restore-fault.js';
export { formatOpenFault } from './open-fault.js';
export { createPostgresStore } from './postgres/create-postgres-store.js';
export { createMemoryStore, createSqliteStore, } from './sqlite/create-sqlite-store.js';
export { parseDump } from './store/parse-dump.js';
//# sourceMappingURL=index.js.map