// How large a page is and what is left free around the music. Millimetres; Verovio reckons in tenths, its drawing in hundredths.

/** `a4` and `letter` are sheets for a stand; a column is as wide as its place on a screen or another page and as high as its music. */
export type PageForm = 'a4' | 'letter' | Column;

export interface Column {
  readonly widthMm: number;
  /** Music higher than this goes on in another picture, so that none is cut at a page break; null for one picture. */
  readonly mostHeightMm: number | null;
}

export interface PageMeasures {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly sideMarginMm: number;
  readonly topMarginMm: number;
  readonly bottomMarginMm: number;
  /** Whether the picture ends where its music ends. */
  readonly isFitted: boolean;
}

// Verovio's own limit of a page's height.
const endlessMm = 6000;

/** `pageMeasures('a4')` → 210 by 297 with its margins */
export function pageMeasures(form: PageForm): PageMeasures {
  const sheet = { sideMarginMm: 14, topMarginMm: 13, bottomMarginMm: 14, isFitted: false };
  if (form === 'a4') return { ...sheet, widthMm: 210, heightMm: 297 };
  if (form === 'letter') return { ...sheet, widthMm: 215.9, heightMm: 279.4 };
  return {
    widthMm: form.widthMm,
    heightMm: Math.min(endlessMm, form.mostHeightMm ?? endlessMm),
    sideMarginMm: 1,
    topMarginMm: 1,
    bottomMarginMm: 1,
    isFitted: true,
  };
}
