// Writes a chart in house style; what it writes reads back to the same chart.

import { formatChord } from '../chord/chord.ts';
import { type Fraction, fraction, lcm, times } from '../fraction/fraction.ts';
import type { Chart, ChartBar } from './chart.ts';

/** The bar's chords with `/` for every further share, or `%`. */
function formatBar(bar: ChartBar): string {
  if (bar.isSame) return '%';
  const denominator = bar.chords.reduce((all, { at, share }) => lcm(lcm(all, at.d), share.d), 1);
  const slots = (share: Fraction) => times(share, fraction(denominator)).n;
  return bar.chords
    .map(({ chord, share }) => {
      const symbol = chord === null ? 'N.C.' : formatChord(chord);
      return [symbol, ...Array.from({ length: slots(share) - 1 }, () => '/')].join(' ');
    })
    .join(' ');
}

/** The chart in house style, a line for each section. `| d-7 G7|CΔ` … → `| Dm7 G7 | Cmaj7 |` */
export function formatChart(chart: Chart): string {
  let text = '';
  let isOpen = false;
  for (const bar of chart.bars) {
    if (bar.section !== null) text += `${text === '' ? '' : '\n'}[${bar.section}] `;
    if (bar.section !== null || bar.repeatStart || !isOpen)
      text += bar.repeatStart ? '|: ' : isOpen && bar.section === null ? '' : '| ';
    if (bar.ending !== null) text += `${bar.ending}. `;
    text += formatBar(bar) + (bar.repeatEnd ? ' :| ' : ' | ');
    isOpen = true;
  }
  return text.replaceAll(' \n', '\n').replaceAll('| |:', '|:').trimEnd();
}
