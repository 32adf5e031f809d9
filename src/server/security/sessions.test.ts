import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { createSessions } from './sessions.ts';

function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'levare-sessions-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  return folder;
}

test('a session outlives a restart, and its secret is not in the file', () => {
  const file = join(newFolder(), 'sessions.json');
  const sessions = createSessions(file, () => 0);
  const secret = sessions.redeem(sessions.createToken()) ?? '';
  expect(createSessions(file, () => 0).isKnown(secret)).toBe(true);
  expect(readFileSync(file, 'utf8')).not.toContain(secret);
});

test('where nothing can be written the link still lets its browser in', () => {
  const taken = join(newFolder(), 'a-file');
  writeFileSync(taken, '');
  const sessions = createSessions(join(taken, 'sessions.json'), () => 0);
  const secret = sessions.redeem(sessions.createToken());
  expect(secret).not.toBeNull();
  expect(sessions.isKnown(secret ?? '')).toBe(true);
});

test('two studios on one machine do not take each other’s cookie away', () => {
  const [one, other] = [newFolder(), newFolder()].map((folder) =>
    createSessions(join(folder, 'sessions.json'), () => 0),
  );
  expect(one?.cookie).toMatch(/^levare-session-[0-9a-f]{8}$/);
  expect(one?.cookie).not.toBe(other?.cookie);
});

test('a link older than ten minutes lets nobody in', () => {
  let now = 0;
  const sessions = createSessions(null, () => now);
  const token = sessions.createToken();
  now = 10 * 60_000 + 1;
  expect(sessions.redeem(token)).toBeNull();
});
