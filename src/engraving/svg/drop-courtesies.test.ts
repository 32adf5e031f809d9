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

test('labels set flats in the music font', async () => {
  const svg = await drawn({ kind: 'scale', start: 'Bb', keys: 1 }, 'trombone');
  const label = present(/<g class="dir"[\s\S]*?<\/text>/.exec(svg)?.[0], 'a label');
  expect(label).not.toContain('♭');
  expect(label).toContain('\uEA64');
});
