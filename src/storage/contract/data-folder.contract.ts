// A data folder for the length of one test, and a clock whose day can be turned.

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { Clock, PlainDate, PlainTime } from '#core';
import {
  createSqliteStore,
  type SqliteStore,
  type SqliteStoreOptions,
} from '../sqlite/create-sqlite-store.ts';

/** The path of a studio's file in a folder that is not there yet. */
export function newStudioPath(): string {
  const root = mkdtempSync(join(tmpdir(), 'levare-folder-'));
  onTestFinished(() => rmSync(root, { recursive: true, force: true }));
  return join(root, 'studio', 'levare.sqlite');
}

export interface TurnedClock extends Clock {
  day: PlainDate;
}

export function createTurnedClock(day: string): TurnedClock {
  const clock: TurnedClock = {
    day: day as PlainDate,
    today: () => clock.day,
    time: () => '09:00' as PlainTime,
    instant: () => `${clock.day}T09:00:00.000Z`,
  };
  return clock;
}

/** A store that must open. Closing it is the test's. */
export async function openStudio(options: SqliteStoreOptions): Promise<SqliteStore> {
  const opened = await createSqliteStore(options);
  if (!opened.ok) throw new Error(JSON.stringify(opened.error));
  return opened.value;
}
