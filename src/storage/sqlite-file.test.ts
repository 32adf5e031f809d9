import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';
import { createFixedClock, type PlainDate } from '#core';
import { createSqliteStore } from '#storage';
import { describeStore } from './store.contract.ts';

const root = mkdtempSync(join(tmpdir(), 'levare-contract-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));
let nth = 0;

describeStore('a SQLite file', {
  async open() {
    const path = join(root, String(nth++), 'levare.sqlite');
    const opened = await createSqliteStore({ path, clock: createFixedClock('2026-03-04' as PlainDate) });
    if (!opened.ok) throw new Error(JSON.stringify(opened.error));
    return opened.value;
  },
  readsDuringChanges: true,
});
