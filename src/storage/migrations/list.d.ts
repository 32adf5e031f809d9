import type { Migration } from './migration.ts';
export declare const migrations: readonly Migration[];
