import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { explainTrouble } from './sqlite-error.ts';

test('a full disk is told as one, in SQLite’s own error', () => {
  const handle = new Database(':memory:');
  handle.exec('create table t (x)');
  handle.pragma('max_page_count = 2');
  let thrown: unknown = null;
  try {
    handle.prepare('insert into t values (?)').run('x'.repeat(10_000));
  } catch (error) {
    thrown = error;
  }
  handle.close();
  expect(explainTrouble(thrown)).toMatch(/disk .* is full\. Nothing was changed/);
});

test.each([
  ['ENOSPC', /full/],
  ['53100', /does not answer/], // disk_full: PostgreSQL 18 manual, appendix A
  ['57P01', /does not answer/], // admin_shutdown, the same
  ['ECONNREFUSED', /does not answer/],
  ['EHOSTUNREACH', /does not answer/],
  ['ENOTFOUND', /does not answer/],
  ['SQLITE_IOERR_WRITE', /cannot write/],
  ['SQLITE_READONLY', /cannot write/],
])('%s is trouble of the world around', (code, sentence) =>
  expect(explainTrouble(Object.assign(new Error('x'), { code }))).toMatch(sentence),
);

// Words of pg 8.23 (lib/client.js) and pg-pool 3.14 (index.js): a connection that breaks off in the middle has no code.
test.each([
  'Connection terminated unexpectedly',
  'Connection terminated due to connection timeout',
  'timeout exceeded when trying to connect',
  'Client has encountered a connection error and is not queryable',
])('“%s” is a database that is gone, and no mistake of ours', (message) => {
  const said = explainTrouble(new Error(message));
  expect(said).toMatch(/does not answer/);
  // It may have kept the change and died before it could say so.
  expect(said).not.toMatch(/[Nn]othing was changed/);
});

test('a mistake of ours is not laid to the disk', () => {
  expect(explainTrouble(new TypeError('x'))).toBeNull();
  expect(explainTrouble(Object.assign(new Error('x'), { code: 'SQLITE_CONSTRAINT_FOREIGNKEY' }))).toBeNull();
  expect(explainTrouble(Object.assign(new Error('x'), { code: 'ERR_INVALID_ARG_TYPE' }))).toBeNull();
});
