// The one way from MusicXML to pages of notation. Verovio engraves; what it knows nothing of (our heading, typefaces,
// colours, names and the description for screen readers) is put around and into its drawing.

import { err, ok, type Result } from '#core';
import { drawFoot, drawHeading, reserveHeading } from './opening/draw-heading.ts';
import { isHeadingEmpty, noHeading } from './opening/heading.ts';
import { liftOpening } from './opening/lift-opening.ts';
import { type PageForm, pageMeasures } from './page-form.ts';
import { finishSvg } from './svg/finish-svg.ts';
import { forgetToolkit, loadToolkit } from './verovio/load-toolkit.ts';
import { mendHarmony } from './verovio/mend-harmony.ts';

export interface EngravingOptions {
  readonly form: PageForm;
  /** Per cent; at 100 a staff is 7 mm high, as printed parts usually are. From 60 to 130. */
  readonly scale?: number;
  /** Begins every id in the drawing; give each drawing of a document its own. Letters, digits and hyphens. */
  readonly name?: string;
  /** Read by screen readers: the sheet in words. */
  readonly description?: string;
  /** What stands over the first system: all of the heading, or only tempo and feel where a title stands elsewhere. */
  readonly heading?: 'all' | 'tempo' | 'none';
}

export interface EngravedPage {
  /** From 1. */
  readonly page: number;
  readonly svg: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

export type EngravingFault =
  /** The text is not MusicXML that can be drawn. */
  | { readonly kind: 'NotDrawable'; readonly message: string }
  /** The engraver could not be loaded or stopped in the middle; the next call loads it afresh. */
  | { readonly kind: 'EngraverStopped'; readonly message: string };

/** Pages of notation as SVG text, from MusicXML 4.0 (partwise). Loads the engraver when called for the first time. */
export async function engrave(
  musicXml: string,
  options: EngravingOptions,
): Promise<Result<readonly EngravedPage[], EngravingFault>> {
  try {
    return await draw(musicXml, options);
  } catch (fault) {
    forgetToolkit();
    const reason = fault instanceof Error ? fault.message : String(fault);
    return err({ kind: 'EngraverStopped', message: `The engraver could not draw this sheet: ${reason}` });
  }
}

/** Loads the engraver ahead of need. */
export async function warmEngraver(): Promise<void> {
  await loadToolkit();
}

const notDrawable: EngravingFault = {
  kind: 'NotDrawable',
  message: 'This is not MusicXML with bars to draw (a partwise document with at least one measure).',
};

const usualUnit = 8.75; // a quarter of a 7 mm staff is two units of a tenth of a millimetre

interface Tightness {
  /** Between systems, in units. */
  readonly spacingSystem: number;
  /** Of the staff's size. */
  readonly share: number;
}

const usualTightness: Tightness = { spacingSystem: 7, share: 1 };
const tighter: readonly Tightness[] = [
  { spacingSystem: 5, share: 1 },
  { spacingSystem: 5, share: 0.95 },
];

/** Nobody turns a page for one line: a lone system on a last page goes on the one before, if it fits a little tighter. */
function withoutLoneSystem(
  layOut: (tightness: Tightness) => number,
  drawPages: (count: number) => readonly string[],
): readonly string[] {
  const usual = drawPages(layOut(usualTightness));
  const last = usual.at(-1);
  if (usual.length < 2 || last === undefined || last.split('class="system"').length > 2) return usual;
  for (const tightness of tighter) {
    const count = layOut(tightness);
    if (count > 0 && count < usual.length) return drawPages(count);
  }
  return usual;
}

async function draw(
  musicXml: string,
  { form, scale = 100, name = 'sheet', description = '', heading: wanted = 'all' }: EngravingOptions,
): Promise<Result<readonly EngravedPage[], EngravingFault>> {
  const toolkit = await loadToolkit();
  const measures = pageMeasures(form);
  const unit = (usualUnit * Math.min(130, Math.max(60, scale))) / 100;
  const { musicXml: lifted, heading } = liftOpening(musicXml);
  const drawn = wanted === 'tempo' ? { ...noHeading, tempo: heading.tempo } : heading;
  const isHeaded = wanted !== 'none' && !isHeadingEmpty(drawn);
  const layout = {
    pageWidth: measures.widthMm * 10,
    pageHeight: measures.heightMm * 10,
    pageMarginLeft: measures.sideMarginMm * 10,
    pageMarginRight: measures.sideMarginMm * 10,
    pageMarginTop: measures.topMarginMm * 10,
    pageMarginBottom: measures.bottomMarginMm * 10,
    adjustPageHeight: measures.isFitted,
    breaks: 'line',
    harmDist: 1.6, // its own distance of 1 lets symbols touch the accidentals of high notes
    header: isHeaded ? 'encoded' : 'none',
    footer: 'none',
    smuflTextFont: 'none',
    svgViewBox: true,
    svgFormatRaw: true,
    svgRemoveXlink: true,
    xmlIdSeed: 1,
  };
  const bare = wanted === 'none' ? musicXml : lifted;
  const layOut = ({ spacingSystem, share }: Tightness): number => {
    const own = unit * share;
    toolkit.setOptions({ ...layout, unit: own, spacingSystem });
    const text = isHeaded ? reserveHeading(bare, drawn, lineHeight(own)) : bare;
    return toolkit.loadData(mendHarmony(text)) ? toolkit.getPageCount() : 0;
  };
  const drawPages = (count: number): readonly string[] =>
    Array.from({ length: count }, (_, i) => toolkit.renderToSVG(i + 1));
  const drawings = withoutLoneSystem(layOut, drawPages);
  if (drawings.length === 0) return err(notDrawable);
  const pages: EngravedPage[] = [];
  const count = drawings.length;
  const innerWidth = (measures.widthMm - 2 * measures.sideMarginMm) * 100;
  let barsBefore = 0;
  for (const [i, drawing] of drawings.entries()) {
    const page = i + 1;
    const extra = [
      isHeaded && page === 1 ? drawHeading(drawn, innerWidth) : '',
      measures.isFitted
        ? ''
        : drawFoot(heading, page, count, innerWidth, (measures.heightMm - measures.topMarginMm - 7) * 100),
    ];
    const finished = finishSvg(drawing, {
      name: count === 1 ? name : `${name}-${page}`,
      title: heading.title || 'Notation',
      description: page === 1 ? description : '',
      widthMm: measures.widthMm,
      barsBefore,
      extra: extra.join(''),
    });
    barsBefore += finished.bars;
    pages.push({ page, svg: finished.svg, widthMm: measures.widthMm, heightMm: finished.heightMm });
  }
  return barsBefore === 0 ? err(notDrawable) : ok(pages);
}

// Verovio's own line of text in a page's head, in hundredths of a millimetre, measured at several units.
const lineHeight = (unit: number): number => unit * 40;
