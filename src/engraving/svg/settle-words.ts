// Moves words aside from the figures of tuplets. Verovio keeps words clear of notes and beams, but not of the figure over a
// beam, so that “play” over a triplet would read as “play3”.

import { bars } from './bars.ts';

const figures = /<g class="tupletNum"><use [^>]*translate\((\d+), (\d+)\)/g;
const words =
  /(<g class="dir"[^>]*><text )x="(\d+)" y="(\d+)"([^>]*>(?:<tspan[^>]*>)*<tspan font-size="(\d+)">)([^<]*)/g;
const letterShare = 0.4; // width of a letter of our serif, of the font size
const clear = 220; // hundredths of a millimetre
const mostAside = 900;

/** The drawing with words that would run into a tuplet's figure a little further left. */
export function settleWords(drawing: string): string {
  if (!drawing.includes('class="tupletNum"')) return drawing;
  return drawing.replace(bars, (bar: string) => {
    const placed = [...bar.matchAll(figures)].map(([, x, y]) => ({ x: Number(x), y: Number(y) }));
    return bar.replace(words, (whole, open: string, x, y, rest: string, size, text: string) => {
      const [left, base, font] = [Number(x), Number(y), Number(size)];
      const right = left + text.length * font * letterShare;
      const near = placed.filter(
        (figure) => Math.abs(figure.y - base) < font && figure.x > left - font && figure.x < right + clear,
      );
      if (near.length === 0) return whole;
      const aside = Math.min(mostAside, right + clear - Math.min(...near.map((figure) => figure.x)));
      return `${open}x="${Math.round(left - aside)}" y="${base}"${rest}${text}`;
    });
  });
}
