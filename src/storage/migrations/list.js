// Every migration, by hand and in order. Released ones are never edited, renumbered or removed.
import { firstTables } from './0001-first-tables.js';
export const migrations = [firstTables];
//# sourceMappingURL=list.js.map