// The chart as bars in fours: the one that sounds is lit, and dragging over some makes the band go round them.

import { useState } from 'react';
import { type Chart, type ChartBar, formatChord } from '#music';
import { words } from '../words/index.ts';

const says = words.player;

/** Bars as numbered on the chart, both included. */
export interface BarRange {
  readonly first: number;
  readonly last: number;
}

export interface BarChartProps {
  readonly chart: Chart;
  readonly bar: number | null;
  readonly range: BarRange | null;
  readonly onRange: (range: BarRange | null) => void;
}

const rangeOf = (a: number, b: number): BarRange => ({ first: Math.min(a, b), last: Math.max(a, b) });

export function BarChart({ chart, bar, range, onRange }: BarChartProps) {
  const [from, setFrom] = useState<number | null>(null);
  const [over, setOver] = useState<number | null>(null);
  const shown = from !== null && over !== null ? rangeOf(from, over) : range;
  /** A press chooses one bar, and a second one as far as there; the one bar again lets go. */
  const press = (number: number) => {
    if (range === null) onRange(rangeOf(number, number));
    else if (range.first === range.last)
      onRange(range.first === number ? null : rangeOf(range.first, number));
    else onRange(rangeOf(number, number));
  };
  const end = () => {
    if (from !== null && over !== null && from !== over) onRange(rangeOf(from, over));
    setFrom(null);
    setOver(null);
  };
  return (
    <ol
      className="bar-chart"
      aria-label={says.chart}
      onPointerUp={end}
      onPointerLeave={() => {
        setFrom(null);
        setOver(null);
      }}
    >
      {chart.bars.map((one) => {
        const isIn = shown !== null && one.number >= shown.first && one.number <= shown.last;
        return (
          <li key={one.number} className={bar === one.number ? 'bar bar-now' : 'bar'}>
            {one.section !== null && <span className="bar-section">{one.section}</span>}
            <button
              type="button"
              className="bar-face"
              aria-pressed={isIn}
              aria-current={bar === one.number ? 'true' : undefined}
              onPointerDown={(event) => {
                event.currentTarget.releasePointerCapture(event.pointerId);
                setFrom(one.number);
                setOver(one.number);
              }}
              onPointerEnter={() => from !== null && setOver(one.number)}
              onClick={() => press(one.number)}
            >
              <span className="only-heard">{says.bar(one.number)}</span>
              {chordsOf(one).map((text, at) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a chord may stand twice in a bar
                <span key={at}> {text} </span>
              ))}
            </button>
          </li>
        );
      })}
    </ol>
  );
}

const chordsOf = ({ chords }: ChartBar): readonly string[] =>
  chords.map(({ chord }) => (chord === null ? 'N.C.' : formatChord(chord)));
