// After a double bar at the end of a system another exercise begins, which shows its own clef, key and metre. Verovio
// announces them on a stub of staff behind the line, as in the middle of a piece; here the stub goes and the line moves
// to the end of the staff.

import { bars } from './bars.ts';

const barLines = /<g class="barLine">((?:<[a-z]+ [^>]*\/>)*)<\/g>/g;
const signatures =
  /<g class="keySig">(?:<g class="keyAccid"><use [^>]*\/><\/g>)*<\/g>|<g class="meterSig">(?:<use [^>]*\/>)*<\/g>/g;
const clefs = /<g class="clef"><use [^>]*\/><\/g>/g;
const lastLineInset = 13; // half the width of a bar line, in the drawing's hundredths of a millimetre

/** The drawing without courtesy clefs, keys and metres behind double bars at line ends. */
export function dropCourtesies(drawing: string): string {
  return drawing.replace(bars, (bar: string, offset: number) => {
    const goesOn = drawing.startsWith('<g id="', offset + bar.length); // the next thing is a bar of the same system
    return goesOn ? bar : withoutCourtesies(bar);
  });
}

function withoutCourtesies(bar: string): string {
  const lines = [...bar.matchAll(barLines)].flatMap(([, paths = '']) =>
    [...paths.matchAll(/ d="M(\d+) /g)].map(([, x]) => Number(x)),
  );
  const [first, last] = [Math.min(...lines), Math.max(...lines)];
  const end = Math.max(...[...bar.matchAll(/ L(\d+) \d+" stroke-width="13"/g)].map(([, x]) => Number(x)));
  const isDouble = new Set(lines).size === 2;
  const shift = end - lastLineInset - last;
  if (!isDouble || !Number.isFinite(end) || shift <= 0) return bar;
  const lastNote = Math.max(
    0,
    ...[...bar.matchAll(/class="(?:notehead|rest|mRest)"><use /g)].map(placeIn(bar)),
  );
  return bar
    .replace(signatures, (signature) => (xOf(signature) > first ? '' : signature))
    .replace(clefs, (clef) => (xOf(clef) > lastNote && xOf(clef) < first ? '' : clef))
    .replaceAll('<g class="barLine">', `<g class="barLine" transform="translate(${shift}, 0)">`);
}

/** Where a group's first glyph stands. */
const xOf = (group: string): number => Number(/translate\((\d+)/.exec(group)?.[1] ?? 0);

const placeIn =
  (bar: string) =>
  ({ index }: { readonly index: number }): number =>
    xOf(bar.slice(index, index + 200));
