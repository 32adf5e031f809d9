import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, expect, test, vi } from 'vitest';
import { backing } from './backing.ts';

const folder = mkdtempSync(join(tmpdir(), 'levare-backing-'));
afterAll(() => rmSync(folder, { recursive: true }));
afterEach(() => vi.restoreAllMocks());

const out = join(folder, 'track.mid');
function specFile(spec: unknown): string {
  const path = join(folder, 'spec.json');
  writeFileSync(path, typeof spec === 'string' ? spec : JSON.stringify(spec));
  return path;
}
async function run(spec: unknown, ...more: readonly string[]): Promise<readonly [number, string]> {
  const said: string[] = [];
  vi.spyOn(console, 'error').mockImplementation((line: unknown) => void said.push(String(line)));
  return [await backing([specFile(spec), ...more]), said.join('\n')];
}
const turn = { kind: 'backing', chart: '| Dm7 G7 | Cmaj7 |' };

test('a spec becomes a Standard MIDI File; the same spec and seed give the same bytes, another seed others', async () => {
  const make = async (seed: string) => {
    expect(await run(turn, '--format', 'midi', '--seed', seed, '--out', out)).toEqual([0, '']);
    return readFileSync(out);
  };
  const first = await make('3');
  expect(first.toString('latin1', 0, 4)).toBe('MThd'); // Standard MIDI Files 1.0, header chunk
  expect(await make('3')).toEqual(first);
  expect(await make('4')).not.toEqual(first);
});

test.each([
  ['tempo', { ...turn, tempo: 500 }, '320'],
  ['feel', { ...turn, feel: 'swinng' }, '"swing"'],
  ['chart', { kind: 'backing' }, '"| C |"'],
  ['chart', { kind: 'backing', chart: '| Dm7 H7 |' }, 'H7'],
  ['tempoo', { ...turn, tempoo: 90 }, 'tempo'],
  ['kind', { ...turn, kind: 'backing-track' }, '"backing"'],
  ['keys', { ...turn, keys: 'forths' }, '"fourths"'],
  ['keys/1', { ...turn, keys: [0, 12] }, '11'],
  ['choruses', { ...turn, chart: '| C | F | G7 | C |'.repeat(1), tempo: 30, choruses: 64 }, '56'],
  ['swing', { ...turn, swing: 9 }, '4'],
  ['JSON', '{ "kind": ', 'JSON'],
  ['object', [1], 'object'],
])(
  'a spec at fault in %s is refused with 2, the field and the nearest value',
  async (field, spec, nearest) => {
    const [status, said] = await run(spec, '--format', 'midi', '--out', out);
    expect(status).toBe(2);
    expect(said).toContain(field);
    expect(said).toContain(nearest);
  },
);

test.each([
  [['--format', 'mp3'], 'flac'],
  [[], '--format'],
  [['--format', 'midi', '--seed', 'x'], '--seed'],
  [['--format', 'midi', '--loud'], '--loud'],
] as const)('words at fault are refused with 2: %s', async (words, hint) => {
  const [status, said] = await run(turn, ...words);
  expect(status).toBe(2);
  expect(said).toContain(hint);
});

test('a place that cannot be written is said, with 1', async () => {
  const [status, said] = await run(turn, '--format', 'midi', '--out', join(folder, 'none', 'track.mid'));
  expect(status).toBe(1);
  expect(said).toContain('could not be written');
});
