import { inflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { engrave } from '#engraving';
import { pagesToPdf } from './pages-to-pdf.ts';

const notes =
  '<note><pitch><step>C</step><octave>5</octave></pitch><duration>4</duration><voice>1</voice><type>whole</type></note>';
const harmony =
  '<harmony><root><root-step>B</root-step><root-alter>-1</root-alter></root><kind text="7">dominant</kind></harmony>';
const sheet = (bars: number) =>
  `<score-partwise version="4.0"><work><work-title>Whole notes</work-title></work><part-list><score-part id="P1"><part-name>Flute</part-name></score-part></part-list><part id="P1">${Array.from(
    { length: bars },
    (_, i) =>
      `<measure number="${i + 1}">${i % 4 === 0 && i > 0 ? '<print new-system="yes"/>' : ''}${i === 0 ? '<attributes><divisions>1</divisions><time><beats>4</beats><beat-type>4</beat-type></time><clef><sign>G</sign><line>2</line></clef></attributes>' : ''}${harmony}${notes}</measure>`,
  ).join('')}</part></score-partwise>`;

async function pdfOf(bars: number, form: 'a4' | 'letter') {
  const pages = await engrave(sheet(bars), { form });
  if (!pages.ok) throw new Error(pages.error.message);
  const pdf = await pagesToPdf(pages.value, {
    title: 'Whole "notes" \\ #1',
    description: 'Bars of\none note',
  });
  if (!pdf.ok) throw new Error(pdf.error.message);
  return { pages: pages.value.length, bytes: Buffer.from(pdf.value) };
}

/** The objects of a PDF, those inside compressed streams too. */
function textOf(pdf: Buffer): string {
  const parts = [pdf.toString('latin1')];
  let at = 0;
  for (;;) {
    const start = pdf.indexOf('stream\n', at);
    if (start < 0) return parts.join('\n');
    const end = pdf.indexOf('endstream', start);
    try {
      parts.push(inflateSync(pdf.subarray(start + 7, end)).toString('latin1'));
    } catch {
      // a stream that is not deflated is in the text already
    }
    at = end + 9;
  }
}

describe('pagesToPdf', () => {
  // Sizes in points from ISO 216 (210 × 297 mm) and 8.5 × 11 inches, at 72 points to the inch (ISO 32000-1, 8.3.2.3).
  it.each([
    ['a4', 595.276, 841.89],
    ['letter', 612, 792],
  ] as const)('makes a vector page of %s', async (form, width, height) => {
    const { bytes } = await pdfOf(4, form);
    expect(bytes.toString('latin1', 0, 5)).toBe('%PDF-');
    const text = textOf(bytes);
    const [, w, h] = /\/MediaBox ?\[0 0 ([\d.]+) ([\d.]+)\]/.exec(text) ?? [];
    expect(Number(w)).toBeCloseTo(width, 0);
    expect(Number(h)).toBeCloseTo(height, 0);
    expect(text).not.toMatch(/\/Subtype ?\/Image/);
    // black and white: no colour is set but grey levels, or equal parts of red, green and blue
    for (const [, r, g, b] of text.matchAll(/^([\d.]+) ([\d.]+) ([\d.]+) (?:rg|scn?|RG|SCN?)$/gim))
      expect([r, g]).toEqual([g, b]);
  });

  it('holds the fonts, the one for flats and sharps too', async () => {
    const text = textOf((await pdfOf(4, 'a4')).bytes);
    expect(text).toMatch(/\/FontName ?\/[A-Z]{6}\+LevareMusicText/);
    expect(text).toMatch(/\/FontName ?\/[A-Z]{6}\+InstrumentSans-Medium/);
    expect(text).toMatch(/\/FontName ?\/[A-Z]{6}\+InstrumentSerif-Regular/);
  });

  it('has as many pages as were engraved, and the same bytes each time', async () => {
    const { pages, bytes } = await pdfOf(80, 'letter');
    expect(pages).toBeGreaterThan(1);
    expect((textOf(bytes).match(/\/Type ?\/Page\b/g) ?? []).length).toBe(pages);
    expect((await pdfOf(80, 'letter')).bytes.equals(bytes)).toBe(true);
  });
});
