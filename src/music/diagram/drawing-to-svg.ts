// A drawing as SVG text: takes the colour of what surrounds it, reads well in black and white, says what it shows.

import { escapeXml } from '../musicxml/element.ts';
import type { Drawing, Ink, Mark } from './drawing.ts';

const capHeight = 0.7;
const letterWidth = 0.6;

const n = (value: number): string => String(Math.round(value * 100) / 100);

/** A sharp in a box 1 high around the origin, as lines; a flat as a stem and a bowl. */
function accidentalPath(sign: '#' | 'b', x: number, y: number, size: number): string {
  const at = (dx: number, dy: number) => `${n(x + dx * size)} ${n(y + dy * size)}`;
  if (sign === '#') {
    return [
      `M${at(-0.08, -0.36)}L${at(-0.08, 0.4)}`,
      `M${at(0.1, -0.4)}L${at(0.1, 0.36)}`,
      `M${at(-0.21, -0.07)}L${at(0.23, -0.17)}`,
      `M${at(-0.21, 0.17)}L${at(0.23, 0.07)}`,
    ].join('');
  }
  return `M${at(-0.14, -0.46)}L${at(-0.14, 0.34)}C${at(0.06, 0.24)} ${at(0.22, 0.1)} ${at(0.16, -0.06)}C${at(0.12, -0.16)} ${at(-0.02, -0.14)} ${at(-0.14, -0.01)}`;
}

function colour(ink: Ink, paper: string): string {
  return ink === 'ink' ? 'currentColor' : ink === 'paper' ? paper : 'none';
}

function textToSvg(mark: Extract<Mark, { shape: 'text' }>, paper: string): string {
  const fill = colour(mark.ink, paper);
  const match = /^([A-G])([#b])$/.exec(mark.text);
  const baseline = mark.y + (capHeight / 2) * mark.size;
  const letter = match?.[1] ?? mark.text;
  const x = match === null ? mark.x : mark.x - 0.26 * mark.size;
  const weight = mark.bold ? ' font-weight="600"' : '';
  const glyphs = `<text x="${n(x)}" y="${n(baseline)}" font-size="${n(mark.size)}"${weight} text-anchor="middle" fill="${fill}">${escapeXml(letter)}</text>`;
  const sign = match?.[2];
  if (sign !== '#' && sign !== 'b') return glyphs;
  const path = accidentalPath(sign, x + letterWidth * mark.size, mark.y, mark.size * 0.86);
  return `${glyphs}<path d="${path}" fill="none" stroke="${fill}" stroke-width="${n(mark.size * 0.1)}"/>`;
}

function markToSvg(mark: Mark, paper: string): string {
  switch (mark.shape) {
    case 'line':
      return `<line x1="${n(mark.x1)}" y1="${n(mark.y1)}" x2="${n(mark.x2)}" y2="${n(mark.y2)}" stroke-width="${n(mark.width)}"/>`;
    case 'circle':
      return `<circle cx="${n(mark.x)}" cy="${n(mark.y)}" r="${n(mark.r)}" fill="${colour(mark.fill, paper)}" stroke-width="${n(mark.outline)}"/>`;
    case 'half-circle': {
      const { x, y, r } = mark;
      const half = `<path d="M${n(x)} ${n(y - r)}A${n(r)} ${n(r)} 0 0 0 ${n(x)} ${n(y + r)}Z" fill="currentColor" stroke="none"/>`;
      return `${half}<circle cx="${n(x)}" cy="${n(y)}" r="${n(r)}" fill="none" stroke-width="${n(mark.outline)}"/>`;
    }
    case 'box':
      return `<rect x="${n(mark.x - mark.width / 2)}" y="${n(mark.y - mark.height / 2)}" width="${n(mark.width)}" height="${n(mark.height)}" rx="${n(mark.corner)}" fill="${colour(mark.fill, paper)}" stroke-width="${n(mark.outline)}"/>`;
    case 'text':
      return textToSvg(mark, paper);
  }
}

/**
 * An SVG document of the drawing. Ink is `currentColor`; `paper` (white by default) is what shows on filled shapes: give the
 * page's colour where it is not white. It carries no size but its proportions: set width or height where it is used.
 */
export function drawingToSvg(drawing: Drawing, paper = '#fff'): string {
  const { width, height, title, description } = drawing;
  const label = escapeXml(`${title}. ${description}`);
  const marks = drawing.marks
    .map((mark) => markToSvg(mark, paper).replaceAll('stroke-width="0"', 'stroke="none"'))
    .join('');
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${n(width)} ${n(height)}" role="img" aria-label="${label}">` +
    `<title>${escapeXml(title)}</title><desc>${escapeXml(description)}</desc>` +
    `<g fill="none" stroke="currentColor" stroke-linecap="round" stroke-linejoin="round" font-family="'Instrument Sans', 'Liberation Sans', sans-serif">` +
    `${marks.replaceAll('<text ', '<text stroke="none" ')}</g></svg>`
  );
}
