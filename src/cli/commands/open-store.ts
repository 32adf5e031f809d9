// Opens the studio's data for a command that works without the server.

import { existsSync } from 'node:fs';
import { createSystemClock, err, ok, type Result } from '#core';
import { readConfig, studioFile } from '#server';
import { createPostgresStore, createSqliteStore, formatOpenFault } from '#storage';
import type { Store } from '#studio';
import { textOf, type Words } from './read-words.ts';

const configOf = (words: Words) => readConfig({ data: textOf(words, 'data') });

/** The studio's file in the data folder that was named, or in the usual one; refused where the studio is no file. */
export function studioPath(words: Words): Result<string, string> {
  const config = configOf(words);
  if (!config.ok) return err(config.error.message);
  return config.value.postgres === null
    ? ok(studioFile(config.value))
    : err(
        'LEVARE_POSTGRES is set, so the studio is kept on PostgreSQL, whose keeper makes and restores its backups (docs/operating.md, “Moving to PostgreSQL”). For a studio in a folder, run this again without LEVARE_POSTGRES in the environment.',
      );
}

/** What to say where there is no studio to read: opening would make an empty one. Null where there is one. */
export function findMissingStudio(words: Words): string | null {
  const config = configOf(words);
  if (!config.ok || config.value.postgres !== null) return null;
  const { dataFolder } = config.value;
  return existsSync(studioFile({ dataFolder }))
    ? null
    : `There is no studio in ${dataFolder}. Name the folder that holds it: --data FOLDER (levare start prints it).`;
}

/** The store itself; close it when done. */
export async function openStore(words: Words): Promise<Result<Store, string>> {
  const config = configOf(words);
  if (!config.ok) return err(config.error.message);
  const clock = createSystemClock();
  const { postgres, dataFolder } = config.value;
  const store =
    postgres === null
      ? await createSqliteStore({ path: studioFile({ dataFolder }), clock })
      : await createPostgresStore({ connectionString: postgres, clock });
  return store.ok ? store : err(formatOpenFault(store.error));
}
