import { expect, test } from 'vitest';
import { present } from '#core';
import { createSheet, findInstrument, type MaterialSpec, parseMaterialSpec, scoreToMusicXml } from '#music';
import { engrave } from '../engrave.ts';

async function drawn(fields: Readonly<Record<string, unknown>>, instrument: string): Promise<string> {
  const spec = parseMaterialSpec(fields);
  if (!spec.ok) throw new Error(spec.error.message);
  const sheet = createSheet(spec.value satisfies MaterialSpec, {
    instrument: present(findInstrument(instrument), instrument),
    stage: 'intermediate',
    age: null,
    seed: 1,
  });
  if (!sheet.ok) throw new Error(sheet.error.message);
  const pages = await engrave(scoreToMusicXml(sheet.value.score), { form: 'a4' });
  if (!pages.ok) throw new Error(pages.error.message);
  return pages.value.map(({ svg }) => svg).join('');
}

const count = (text: string, wanted: RegExp) => (text.match(wanted) ?? []).length;

test('each exercise shows its key once, at its own start', async () => {
  const svg = await drawn({ kind: 'scale', scale: 'major', keys: 5, octaves: 2 }, 'violin');
  const systems = svg.split('<g class="system"').slice(1);
  expect(systems.length).toBeGreaterThan(2);
  for (const system of systems) {
    const lastBar = system.slice(system.lastIndexOf('class="measure"'));
    const lines = count(lastBar, /<g class="barLine"/g);
    expect(lines).toBe(1);
    expect(lastBar.lastIndexOf('class="keySig"'), 'no signature behind the last note').toBeLessThan(
      Math.max(0, lastBar.indexOf('class="note"')) + 1,
    );
  }
});

test('labels ask for no weight that their typeface does not have', async () => {
  const svg = await drawn({ kind: 'scale', start: 'Bb', keys: 1 }, 'trombone');
  expect(svg).not.toContain('bold');
  const label = present(/<g class="dir"[^>]*>/.exec(svg)?.[0], 'a label');
  expect(label).toContain("'Instrument Sans'");
  expect(label).toContain('font-weight="600"');
  expect(label).not.toContain('italic');
  const words = await drawn({ kind: 'phrase', showScale: false }, 'trombone');
  expect(present(/<g class="dir"[^>]*>/.exec(words)?.[0], 'words')).toContain("'Instrument Serif'");
});

test('notes to use stand alone, without stems, metre or number; the metre comes with the first bar', async () => {
  const svg = await drawn({ kind: 'phrase', compass: 5, metre: '3/4' }, 'flute');
  const [free = '', first = ''] = svg.split('<g class="system"').slice(1);
  expect(count(free, /class="notehead"/g)).toBe(5);
  expect(count(free, /class="(stem|meterSig|rest)"/g)).toBe(0);
  expect(count(free, /class="mNum"[^>]*><text [^>]*[^/]>/g)).toBe(0);
  expect(count(first, /class="meterSig"/g)).toBe(1);
});

test('labels set flats in the music font', async () => {
  const svg = await drawn({ kind: 'scale', start: 'Bb', keys: 1 }, 'trombone');
  const label = present(/<g class="dir"[\s\S]*?<\/text>/.exec(svg)?.[0], 'a label');
  expect(label).not.toContain('♭');
  expect(label).toContain('\uEA64');
});
