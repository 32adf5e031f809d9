// What stands on a sheet, played along with the band: bar by bar with the chart, in the key and the feel of each chorus.

import { unfoldRepeats } from '../chart/chart.ts';
import { compare, type Fraction, minus } from '../fraction/fraction.ts';
import { performScore } from '../midi/perform-score.ts';
import type { Score } from '../score/score.ts';
import { type ArrangedBar, type ArrangedNote, noteOf } from './arrangement.ts';
import { type BackingSpec, keyMoveOf } from './backing-spec.ts';
import type { BackingTune } from './backing-tune.ts';
import { ticksPerCrotchet } from './feel.ts';
import { barsOfUpbeat } from './score-backing.ts';

const toTicks = ({ n, d }: Fraction) => Math.round((n * 4 * ticksPerCrotchet) / d);

/** The notes of a score by its whole bars, those of an upbeat left out; null where nothing sounds. */
export function scoreToTune(score: Score): BackingTune | null {
  const upbeat = barsOfUpbeat(score.bars);
  const even = { ...score, bars: score.bars.map((bar) => ({ ...bar, swing: null })) };
  const { bars, notes } = performScore(even);
  const sounding = notes.filter((note) => !note.isDrum && note.bar >= upbeat);
  if (sounding.length === 0) return null;
  return score.bars.slice(upbeat).map((_, at) => {
    const nth = bars.findIndex(({ index }) => index === upbeat + at);
    const played = bars[nth];
    const next = bars[nth + 1];
    if (played === undefined) return [];
    return sounding
      .filter(
        ({ bar, start }) =>
          bar === played.index &&
          compare(start, played.start) >= 0 &&
          (next === undefined || compare(start, next.start) < 0),
      )
      .map(({ start, duration, midi, velocity }) => ({
        at: toTicks(minus(start, played.start)),
        ticks: toTicks(duration),
        midi,
        velocity,
      }));
  });
}

/** A demisemiquaver: places on its grid are swung, triplets stay as they are. */
const grid = ticksPerCrotchet / 8;

/** The tune in every chorus; `swung` says where in a bar a written place is heard. */
export function tunePart(
  spec: BackingSpec,
  tune: BackingTune,
  bars: readonly ArrangedBar[],
  swung: (bar: ArrangedBar, at: number) => number,
): readonly ArrangedNote[] {
  const played = unfoldRepeats(spec.chart.bars).length;
  const first = bars.findIndex((bar) => bar.chorus >= 0);
  const heard = (bar: ArrangedBar, at: number) => (at % grid === 0 ? swung(bar, at) : at);
  return bars.flatMap((bar, at) => {
    // A bar that the band adds to end in is not on the sheet.
    if (bar.chorus < 0 || at - first >= (bar.chorus + 1) * played) return [];
    const up = keyMoveOf(spec, bar.chorus);
    return (tune[bar.written - 1] ?? []).map((note) => {
      const start = heard(bar, note.at);
      const end = heard(bar, note.at + note.ticks);
      return noteOf(bar.tick + start, end - start - 10, note.midi + up, note.velocity, null);
    });
  });
}
