// Moves fingerings aside from stems. Verovio centres them on the note head and measures with narrower figures than ours,
// so one over a stem that goes up, or under one that goes down, would touch it.

import { bars } from './bars.ts';

const aside = 32; // hundredths of a millimetre

/** Fingerings above the staff a little to the left, those below the last staff a little to the right. */
export function settleFingerings(drawing: string): string {
  if (!drawing.includes('class="fing"')) return drawing;
  return drawing.replace(bars, (bar: string) => {
    const staves = [...bar.matchAll(/<g class="staff"><path [^>]*?d="M\d+ (\d+)/g)].map(([, y]) => Number(y));
    const lastStaff = Math.max(...staves);
    return bar.replace(
      /(<g class="fing"[^>]*><text )x="(\d+)" y="(\d+)"/g,
      (_, open: string, x: string, y: string) =>
        `${open}x="${Number(x) + (Number(y) > lastStaff ? aside : -aside)}" y="${y}"`,
    );
  });
}
