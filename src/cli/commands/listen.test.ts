import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, expect, test, vi } from 'vitest';
import { formatWav } from '#sound';
import { listen } from './listen.ts';

const folder = mkdtempSync(join(tmpdir(), 'levare-listen-'));
afterAll(() => rmSync(folder, { recursive: true }));
afterEach(() => vi.restoreAllMocks());

const rate = 22_050;
const keys = [60, 62, 64, 65, 67, 65, 64, 62, 60, 64, 67, 72];

/** Crotchets at 120 to the minute from half a second on, in stereo. */
function tuneFile(name: string, cents = 0): string {
  const samples = new Float32Array(rate * 7);
  for (const [k, key] of keys.entries())
    for (let i = 0; i < rate * 0.42; i++) {
      const t = i / rate;
      const hz = 440 * 2 ** ((key + cents / 100 - 69) / 12);
      const level = Math.min(1, t / 0.01, (0.42 - t) / 0.02);
      for (let h = 1; h <= 5; h++) {
        const at = Math.round((0.5 + k * 0.5) * rate) + i;
        samples[at] = (samples[at] ?? 0) + (0.2 * level * Math.sin(2 * Math.PI * hz * h * t)) / h;
      }
    }
  const path = join(folder, name);
  writeFileSync(path, formatWav([samples, samples], rate));
  return path;
}

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

async function run(words: readonly string[]): Promise<{ status: number; said: string }> {
  const said: string[] = [];
  const hear = (line: unknown) => void said.push(String(line));
  vi.spyOn(console, 'error').mockImplementation(hear);
  vi.spyOn(console, 'log').mockImplementation(hear);
  return { status: await listen(words), said: said.join('\n') };
}

test('a take becomes notes, grid, pitch track, evidence and answers to checks', async () => {
  const context = file(
    'context.json',
    '{ "tempo": 120, "metre": [4, 4], "offsetS": 0.5, "scale": { "tonic": "C", "name": "major" } }',
  );
  const checks = file('checks.json', '[{ "kind": "mostlyValue", "value": "crotchet", "others": 0 }]');
  const { status, said } = await run([tuneFile('tune.wav'), '--context', context, '--checks', checks]);
  expect(status, said).toBe(0);
  const report = JSON.parse(said) as Record<string, never> & {
    notes: { onset: number; offset: number; midi: number; cents: number; db: number }[];
    checks: { answer: string }[];
  };
  expect(report.notes.map((note) => note.midi)).toEqual(keys);
  for (const [k, note] of report.notes.entries())
    expect(Math.abs(note.onset - 0.5 - k * 0.5)).toBeLessThan(0.02);
  expect(report).toMatchObject({
    grid: { offset: 0.5, tempo: 120 },
    evidence: { notesChosen: { heard: true, figures: { inScale: { value: 1 } } } },
    problems: [],
  });
  expect(report.checks[0]?.answer).toBe('reached');
});

test('two takes are laid side by side', async () => {
  const { status, said } = await run([tuneFile('tune.wav', 30), '--beside', tuneFile('earlier.wav', 0)]);
  expect(status, said).toBe(0);
  const { beside } = JSON.parse(said) as {
    beside: { row: string; name: string; difference: { value: number }; isLarger: boolean }[];
  };
  const tuning = beside.find((change) => change.row === 'intonation' && change.name === 'tuning');
  expect(tuning?.isLarger).toBe(true);
  expect(Math.abs((tuning?.difference.value ?? 0) - 30)).toBeLessThan(4);
});

test.each([
  ['no words', [], /name one recording: levare listen/],
  ['no such file', [join(folder, 'nothing.wav')], /There is no file/],
  ['a folder', [folder], /is a folder/],
  ['another kind of file', [file('words.wav', 'once upon a time')], /not a WAV file/],
  ['a context that is not JSON', [file('x.wav', ''), '--context', file('broken.json', '{')], /not JSON/],
  [
    'a context at fault',
    [file('x.wav', ''), '--context', file('odd.json', '{"tempo":"quick"}')],
    /tempo is "quick"/,
  ],
  [
    'checks at fault',
    [file('x.wav', ''), '--checks', file('odd-checks.json', '[{"kind":"mark"}]')],
    /kind is mark/,
  ],
  ['an unknown option', ['a.wav', '--loud'], /--loud/],
] as const)('%s: a sentence and status 2', async (_name, words, message) => {
  const { status, said } = await run(words);
  expect(said).toMatch(message);
  expect(status).toBe(2);
});
