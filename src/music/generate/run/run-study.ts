// Turns placed runs into a score: one key after the other, each on a system of its own, on one staff or for two hands.

import { present } from '#core';
import type { FingeringMarks } from '../../fingering/fingering.ts';
import { compare, type Fraction, plus, zero } from '../../fraction/fraction.ts';
import type { Clef } from '../../instrument/instrument.ts';
import type { Key } from '../../key/key.ts';
import type { WrittenPitch } from '../../pitch/pitch.ts';
import { beamEvents } from '../../rhythm/beams.ts';
import type { Metre } from '../../rhythm/metre.ts';
import { createScore, note, part, scoreBar, words } from '../../score/create-score.ts';
import type {
  ClefChange,
  Direction,
  NoteEvent,
  PartBar,
  Score,
  ScoreBar,
  ScoreEvent,
  SlurPlace,
} from '../../score/score.ts';
import type { SheetFor } from '../../shape/student-shape.ts';
import { ticksToFraction } from '../rhythm/beat-figure.ts';
import { barTicks, beatGrid } from '../rhythm/beat-grid.ts';
import { clefsOfStretches, ledgerLines } from '../sheet/choose-clef.ts';
import { noteName } from '../sheet/note-name.ts';
import { tempoIn } from '../sheet/tempo.ts';
import { writeLine } from '../sheet/write-line.ts';
import type { TimedNote } from './time-run.ts';

/** A passage: what one key or one rhythm of it is, ready to write. */
export interface Passage {
  /** Over its first bar: `G major`. */
  readonly label: string;
  readonly key: Key;
  readonly metre: Metre;
  readonly timed: readonly TimedNote[];
  /** For each staff, top down: its clef and the pitch of each timed note. */
  readonly staves: readonly PassageStaff[];
  /** For each staff, the marks of each timed note; empty for none. */
  readonly fingerings: readonly (readonly FingeringMarks[])[];
}

export interface PassageStaff {
  /** The clef it starts in, unless another saves much. */
  readonly clef: Clef;
  /** Clefs it may change to. */
  readonly clefs: readonly Clef[];
  readonly pitches: readonly WrittenPitch[];
}

export interface RunMarks {
  readonly articulation: 'plain' | 'slurred' | 'staccato' | 'slurred_pairs';
  readonly names: 'none' | 'letters' | 'sol_fa';
  readonly tempo: number;
  readonly title: string;
}

/** Slurs over each bar or each pair; the last note stands free. */
function slurAt(marks: RunMarks, timed: readonly TimedNote[], i: number, bar: number): SlurPlace {
  const last = timed.length - 1;
  if (i === last) return null;
  if (marks.articulation === 'slurred_pairs') {
    if (i % 2 === 0) return i + 1 < last ? 'start' : null;
    return i < last ? 'stop' : null;
  }
  if (marks.articulation !== 'slurred') return null;
  const barOf = (index: number) => Math.floor((timed[index]?.slot.at ?? 0) / bar);
  const starts = i === 0 || barOf(i - 1) !== barOf(i);
  const stops = i + 1 === last || barOf(i + 1) !== barOf(i);
  if (starts === stops) return null;
  return starts ? 'start' : 'stop';
}

function staffBars(passage: Passage, marks: RunMarks, staff: number): readonly (readonly ScoreEvent[])[] {
  const { metre, timed, key } = passage;
  const bar = barTicks(metre);
  const { pitches } = present(passage.staves[staff], 'a staff of the passage');
  const events = timed.map(({ slot }, i) => {
    const pitch = present(pitches[i], 'a pitch for every slot');
    const event: NoteEvent = note(
      pitch,
      { n: 1, d: 1 },
      {
        slur: slurAt(marks, timed, i, bar),
        articulations: marks.articulation === 'staccato' && i < timed.length - 1 ? ['staccato'] : [],
        lyric: staff === 0 ? noteName(pitch, key, marks.names) : null,
        ...passage.fingerings[staff]?.[i],
      },
    );
    return { slot, event };
  });
  return writeLine(metre, barsOf(timed, bar), events);
}

/** How many bars a passage fills. */
function barsOf(timed: readonly TimedNote[], bar: number): number {
  const { slot } = present(timed.at(-1), 'a passage has a last note');
  return (slot.at + slot.length) / bar;
}

/**
 * Bars of a passage that stand well on one system: as many as its notes allow, and where it needs several systems, nearly
 * the same on each, so that no lone last bar is stretched over a page's width.
 */
function barsAcross({ timed, metre }: Passage): number {
  const count = barsOf(timed, barTicks(metre));
  const density = timed.length / count;
  const most = density > 13 ? 2 : density > 9 ? 3 : 4;
  return count > most ? Math.ceil(count / Math.ceil(count / most)) : most;
}

/** Where a staff's clefs may change: at bars, and inside them at beats where no beam goes on. */
function stretchesOf(bars: readonly (readonly ScoreEvent[])[], metre: Metre): readonly Stretch[] {
  const beats = beatGrid(metre).map(({ at }) => at);
  return bars.flatMap((events, bar) => {
    const stretches: Stretch[] = [];
    const beams = beamEvents(metre, events, zero);
    let at = zero;
    for (const [i, event] of events.entries()) {
      const [beam] = beams[i] ?? [];
      const goesOn = beam === 'continue' || beam === 'end';
      const isBeat = beats.some((ticks) => compare(ticksToFraction(ticks), at) === 0);
      if (isBeat && !goesOn) stretches.push({ bar, at, pitches: [], opensBar: at.n === 0 });
      if (event.kind === 'note') stretches.at(-1)?.pitches.push(...event.heads.map(({ pitch }) => pitch));
      at = plus(at, event.duration);
    }
    return stretches;
  });
}

