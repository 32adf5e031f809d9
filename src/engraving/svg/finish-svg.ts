// Makes Verovio's drawing ours: colours from the text around it, our typefaces, names by bar and place instead of chance,
// a title and description for screen readers, and no style element (the content security policy forbids those).

import { escapeXml } from '#music';
import { dropCourtesies } from './drop-courtesies.ts';
import { settleFingerings } from './settle-fingerings.ts';
import { settleWords } from './settle-words.ts';
import { markMusic, musicTextFamily } from './svg-text.ts';

export interface Finish {
  /** Begins every id in the drawing; different for each drawing of a document. */
  readonly name: string;
  readonly title: string;
  readonly description: string;
  readonly widthMm: number;
  /** Bars on the pages before this one. */
  readonly barsBefore: number;
  /** Drawn in the page's own coordinates, hundredths of a millimetre, inside the margins. */
  readonly extra: string;
}

export interface Finished {
  readonly svg: string;
  readonly heightMm: number;
  /** Bars on this page. */
  readonly bars: number;
}

const sans = "'Instrument Sans Variable','Instrument Sans',sans-serif";
const serif = "'Instrument Serif',serif";

// How each kind of text is set. Instrument Sans runs wider than the Times that Verovio measures with, hence `size`.
const textByClass: Readonly<Record<string, { readonly look: string; readonly size: number }>> = {
  harm: { look: `font-family="${sans}" font-weight="500"`, size: 0.92 },
  fing: { look: `font-family="${sans}" font-weight="600"`, size: 0.92 },
  reh: { look: `font-family="${sans}" font-weight="600"`, size: 0.95 },
  tempo: { look: `font-family="${sans}" font-weight="600"`, size: 0.95 },
  dir: { look: `font-family="${serif}" font-style="italic"`, size: 1.12 },
  label: { look: `font-family="${sans}" font-weight="600"`, size: 0.95 },
  mNum: { look: `font-family="${serif}" font-style="italic"`, size: 1.1 },
  voltaBracket: { look: `font-family="${sans}" font-weight="500"`, size: 0.9 },
  verse: { look: `font-family="${sans}"`, size: 0.88 },
};

// Accidentals among letters come out lower than a small letter; in chord symbols, labels and note names they are read at a
// glance, so they stand as high as a capital.
const accidentalSize = 1.4;

const bold = ' font-weight="bold"';

const shapes = /<(path|polygon|polyline|rect|ellipse) /g;

/** One page, finished. Bars and the events in them carry `data-bar` and `data-event`, both from 1 in the order of reading. */
export function finishSvg(drawing: string, finish: Finish): Finished {
  const { name } = finish;
  const defs = /<defs>([\s\S]*?)<\/defs>/.exec(drawing)?.[1] ?? '';
  const from = drawing.indexOf('<svg class="definition-scale"');
  const to = drawing.lastIndexOf('</svg>', drawing.lastIndexOf('</svg>') - 1);
  const inner = drawing.slice(from, to);
  const [, width = '0', height = '0'] = /viewBox="0 0 (\d+) (\d+)"/.exec(inner) ?? [];
  const music = inner.slice(inner.indexOf('>') + 1).replace(/<g [^>]*class="pgHead"[^>]*>[\s\S]*?<\/g>/, ''); // our reserve, not to be read
  const marked = markBars(music, finish);
  const drawn = settleWords(settleFingerings(dropCourtesies(setText(marked.svg))))
    .replace(shapes, '<$1 stroke="currentColor" ')
    .replaceAll('font-family="Leipzig"', `font-family="'${musicTextFamily}'" font-weight="400"`)
    .replace(/<g class="page-margin"([^>]*)>/, (open) => `${open}${finish.extra}`);
  const heightMm = (finish.widthMm * Number(height)) / Number(width);
  const described = `aria-labelledby="${name}-title${finish.description ? ` ${name}-desc` : ''}"`;
  const svg =
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${finish.widthMm}mm" height="${round(heightMm)}mm" ` +
    `role="img" ${described} class="notation" fill="currentColor" font-family="${sans}">` +
    `<title id="${name}-title">${escapeXml(finish.title)}</title>` +
    (finish.description ? `<desc id="${name}-desc">${escapeXml(finish.description)}</desc>` : '') +
    `<defs>${defs}</defs>${drawn}</svg>`;
  return { svg: renameGlyphs(svg, name), heightMm: round(heightMm), bars: marked.bars };
}

