// Turns placed runs into a score: one key after the other, each on a system of its own, on one staff or for two hands.

import { present } from '#core';
import type { FingeringMarks } from '../../fingering/fingering.ts';
import type { Clef } from '../../instrument/instrument.ts';
import type { Key } from '../../key/key.ts';
import type { WrittenPitch } from '../../pitch/pitch.ts';
import type { Metre } from '../../rhythm/metre.ts';
import { createScore, note, part, scoreBar, words } from '../../score/create-score.ts';
import type {
  Direction,
  NoteEvent,
  PartBar,
  Score,
  ScoreBar,
  ScoreEvent,
  SlurPlace,
} from '../../score/score.ts';
import type { SheetFor } from '../../shape/student-shape.ts';
import { barTicks } from '../rhythm/beat-grid.ts';
import { clefsOfBars } from '../sheet/choose-clef.ts';
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

function pitchesOfBars(bars: readonly (readonly ScoreEvent[])[]): readonly (readonly WrittenPitch[])[] {
  return bars.map((events) =>
    events.flatMap((event) => (event.kind === 'note' ? event.heads.map(({ pitch }) => pitch) : [])),
  );
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
    const clefs = passage.staves.map(({ clef, clefs: others }, s) =>
      clefsOfBars([clef, ...others.filter((other) => other !== clef)], pitchesOfBars(staves[s] ?? [])),
    );
    const count = present(staves[0], 'at least one staff').length;
    // Short passages share a system; none is broken over two that fits on one.
    const across = barsAcross(passage);
    const opens = used + count > across;
    used = opens ? count % across || across : used + count;
    for (let i = 0; i < count; i++) {
      const directions: Direction[] = i === 0 ? [words(passage.label, { style: 'bold' })] : [];
      bars.push(
        scoreBar(bars.length + 1, metre, {
          startsSystem: bars.length === 0 || (opens && i % across === 0),
          tempo: bars.length === 0 ? tempoIn(metre, marks.tempo) : null,
          barline: i < count - 1 ? 'single' : passage === passages.at(-1) ? 'final' : 'double',
        }),
      );
      partBars.push({
        key,
        clefs: clefs.map((ofStaff) => present(ofStaff[i], 'a clef for every bar')),
        voices: staves.map((staff, s) => ({ id: s + 1, staff: s + 1, events: present(staff[i], 'a bar') })),
        chords: [],
        directions,
      });
    }
  }
  const staves = present(passages[0], 'at least one passage').staves.map(() => 'five-line' as const);
  return createScore({ title: marks.title, bars, parts: [part(instrument, partBars, { staves })] });
}
