import type { Migration } from './migration.ts';
export declare const firstTables: Migration;
