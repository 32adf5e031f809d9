// Engraved pages as one SVG file that stands alone: pages under each other, the font for flats and sharps inside.

import type { EngravedPage } from '../engrave.ts';
import { musicTextFont } from '../font/music-text-font.data.ts';
import { musicTextFamily } from './svg-text.ts';

/** The text of the file; black, with no background. */
export function pagesToSvgFile(pages: readonly EngravedPage[]): string {
  const widthMm = Math.max(...pages.map((page) => page.widthMm));
  const heightMm = pages.reduce((sum, page) => sum + page.heightMm, 0);
  let y = 0;
  const drawn = pages.map(({ svg, heightMm: height }) => {
    const placed = svg.replace('<svg ', `<svg y="${y}mm" `);
    y += height;
    return placed;
  });
  const font = `<style>@font-face{font-family:"${musicTextFamily}";src:url(data:font/ttf;base64,${musicTextFont})}</style>`;
  return `<?xml version="1.0" encoding="UTF-8"?>\n<svg xmlns="http://www.w3.org/2000/svg" width="${widthMm}mm" height="${heightMm}mm">${font}${drawn.join('')}</svg>\n`;
}
