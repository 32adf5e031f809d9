import { mkdirSync, statSync } from 'node:fs';
import { dirname } from 'node:path';

/**
 * Makes a folder for its owner alone, and those above it that are missing. Throws what the system says where it cannot be.
 * Not Node's own `recursive`: in a place that takes no folders, such as /proc, that tries for ever.
 */
export function makeFolder(folder: string): void {
  const above = dirname(folder);
  if (isFolder(folder)) return;
  if (above !== folder) makeFolder(above);
  try {
    mkdirSync(folder, { mode: 0o700 });
  } catch (error) {
    // Another program may have made it in between.
    if (!isFolder(folder)) throw error;
  }
}

/** False where there is nothing, or something else. */
export const isFolder = (path: string): boolean =>
  statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false;
