import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, expect, test, vi } from 'vitest';
import { chart } from './chart.ts';
import { sheet } from './sheet.ts';

const folder = mkdtempSync(join(tmpdir(), 'levare-sheet-'));
afterAll(() => rmSync(folder, { recursive: true }));
afterEach(() => vi.restoreAllMocks());

const said: string[] = [];
function listen(): void {
  said.length = 0;
  const hear = (line: unknown) => void said.push(String(line));
  vi.spyOn(console, 'error').mockImplementation(hear);
  vi.spyOn(console, 'log').mockImplementation(hear);
}

function specFile(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}
const scale = specFile('scale.json', '{ "kind": "scale", "start": "D", "keys": 1 }');

async function make(format: string, more: readonly string[] = [], instrument = 'trumpet_bb') {
  listen();
  const out = join(folder, `sheet.${format}`);
  const words = ['--instrument', instrument, '--stage', 'beginner', '--format', format, '--out', out];
  expect(await sheet([scale, ...words, ...more]), said.join('\n')).toBe(0);
  return readFileSync(out);
}

test('a spec becomes MusicXML for the instrument, a whole tone above what sounds for a trumpet in B flat', async () => {
  const xml = (await make('musicxml')).toString();
  expect(xml).toContain('<score-partwise version="4.0">');
  expect(xml).toContain('<diatonic>-1</diatonic>');
  expect(xml).toContain('<chromatic>-2</chromatic>');
  expect(xml).toMatch(/<step>D<\/step>/);
});

test('the same spec and seed give the same bytes in every format', async () => {
  for (const format of ['musicxml', 'svg', 'pdf', 'midi', 'text'])
    expect(await make(format, ['--seed', '7']), format).toEqual(await make(format, ['--seed', '7']));
});

test('each format is what it says', async () => {
  expect((await make('midi')).toString('latin1', 0, 4)).toBe('MThd'); // Standard MIDI Files 1.0, header chunk
  expect((await make('pdf')).toString('latin1', 0, 5)).toBe('%PDF-'); // ISO 32000-1, 7.5.2
  const svg = (await make('svg', ['--page', 'letter'])).toString();
  expect(svg).toMatch(/^<\?xml [^>]*\?>\n<svg [^>]*width="215\.9mm"/);
  expect(svg).toContain('@font-face'); // stands alone, with flats and sharps
  expect((await make('text')).toString()).toMatch(/trumpet/i);
});

test.each([
  ['octaves', '{ "kind": "scale", "octaves": 9 }', '4'],
  ['kind', '{ "kind": "scael" }', '"scale"'],
  ['kind', '{ "kind": "backing" }', 'makes sound and no sheet'],
  ['scael', '{ "kind": "scale", "scael": "major" }', 'scale'],
  ['chart', '{ "kind": "chart", "chart": "| Hm7 |" }', 'Cm7'],
  ['values/1', '{ "kind": "rhythm", "values": ["minim", "crochet"] }', '"crotchet"'],
])('a bad %s is refused with status 2 and the nearest valid value', async (field, text, nearest) => {
  listen();
  const file = specFile('bad.json', text);
  expect(await sheet([file, '--instrument', 'violin', '--stage', 'beginner', '--format', 'text'])).toBe(2);
  expect(said.join('\n')).toContain(`“${field}”`);
  expect(said.join('\n')).toContain(nearest);
});

test.each([
  ['--instrument', 'violn', 'violin'],
  ['--instrument', 'Recorder_T', 'recorder_treble" or "recorder_tenor'],
  ['--stage', 'begginer', 'beginner'],
  ['--format', 'musixml', 'musicxml'],
  ['--seed', '1.6', '2'],
  ['--age', '300', '99'],
  ['--page', 'a5', 'a4'],
])('a bad %s is refused with status 2 and the nearest valid value', async (option, value, nearest) => {
  listen();
  const good = { '--instrument': 'violin', '--stage': 'beginner', '--format': 'text', [option]: value };
  expect(await sheet([scale, ...Object.entries(good).flat()])).toBe(2);
  expect(said.join('\n')).toContain(option);
  expect(said.join('\n')).toMatch(new RegExp(`nearest is "?${nearest}"?\\.`));
});

test('a missing file, no JSON and an option nobody knows are refused with status 2', async () => {
  listen();
  const words = ['--instrument', 'violin', '--stage', 'beginner', '--format', 'text'];
  expect(await sheet([join(folder, 'none.json'), ...words])).toBe(2);
  expect(await sheet([specFile('no.json', '{ kind'), ...words])).toBe(2);
  expect(await sheet([scale, ...words, '--louder', '1'])).toBe(2);
  expect(await sheet(words)).toBe(2);
  expect(await sheet([scale, '--stage', 'beginner', '--format', 'text'])).toBe(2);
});

// Written above sounding: E flat alto a major sixth, B flat trumpet a whole tone, horn in F a fifth (Adler, The Study of
// Orchestration, 3rd ed. 2002, table of transpositions); a violin reads what sounds.
test.each([
  ['alto_sax', '| Bm7 E7 | A |'],
  ['trumpet_bb', '| Em7 A7 | D |'],
  ['horn_f', '| Am7 D7 | G |'],
  ['violin', '| Dm7 G7 | C |'],
])('a chart is written for %s', async (instrument, expected) => {
  listen();
  expect(await chart(['| Dmin7 G7 | C |', '--for', instrument])).toBe(0);
  expect(said).toEqual([expected]);
});

test('a chart that cannot be read is refused with status 2, by bar, symbol and nearest', async () => {
  listen();
  expect(await chart(['| Dm7 | Hm7 |', '--for', 'violin'])).toBe(2);
  expect(said.join('\n')).toMatch(/Bar 2.*Hm7.*Cm7/);
  expect(await chart(['| Dm7 |', '--for', 'violn'])).toBe(2);
  expect(await chart(['| Dm7 |'])).toBe(2);
  expect(await chart([])).toBe(2);
});
