// The chart as bars in fours: the one that sounds is lit, and dragging over some makes the band go round them.

import { type Chart, type ChartBar, formatChord } from '#music';
import { words } from '../words/index.ts';
import type { BarRange } from './choose-bars.ts';
import { useBarChoice } from './use-bar-choice.ts';

const says = words.player;

export interface BarChartProps {
  readonly chart: Chart;
  /** The bar that sounds; null for none. */
  readonly bar: number | null;
  readonly range: BarRange | null;
  readonly onRange: (range: BarRange | null) => void;
}

export function BarChart({ chart, bar, range, onRange }: BarChartProps) {
  const choice = useBarChoice(range, onRange, chart.bars.length);
  return (
    <ol className="bar-chart" aria-label={says.chart} {...choice.frame}>
      {chart.bars.map((one) => (
        <li key={one.number} className={bar === one.number ? 'bar bar-now' : 'bar'}>
          {one.section !== null && <span className="bar-section">{one.section}</span>}
          <button
            type="button"
            className="bar-face"
            aria-current={bar === one.number ? 'true' : undefined}
            {...choice.button(one.number)}
          >
            <span className="only-heard">{says.bar(one.number)}</span>
            <BarSigns bar={one} />
          </button>
        </li>
      ))}
    </ol>
  );
}

function BarSigns({ bar }: { readonly bar: ChartBar }) {
  return (
    <>
      {bar.repeatStart && <span aria-hidden="true">|:</span>}
      {bar.ending !== null && <span className="bar-ending">{bar.ending}.</span>}
      {bar.chords.map(({ chord }, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a chord may stand twice in a bar
        <span key={at}> {chord === null ? 'N.C.' : withSigns(formatChord(chord))} </span>
      ))}
      {bar.repeatEnd && <span aria-hidden="true">:|</span>}
    </>
  );
}

/** `Bbm7b5` as it is printed: B♭m7♭5. */
const withSigns = (symbol: string): string =>
  symbol.replace(/(?<=[A-G])b|b(?=\d)/g, '♭').replaceAll('#', '♯');
