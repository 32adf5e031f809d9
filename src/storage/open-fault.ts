// Why a studio could not be opened, and what to tell whoever wants it open.

import { unreachable } from '#core';
import type { DatabaseNewer, NotAStudio } from './migrations/migrate.ts';

export type OpenFault =
  | ({ readonly path: string } & DatabaseNewer)
  | ({ readonly path: string } & NotAStudio)
  /** Another Levare has the data folder. `holder` says which, when it can be read. */
  | { readonly kind: 'FolderInUse'; readonly folder: string; readonly holder: string | null }
  /** The folder or the file cannot be made, read or written. */
  | { readonly kind: 'FolderUnusable'; readonly path: string; readonly detail: string }
  /** The file is not a SQLite database, or is a damaged one. `backups` are there to restore, newest first. */
  | {
      readonly kind: 'FileDamaged';
      readonly path: string;
      readonly detail: string;
      readonly backupFolder: string;
      readonly backups: readonly string[];
    }
  /** No backup could be made before a migration, so nothing was changed. */
  | { readonly kind: 'BackupFailed'; readonly path: string; readonly detail: string }
  /** PostgreSQL does not answer, or not to us. `path` is the database's address without its password. */
  | { readonly kind: 'DatabaseUnreachable'; readonly path: string; readonly detail: string }
  /** PostgreSQL answers but is set up in a way that would spoil text. */
  | { readonly kind: 'DatabaseUnsuitable'; readonly path: string; readonly detail: string };

/** The fault in sentences: what, where, how to mend. */
export function formatOpenFault(fault: OpenFault): string {
  switch (fault.kind) {
    case 'DatabaseNewer':
      return `The studio at ${fault.path} was last opened by a newer Levare (its tables are at version ${fault.found}, this program knows ${fault.known}). Nothing was changed. Install the newer Levare again, or restore a backup made by this one.`;
    case 'NotAStudio':
      return `The database at ${fault.path} belongs to something else (it has the tables ${fault.tables.slice(0, 5).join(', ')}). Nothing was changed. Choose another file or another database.`;
    case 'FolderInUse':
      return `Another Levare is using the studio in ${fault.folder}${fault.holder === null ? '' : ` (${fault.holder})`}. Use that one, or close it and start again.`;
    case 'FolderUnusable':
      return `The studio cannot be kept at ${fault.path}: ${fault.detail}. Make the folder writable for you, free some space, or choose another folder.`;
    case 'FileDamaged':
      return `The file ${fault.path} is not a studio that can be read: ${fault.detail}. Nothing in it was changed. ${
        fault.backups[0] === undefined
          ? `There are no backups in ${fault.backupFolder}.`
          : `Backups are in ${fault.backupFolder}; the newest is ${fault.backups[0]}. Restore it with: npx levare restore ${fault.backups[0]}`
      }`;
    case 'BackupFailed':
      return `The studio at ${fault.path} has to be brought up to date, but the backup before it failed: ${fault.detail}. Nothing in it was changed. Free some space or mend the backup folder, and start again.`;
    case 'DatabaseUnreachable':
      return `The database at ${fault.path} cannot be used: ${fault.detail}. Check that PostgreSQL is running, and the address, name and password.`;
    case 'DatabaseUnsuitable':
      return `The database at ${fault.path} is not set up for a studio: ${fault.detail}. Nothing was changed. Create one with: create database levare encoding 'UTF8' template template0`;
    default:
      return unreachable(fault);
  }
}
