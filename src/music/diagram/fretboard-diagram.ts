// A box of strings and frets: a chord, or where one note lies. The nut is up, the lowest course left.

import { type Drawing, disc, line, type Mark, ring, text } from './drawing.ts';

/** What one string does; the lowest course comes first. */
export interface StoppedString {
  /** 0 open, null not played. */
  readonly fret: number | null;
  /** 1 to 4; null where none is named. */
  readonly finger: number | null;
}

/** One finger flat across strings, counted from the lowest course, both included. */
export interface Barre {
  readonly fret: number;
  readonly from: number;
  readonly to: number;
}

const stringGap = 12;
const fretGap = 15;
const top = 17;
const dotRadius = 5.3;

function openMarks(x: number, fret: number | null): readonly Mark[] {
  const y = top - 8;
  if (fret === 0) return [ring(x, y, 3.2, 1.2)];
  if (fret !== null) return [];
  return [line(x - 3, y - 3, x + 3, y + 3, 1.2), line(x - 3, y + 3, x + 3, y - 3, 1.2)];
}

function describe(strings: readonly StoppedString[], barre: Barre | null): string {
  const words = strings.map(({ fret, finger }, i) => {
    const name = `string ${strings.length - i}`;
    if (fret === null) return `${name} not played`;
    if (fret === 0) return `${name} open`;
    return `${name} fret ${fret}${finger === null ? '' : ` finger ${finger}`}`;
  });
  const bar = barre === null ? '' : `; first finger across fret ${barre.fret}`;
  return words.join(', ') + bar;
}

/**
 * Four frets (more where the shape needs them) from the nut, or from the lowest fret used with its number beside it.
 * `showUnused` marks strings that are not played with a cross, as for a chord.
 */
export function fretboardDiagram(
  title: string,
  strings: readonly StoppedString[],
  barre: Barre | null,
  showUnused: boolean,
): Drawing {
  const frets = strings.flatMap(({ fret }) => (fret === null || fret === 0 ? [] : [fret]));
  const highest = Math.max(0, ...frets);
  const lowest = Math.min(highest, ...frets);
  const first = highest <= 5 ? 1 : lowest;
  const rows = Math.max(4, highest - first + 1);
  const left = first > 1 ? 19 : 8;
  const width = (strings.length - 1) * stringGap;
  const xOf = (string: number) => left + string * stringGap;
  const yOf = (fret: number) => top + (fret - first + 0.5) * fretGap;
  const marks: Mark[] = [];
  for (let i = 0; i < strings.length; i++) marks.push(line(xOf(i), top, xOf(i), top + rows * fretGap, 1));
  for (let row = 0; row <= rows; row++) {
    const y = top + row * fretGap;
    marks.push(line(left, y, left + width, y, row === 0 && first === 1 ? 3 : 1));
  }
  if (first > 1) marks.push(text(left - 12, yOf(first), 10, String(first), { bold: true }));
  if (barre !== null) {
    const x = (xOf(barre.from) + xOf(barre.to)) / 2;
    const length = xOf(barre.to) - xOf(barre.from) + 2 * dotRadius;
    marks.push({
      shape: 'box',
      x,
      y: yOf(barre.fret),
      width: length,
      height: 2 * dotRadius,
      corner: dotRadius,
      fill: 'ink',
      outline: 0,
    });
    marks.push(text(xOf(barre.from), yOf(barre.fret), 8.4, '1', { ink: 'paper', bold: true }));
  }
  strings.forEach(({ fret, finger }, i) => {
    if (fret !== null || showUnused) marks.push(...openMarks(xOf(i), fret));
    const barred = barre !== null && fret === barre.fret && i >= barre.from && i <= barre.to;
    if (fret === null || fret === 0 || barred) return;
    marks.push(disc(xOf(i), yOf(fret), dotRadius));
    if (finger !== null)
      marks.push(text(xOf(i), yOf(fret), 8.4, String(finger), { ink: 'paper', bold: true }));
  });
  return {
    width: left + width + 8,
    height: top + rows * fretGap + 3,
    title,
    description: describe(strings, barre),
    marks,
  };
}
