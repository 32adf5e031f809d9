// Puts lines of bars one after the other: numbered, each closed by a double bar, the last by a final one.

import type { Instrument } from '../../instrument/instrument.ts';
import type { Key } from '../../key/key.ts';
import type { Metre } from '../../rhythm/metre.ts';
import { createScore, freeBar, part, scoreBar, withSystems, words } from '../../score/create-score.ts';
import type {
  ChordSymbol,
  Direction,
  PartBar,
  Score,
  ScoreBar,
  ScoreClef,
  ScoreEvent,
  Staff,
  SwingMark,
  TempoMark,
} from '../../score/score.ts';

export interface LineBar {
  /** One list of events for each staff, top down. */
  readonly staves: readonly (readonly ScoreEvent[])[];
  readonly chords?: readonly ChordSymbol[];
  readonly directions?: readonly Direction[];
  readonly section?: string | null;
}

export interface SheetLine {
  readonly key: Key;
  readonly metre: Metre;
  readonly clefs: readonly ScoreClef[];
  readonly bars: readonly LineBar[];
  /** Over its first bar; null for none. */
  readonly label: string | null;
  /** How many crotchets a bar of notes out of time holds; absent for bars in the line's metre. */
  readonly freeNotes?: number;
}

export interface SheetFrame {
  readonly title: string;
  readonly subtitle?: string | null;
  readonly instrument: Instrument;
  readonly tempo: TempoMark | null;
  readonly swing: SwingMark | null;
  readonly barsAcross: number;
  /** Whether every line opens a system; short ones share. */
  readonly opensSystems: boolean;
}

/** The score of some lines, all with the same number of staves. */
export function assembleLines(frame: SheetFrame, lines: readonly SheetLine[]): Score {
  const bars: ScoreBar[] = [];
  const partBars: PartBar[] = [];
  let number = 0;
  for (const line of lines) {
    for (const [i, bar] of line.bars.entries()) {
      const isFirst = bars.length === 0;
      const isEnd = i === line.bars.length - 1;
      const marks: Partial<ScoreBar> = {
        section: bar.section ?? null,
        startsSystem: isFirst || (i === 0 && frame.opensSystems),
        tempo: isFirst ? frame.tempo : null,
        swing: isFirst ? frame.swing : null,
        barline: !isEnd ? 'single' : line === lines.at(-1) ? 'final' : 'double',
      };
      const { freeNotes } = line;
      if (freeNotes === undefined) number++;
      bars.push(freeNotes === undefined ? scoreBar(number, line.metre, marks) : freeBar(freeNotes, marks));
      const label: readonly Direction[] =
        i === 0 && line.label !== null ? [words(line.label, { style: 'bold' })] : [];
      partBars.push({
        key: line.key,
        clefs: line.clefs,
        clefChanges: [],
        voices: bar.staves.map((events, s) => ({ id: s + 1, staff: s + 1, events })),
        chords: bar.chords ?? [],
        directions: [...label, ...(bar.directions ?? [])],
      });
    }
  }
  const staves: readonly Staff[] = (lines[0]?.clefs ?? ['treble']).map(() => 'five-line');
  const score = createScore({
    title: frame.title,
    subtitle: frame.subtitle ?? null,
    bars,
    parts: [part(frame.instrument, partBars, { staves })],
  });
  return withSystems(score, frame.barsAcross);
}

/** Notes and rests that stand on a system without crowding. */
const eventsAcross = 40;

/** Bars on a system: four, or two where four would crowd. */
export function barsAcrossFor(lines: readonly SheetLine[]): number {
  const rows = lines.flatMap((line) => {
    const counts = line.bars.map((bar) => Math.max(...bar.staves.map((events) => events.length)));
    const starts = counts.flatMap((_, i) => (i % 4 === 0 ? [i] : []));
    return starts.map((start) => counts.slice(start, start + 4).reduce((a, b) => a + b, 0));
  });
  return Math.max(...rows) > eventsAcross ? 2 : 4;
}