interface Stretch {
  readonly bar: number;
  readonly at: Fraction;
  readonly pitches: WrittenPitch[];
  readonly opensBar: boolean;
}

interface StaffClefs {
  /** At the start of each bar. */
  readonly byBar: readonly Clef[];
  /** Inside each bar. */
  readonly changes: readonly (readonly ClefChange[])[];
  /** Where an octave line begins and ends, in each bar. */
  readonly octaves: readonly (readonly Direction[])[];
}

/** Ledger lines that bring an octave line, and from which on it then stands (common practice, no source). */
const octaveLedgers = { brings: 5, from: 3 } as const;

/** For pianists, an octave line over the stretches around the highest notes. */
function octaveLine(
  stretches: readonly Stretch[],
  clefs: readonly Clef[],
  bars: readonly (readonly ScoreEvent[])[],
  staff: number,
): readonly (readonly Direction[])[] {
  const lines: Direction[][] = bars.map(() => []);
  const climbs = (i: number, ledgers: number) =>
    clefs[i] === 'treble' &&
    stretches[i]?.pitches.some((pitch) => isAbove(pitch) && ledgerLines('treble', pitch) >= ledgers) === true;
  let first = stretches.findIndex((_, i) => climbs(i, octaveLedgers.brings));
  let last = stretches.findLastIndex((_, i) => climbs(i, octaveLedgers.brings));
  while (climbs(first - 1, octaveLedgers.from)) first--;
  while (climbs(last + 1, octaveLedgers.from)) last++;
  const [from, to] = [stretches[first], stretches[last]];
  if (from === undefined || to === undefined) return lines;
  const after = stretches[last + 1];
  const end =
    after?.bar === to.bar
      ? after.at
      : (bars[to.bar] ?? []).reduce((sum, { duration }) => plus(sum, duration), zero);
  lines[from.bar]?.push({ kind: 'octave-up', at: from.at, staff });
  lines[to.bar]?.push({ kind: 'octave-end', at: end, staff });
  return lines;
}

const isAbove = ({ octave }: WrittenPitch): boolean => octave > 5;

function clefsFor(
  { clef, clefs: others }: PassageStaff,
  bars: readonly (readonly ScoreEvent[])[],
  metre: Metre,
  staff: number,
  isKeyboard: boolean,
): StaffClefs {
  const stretches = stretchesOf(bars, metre);
  const found = clefsOfStretches([clef, ...others.filter((other) => other !== clef)], stretches);
  const byBar: Clef[] = [];
  const changes: ClefChange[][] = bars.map(() => []);
  for (const [i, { bar, at, opensBar }] of stretches.entries()) {
    const here = present(found[i], 'a clef for every stretch');
    if (opensBar) byBar.push(here);
    else if (here !== found[i - 1]) changes[bar]?.push({ at, staff, clef: here });
  }
  const octaves = isKeyboard ? octaveLine(stretches, found, bars, staff) : bars.map(() => []);
  return { byBar, changes, octaves };
}

/** The score of some passages. */
export function writePassages(
  { instrument }: SheetFor,
  passages: readonly Passage[],
  marks: RunMarks,
): Score {
  const bars: ScoreBar[] = [];
  const partBars: PartBar[] = [];
  let used = 0;
  for (const passage of passages) {
    const { metre, key } = passage;
    const staves = passage.staves.map((_, staff) => staffBars(passage, marks, staff));
    const clefs = passage.staves.map((staff, s) =>
      clefsFor(staff, staves[s] ?? [], metre, s + 1, instrument.family === 'keyboard'),
    );
    const count = present(staves[0], 'at least one staff').length;
    // Short passages share a system; none is broken over two that fits on one.
    const across = barsAcross(passage);
    const opens = used + count > across;
    used = opens ? count % across || across : used + count;
    for (let i = 0; i < count; i++) {
      const label: readonly Direction[] = i === 0 ? [words(passage.label, { style: 'bold' })] : [];
      const directions = [...label, ...clefs.flatMap(({ octaves }) => octaves[i] ?? [])];
      bars.push(
        scoreBar(bars.length + 1, metre, {
          startsSystem: bars.length === 0 || (opens && i % across === 0),
          tempo: bars.length === 0 ? tempoIn(metre, marks.tempo) : null,
          barline: i < count - 1 ? 'single' : passage === passages.at(-1) ? 'final' : 'double',
        }),
      );
      partBars.push({
        key,
        clefs: clefs.map(({ byBar }) => present(byBar[i], 'a clef for every bar')),
        clefChanges: clefs.flatMap(({ changes }) => changes[i] ?? []),
        voices: staves.map((staff, s) => ({ id: s + 1, staff: s + 1, events: present(staff[i], 'a bar') })),
        chords: [],
        directions,
      });
    }
  }
  const staves = present(passages[0], 'at least one passage').staves.map(() => 'five-line' as const);
  return createScore({ title: marks.title, bars, parts: [part(instrument, partBars, { staves })] });
}
