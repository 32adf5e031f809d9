// Draws a heading as SVG text in hundredths of a millimetre, and says how many of Verovio's own lines of text must be kept free for it.

import { escapeXml } from '#music';
import { musicText } from '../svg/svg-text.ts';
import type { Heading } from './heading.ts';

const titleSize = 820;
const smallSize = 360;

/** Where the heading's lines stand below the top margin, in hundredths of a millimetre. */
interface Places {
  readonly title: number;
  readonly subtitle: number;
  readonly tempo: number;
  readonly end: number;
}

function places(heading: Heading): Places {
  const title = heading.title || heading.credit || heading.instrument ? titleSize * 0.82 : 0;
  const subtitle = title + (heading.subtitle ? smallSize * 1.5 : 0);
  const tempo = subtitle + (heading.tempo ? smallSize * (subtitle > 0 ? 2.2 : 0.9) : 0);
  return { title, subtitle, tempo, end: tempo + smallSize * (subtitle > 0 ? 1.1 : 0.3) };
}

/** The height a heading takes, in hundredths of a millimetre. */
export function headingHeight(heading: Heading): number {
  return places(heading).end;
}

/** The heading, drawn over `width` hundredths of a millimetre with the top left corner at 0, 0. */
export function drawHeading(heading: Heading, width: number): string {
  const at = places(heading);
  const lines: string[] = [];
  if (heading.title)
    lines.push(
      `<text y="${at.title}" font-family="'Instrument Serif',serif" font-size="${titleSize}">${musicText(heading.title, titleSize)}</text>`,
    );
  const right = [heading.instrument, heading.credit].filter((text) => text !== '').join(' · ');
  if (right)
    lines.push(
      `<text x="${width}" y="${at.title}" text-anchor="end" font-size="${smallSize}">${musicText(right, smallSize)}</text>`,
    );
  if (heading.subtitle)
    lines.push(
      `<text y="${at.subtitle}" font-size="${smallSize}">${musicText(heading.subtitle, smallSize)}</text>`,
    );
  if (heading.tempo)
    lines.push(
      `<text y="${at.tempo}" font-size="${smallSize * 1.05}" font-weight="600">${musicText(heading.tempo, smallSize * 1.05)}</text>`,
    );
  return `<g class="heading">${lines.join('')}</g>`;
}

/** Credits that hold nothing to read: they make Verovio keep the heading's height free on the first page. */
export function reserveHeading(musicXml: string, heading: Heading, lineHeight: number): string {
  const count = Math.max(1, Math.ceil(headingHeight(heading) / lineHeight));
  const credits = Array.from(
    { length: count },
    () => '<credit page="1"><credit-words justify="left" valign="top">.</credit-words></credit>',
  ).join('');
  return musicXml.replace('<part-list>', `${credits}<part-list>`);
}

/** The foot of a page: the sheet's own words and, where there are several pages, title and number. */
export function drawFoot(heading: Heading, page: number, pages: number, width: number, y: number): string {
  const number = pages > 1 ? `${heading.title ? `${heading.title} · ` : ''}${page} / ${pages}` : '';
  if (!number && !heading.footer) return '';
  const size = 290;
  return `<g class="foot" font-size="${size}">${
    heading.footer ? `<text y="${y}">${escapeXml(heading.footer)}</text>` : ''
  }${number ? `<text x="${width}" y="${y}" text-anchor="end">${musicText(number, size)}</text>` : ''}</g>`;
}
