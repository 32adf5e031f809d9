import { existsSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { createTurnedClock } from '../contract/data-folder.contract.ts';
import { formatOpenFault } from '../open-fault.ts';
import { createSqliteStore } from './create-sqlite-store.ts';
import { makeFolder } from './make-folder.ts';

function scratch(): string {
  const root = mkdtempSync(join(tmpdir(), 'levare-folder-'));
  onTestFinished(() => rmSync(root, { recursive: true, force: true }));
  return root;
}

test('makes what is missing, for its owner alone, and leaves what is there', () => {
  const root = scratch();
  const deep = join(root, 'a', 'b', 'c');
  makeFolder(deep);
  expect(statSync(deep).isDirectory()).toBe(true);
  expect(statSync(deep).mode & 0o777).toBe(0o700);
  makeFolder(deep);
});

test('throws where a file is in the way', () => {
  const root = scratch();
  writeFileSync(join(root, 'file'), '');
  expect(() => makeFolder(join(root, 'file'))).toThrow(/EEXIST/);
  expect(() => makeFolder(join(root, 'file', 'within'))).toThrow(/EEXIST|ENOTDIR/);
});

// Linux alone has such a place; elsewhere the folder is a plain one that cannot be made at the root of the disk.
test.skipIf(!existsSync('/proc/self'))(
  'says at once that a studio cannot be kept where no folder can be',
  async () => {
    const opened = await createSqliteStore({
      path: '/proc/levare-nope/deeper/studio.sqlite',
      clock: createTurnedClock('2026-03-04'),
    });
    expect(opened).toMatchObject({ ok: false, error: { kind: 'FolderUnusable' } });
    if (!opened.ok)
      expect(formatOpenFault(opened.error)).toMatch(
        /^The studio cannot be kept at \/proc\/levare-nope\/deeper: ENOENT/,
      );
  },
);
