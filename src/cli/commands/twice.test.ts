import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test, vi } from 'vitest';
import { backing } from './backing.ts';
import { plan } from './plan.ts';
import { sheet } from './sheet.ts';
import { units } from './units.ts';

const folder = mkdtempSync(join(tmpdir(), 'levare-twice-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const file = (name: string, text: string) => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

async function run(
  command: (words: readonly string[]) => Promise<number>,
  words: readonly string[],
): Promise<readonly [number, string]> {
  const [out, errors] = [vi.spyOn(console, 'log'), vi.spyOn(console, 'error')];
  for (const spy of [out, errors]) spy.mockImplementation(() => undefined);
  const status = await command(words);
  const said = [...out.mock.calls, ...errors.mock.calls].flat().join('\n');
  for (const spy of [out, errors]) spy.mockRestore();
  return [status, said];
}

// What says it twice is told as what is no JSON: a file that cannot be read, status 2.
test.each([
  ['plan', plan, '{"id": "p",\n "alpha": 0.2, "id": "q"}', [], 'id', 2],
  [
    'sheet',
    sheet,
    '{"kind": "rhythm",\n "bars": 2, "kind": "scale"}',
    ['--instrument', 'flute', '--stage', 'beginner', '--format', 'text'],
    'kind',
    2,
  ],
  ['backing', backing, '{"kind": "backing",\n "bars": 2, "kind": "x"}', ['--format', 'midi'], 'kind', 2],
  ['units', units, '{"format": "x",\n "skills": [], "format": "y"}', [], 'format', 2],
] as const)('%s refuses a file that says a field twice', async (name, command, text, more, key, expected) => {
  const path = file(`${name}.json`, text);
  const words = name === 'units' ? ['check', path] : [path, ...more];
  const [status, said] = await run(command, words);
  expect(status).toBe(expected);
  expect(said).toMatch(new RegExp(`line 2, column \\d+\\) says "${key}" twice\\. Keep one of the two\\.`));
  const [broken] = await run(command, words.with(words.indexOf(path), file(`${name}-broken.json`, '{')));
  expect(broken).toBe(expected);
});
