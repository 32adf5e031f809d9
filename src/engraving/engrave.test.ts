import { describe, expect, it } from 'vitest';
import { present } from '#core';
import { engrave } from './engrave.ts';
import { leadSheet } from './lead-sheet.contract.ts';

const drawn = async (musicXml: string, options: Parameters<typeof engrave>[1] = { form: 'a4' }) => {
  const result = await engrave(musicXml, options);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};
const svgOf = async (musicXml: string, options?: Parameters<typeof engrave>[1]) =>
  present((await drawn(musicXml, options))[0], 'a first page').svg;
const count = (svg: string, pattern: RegExp) => (svg.match(pattern) ?? []).length;

describe('engrave', () => {
  it('names bars and events in the order of reading', async () => {
    const svg = await svgOf(leadSheet({ bars: 8 }), { form: 'a4', name: 'lead' });
    expect(svg.match(/id="lead-bar-\d+"/g)).toEqual(
      [1, 2, 3, 4, 5, 6, 7, 8].map((n) => `id="lead-bar-${n}"`),
    );
    expect(count(svg, /data-bar="3" data-event="/g)).toBe(4);
    expect(svg).toContain('id="lead-bar-8-event-4"');
    expect(svg).not.toContain('id="lead-bar-8-event-5"');
  });

  it('gives the same bytes for the same document', async () => {
    const first = await svgOf(leadSheet({ bars: 8 }));
    await svgOf(leadSheet({ bars: 12 }));
    expect(await svgOf(leadSheet({ bars: 8 }))).toBe(first);
  });

  it('breaks systems where the document does', async () => {
    const svg = await svgOf(leadSheet({ bars: 12 }));
    expect(count(svg, /class="system"/g)).toBe(3);
  });

  it('numbers bars through the pages, each page with its own names', async () => {
    const pages = await drawn(leadSheet({ bars: 80 }), { form: 'letter', name: 'long' });
    expect(pages.length).toBeGreaterThan(1);
    const bars = pages.flatMap(({ svg }) =>
      [...svg.matchAll(/id="long-\d-bar-(\d+)"/g)].map((m) => Number(m[1])),
    );
    expect(bars).toEqual(Array.from({ length: 80 }, (_, i) => i + 1));
    const ids = pages.flatMap(({ svg }) => [...svg.matchAll(/ id="([^"]+)"/g)].map((m) => m[1]));
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('leaves no system alone on a last page that a little less room between systems would hold', async () => {
    const systems = (svg: string) => count(svg, /class="system"/g);
    const shapes = [];
    for (let bars = 36; bars <= 64; bars += 4) {
      const pages = await drawn(leadSheet({ bars }));
      expect(pages.reduce((sum, { svg }) => sum + systems(svg), 0)).toBe(bars / 4);
      shapes.push(pages.map(({ svg }) => systems(svg)));
    }
    expect(shapes.some((pages) => pages.length === 1)).toBe(true);
    expect(shapes.some((pages) => pages.length === 2)).toBe(true);
    for (const pages of shapes) if (pages.length > 1) expect(pages.at(-1)).toBeGreaterThan(1);
  });

  it('is a page of the size asked for; a column is as high as its music', async () => {
    const [a4] = await drawn(leadSheet({ bars: 4 }));
    expect([a4?.widthMm, a4?.heightMm]).toEqual([210, 297]); // ISO 216
    const [letter] = await drawn(leadSheet({ bars: 4 }), { form: 'letter' });
    expect([letter?.widthMm, letter?.heightMm]).toEqual([215.9, 279.4]); // 8.5 by 11 inches, ANSI/ASME Y14.1
    const [column] = await drawn(leadSheet({ bars: 4 }), { form: { widthMm: 180, mostHeightMm: null } });
    expect(column?.widthMm).toBe(180);
    expect(column?.heightMm).toBeGreaterThan(15);
    expect(column?.heightMm).toBeLessThan(80);
  });

  it('sets flats and sharps of chord symbols in the music font', async () => {
    const svg = await svgOf(leadSheet({ bars: 4 }));
    expect(count(svg, /<tspan font-family="'Levare Music Text'"[^>]*>\uEA64<\/tspan>/g)).toBe(3); // B♭7, E♭maj7, ♭5
    expect(count(svg, /<tspan font-family="'Levare Music Text'"[^>]*>\uEA66<\/tspan>/g)).toBe(1); // F♯
    expect(svg).not.toContain('Leipzig');
  });

  it('draws title, instrument and opening tempo over the first system', async () => {
    const svg = await svgOf(leadSheet({ bars: 4, title: 'Rain & <sun>' }));
    const heading = present(/<g class="heading">.*?<\/g>/s.exec(svg)?.[0], 'a heading');
    expect(heading).toContain('Rain &amp; &lt;sun&gt;');
    expect(heading).toContain('Alto saxophone');
    expect(heading).toContain('112');
    expect(svg).not.toContain('class="tempo"');
    expect(svg).not.toContain('pgHead');
    const bare = await svgOf(leadSheet({ bars: 4 }), { form: 'a4', heading: 'none' });
    expect(bare).not.toContain('class="heading"');
    expect(bare).toContain('class="tempo"');
    const tempoOnly = await svgOf(leadSheet({ bars: 4, title: 'Rain' }), { form: 'a4', heading: 'tempo' });
    const line = present(/<g class="heading">.*?<\/g>/s.exec(tempoOnly)?.[0], 'a heading');
    expect(line).toContain('112');
    expect(line).not.toContain('Rain');
    expect(tempoOnly).not.toContain('class="tempo"');
  });

  it('holds nothing the content security policy forbids, and takes its colour from around', async () => {
    const svg = await svgOf(leadSheet({ bars: 8 }));
    expect(svg).not.toMatch(/<style|<script| style=| color="/);
    expect(svg).toContain('fill="currentColor"');
  });

  it('says in words what it shows', async () => {
    const svg = await svgOf(leadSheet({ bars: 4, title: 'Rain' }), {
      form: 'a4',
      name: 'r',
      description: 'Four bars of <crotchets>',
    });
    expect(svg).toContain('role="img" aria-labelledby="r-title r-desc"');
    expect(svg).toContain('<title id="r-title">Rain</title>');
    expect(svg).toContain('<desc id="r-desc">Four bars of &lt;crotchets&gt;</desc>');
  });

  it('refuses what is not MusicXML, and goes on', async () => {
    for (const text of [
      '',
      'no music',
      '<foo/>',
      '<score-partwise version="4.0"><part-list/></score-partwise>',
    ]) {
      const result = await engrave(text, { form: 'a4' });
      expect(result.ok ? 'drawn' : result.error.kind).toBe('NotDrawable');
    }
    expect((await engrave(leadSheet({ bars: 4 }), { form: 'a4' })).ok).toBe(true);
  });
});