const round = (mm: number): number => Math.round(mm * 100) / 100;

// Events that hold time in a bar; notes inside a chord are part of its one event.
const events = new Set(['note', 'rest', 'chord', 'mRest', 'space', 'beatRpt', 'mRpt', 'multiRest']);

/** Verovio's ids go, bars and events are numbered, groups that hold nothing are left out. */
function markBars(
  music: string,
  { name, barsBefore }: Finish,
): { readonly svg: string; readonly bars: number } {
  let bar = barsBefore;
  let event = 0;
  let chordDepth = 0;
  let depth = 0;
  const svg = music
    .replace(/<g [^>]*\/>/g, '')
    .replace(/<(g|tspan) ([^>]*)>|<\/g>/g, (whole, element, attributes) => {
      if (element === undefined) {
        if (depth === chordDepth) chordDepth = 0;
        depth--;
        return whole;
      }
      if (element === 'tspan') return `<tspan ${dropIds(attributes)}>`.replace(' >', '>');
      depth++;
      const kind = /class="([\w-]+)/.exec(attributes)?.[1] ?? '';
      const kept = dropIds(attributes);
      if (kind === 'measure') {
        bar++;
        event = 0;
        return `<g id="${name}-bar-${bar}" ${kept} data-bar="${bar}">`;
      }
      if (!events.has(kind) || chordDepth > 0) return `<g ${kept}>`;
      if (kind === 'chord') chordDepth = depth;
      event++;
      return `<g id="${name}-bar-${bar}-event-${event}" ${kept} data-bar="${bar}" data-event="${event}">`;
    });
  return { svg, bars: bar - barsBefore };
}

const dropIds = (attributes: string): string =>
  attributes.replace(/(?:^| )(?:id|xml:lang)="[^"]*"/g, '').trim();

function setText(music: string): string {
  return music.replace(
    /<g class="(harm|fing|reh|tempo|dir|mNum|voltaBracket|verse)\b([^>]*)>([\s\S]*?)<\/g>/g,
    (whole, kind: string, rest: string, content: string) => {
      // Our serif has one weight: bold words are labels, and stand in the sans serif, whose weights are drawn.
      const isLabel = kind === 'dir' && content.includes(bold);
      const text = textByClass[isLabel ? 'label' : kind];
      if (text === undefined) return whole;
      const sized = content
        .replaceAll(bold, '')
        .replace(
          /(font-family="Leipzig"[^>]*)font-size="(\d+)px"/g,
          (_, font: string, size: string) =>
            `${font}font-size="${Math.round(Number(size) * text.size * accidentalSize)}"`,
        )
        .replace(
          /font-size="(\d+)px"/g,
          (_, size: string) => `font-size="${Math.round(Number(size) * text.size)}"`,
        )
        .replace(
          /font-size="(\d+)">([^<]*[♭♮♯𝄪𝄫][^<]*)</gu,
          (_, size: string, words: string) =>
            `font-size="${size}">${markMusic(words, Number(size) * accidentalSize)}<`,
        );
      return `<g class="${kind}${rest} ${text.look}>${sized}</g>`;
    },
  );
}

/** Glyph ids end in a mark of Verovio's own; they begin with the drawing's name instead. */
function renameGlyphs(svg: string, name: string): string {
  return svg
    .replace(/ id="([0-9A-F]{4,5})-[\w]+"/g, ` id="${name}-$1"`)
    .replace(/href="#([0-9A-F]{4,5})-[\w]+"/g, `href="#${name}-$1"`);
}
