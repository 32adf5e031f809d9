// A take as notation: what was heard, written for the instrument, chords above, phrases as slurs.

import { present } from '#core';
import {
  barLength,
  type ChordSymbol,
  chordSymbol,
  createScore,
  type Fraction,
  findInstrument,
  fraction,
  type Instrument,
  invertDirection,
  type Key,
  note,
  type PartBar,
  part,
  partBar,
  rest,
  type Score,
  type ScoreEvent,
  scoreBar,
  swingMark,
  tempoMark,
  transposeChord,
  transposeKey,
  transpositionOf,
  tuplet,
  unfoldRepeats,
  withSystems,
  writeEvent,
} from '#music';
import type { Alignment } from '../alignment/align-take.ts';
import { ticksPerBeat } from '../alignment/slots.ts';
import { beatFrame, type TakeContext } from '../context/take-context.ts';
import type { Phrase } from '../evidence/phrases.ts';
import type { HeardNote } from '../notes/heard-note.ts';
import { type BeatUnit, chooseUnits, cutPieces, type Piece, snap } from './beat-pieces.ts';
import { findSignature, spellHeard } from './spell-heard.ts';

/** A take written out. */
export interface WrittenTake {
  readonly score: Score;
  /** For every bar and event of the score, the heard note it shows (an index), or null for a rest. */
  readonly noteOf: readonly (readonly (number | null)[])[];
}

export interface TakeToWrite {
  readonly notes: readonly HeardNote[];
  readonly alignment: Alignment;
  readonly phrases: readonly Phrase[];
  readonly context: TakeContext;
}

/** Swing that is written as swung quavers, as a share of the beat. */
const leastSwing = 0.55;
const barsInSystem = 4;

/** Writes what was heard; null when there are no notes. Without an instrument it is written at pitch, as for a flute. */
export function writeTake(take: TakeToWrite): WrittenTake | null {
  const { alignment, context, notes } = take;
  const { rhythm, grid } = alignment;
  if (rhythm.length === 0) return null;
  const instrument = present(findInstrument(context.instrument ?? 'flute'), 'an instrument');
  const page = createPage(take, instrument);
  for (const piece of layPieces(take, page)) writePiece(piece, page, notes);
  flushTuplet(page);
  const key = page.key;
  const bars = page.bars.map((events, i) => {
    const place: Pick<PartBar, 'key'> & Partial<PartBar> = {
      key,
      clefs: instrument.clefs.slice(0, 1),
      chords: chordsOf(page.firstBar + i, context, instrument),
    };
    return partBar(place, events);
  });
  const frame = page.bars.map((_, i) =>
    scoreBar(page.firstBar + i + 1, context.metre, {
      ...(i === 0
        ? {
            tempo: tempoMark(Math.round(grid.tempo), beatValue(context)),
            swing: grid.swing >= leastSwing ? swingMark() : null,
          }
        : {}),
      barline: i === page.bars.length - 1 ? 'final' : 'single',
    }),
  );
  const score = createScore({ bars: frame, parts: [part(instrument, bars)] });
  return { score: withSystems(score, barsInSystem), noteOf: page.noteOf };
}

interface Page {
  readonly context: TakeContext;
  readonly key: Key;
  /** Semitones from what sounds to what is written. */
  readonly up: number;
  /** Bars before bar 1 are counted down from -1. */
  readonly firstBar: number;
  readonly barTicks: number;
  readonly units: readonly BeatUnit[];
  readonly firstBeat: number;
  readonly bars: ScoreEvent[][];
  readonly noteOf: (number | null)[][];
  readonly slurs: ReadonlyMap<number, 'start' | 'stop'>;
  /** Notes of which a piece stands already. */
  readonly begun: Set<number>;
  /** Events of the tuplet that is being filled. */
  open: { beat: number; readonly events: ScoreEvent[]; readonly owners: (number | null)[] } | null;
}

function createPage({ notes, alignment, phrases, context }: TakeToWrite, instrument: Instrument): Page {
  const { rhythm } = alignment;
  const { beatsPerBar, isCompound } = beatFrame(context.metre);
  const barTicks = beatsPerBar * ticksPerBeat;
  const firstBar = Math.min(0, Math.floor((rhythm[0]?.tick ?? 0) / barTicks));
  const end = Math.max(...rhythm.map((r) => r.tick + r.ticks));
  const count = Math.max(1, Math.ceil(end / barTicks - 1e-9) - firstBar);
  const firstBeat = firstBar * beatsPerBar;
  const transposition = invertDirection(transpositionOf(instrument));
  const weights = new Map<number, number>();
  for (const pc of context.scale ?? []) weights.set(pc, 1);
  if (context.scale === null)
    for (const n of notes) weights.set(n.midi % 12, (weights.get(n.midi % 12) ?? 0) + n.offset - n.onset);
  const slurs = new Map<number, 'start' | 'stop'>();
  for (const phrase of phrases)
    if (phrase.last > phrase.first) slurs.set(phrase.first, 'start').set(phrase.last, 'stop');
  return {
    context,
    key: transposeKey(findSignature(weights), transposition),
    up: transposition.chromatic,
    firstBar,
    barTicks,
    units: chooseUnits(
      rhythm.flatMap((r) => [r.tick, r.tick + r.ticks]),
      firstBeat,
      count * beatsPerBar,
      isCompound,
    ),
    firstBeat,
    bars: Array.from({ length: count }, () => []),
    noteOf: Array.from({ length: count }, () => []),
    slurs,
    begun: new Set(),
    open: null,
  };
}

/** The pieces in order of time, from the first bar line to the last. */
function layPieces({ alignment, context }: TakeToWrite, page: Page): readonly Piece[] {
  const { units, firstBeat, barTicks, firstBar } = page;
  const snapped = alignment.rhythm.map((r) => ({
    note: r.note,
    from: snap(r.tick, units, firstBeat),
    to: snap(r.tick + r.ticks, units, firstBeat),
  }));
  // a note ends where the next begins at the latest
  const notes = snapped.map((n, i) => ({ ...n, to: Math.min(n.to, snapped[i + 1]?.from ?? n.to) }));
  const { isCompound } = beatFrame(context.metre);
  const cuts = isCompound
    ? []
    : units.flatMap((unit, beat) =>
        unit === 3 ? [] : [(beat + firstBeat) * ticksPerBeat, (beat + firstBeat + 1) * ticksPerBeat],
      );
  const span = { from: firstBar * barTicks, to: (firstBar + page.bars.length) * barTicks };
  return cutPieces(notes, span, cuts);
}

function writePiece(piece: Piece, page: Page, notes: readonly HeardNote[]): void {
  const { beatLength, isCompound } = beatFrame(page.context.metre);
  const beat = Math.floor(piece.from / ticksPerBeat);
  const unit = page.units[beat - page.firstBeat] ?? 3;
  const isWholeBeat = piece.to - piece.from === ticksPerBeat;
  if (isCompound || unit === 3 || isWholeBeat) {
    flushTuplet(page);
    const length = ticksToFraction(piece.to - piece.from, beatLength);
    const bar = Math.floor(piece.from / page.barTicks);
    const at = ticksToFraction(piece.from - bar * page.barTicks, beatLength);
    for (const [k, events] of writeEvent(
      page.context.metre,
      at,
      eventOf(piece, length, page, notes),
    ).entries()) {
      page.bars[bar - page.firstBar + k]?.push(...events);
      page.noteOf[bar - page.firstBar + k]?.push(...events.map(() => piece.note));
    }
    return;
  }
  if (page.open !== null && page.open.beat !== beat) flushTuplet(page);
  page.open ??= { beat, events: [], owners: [] };
  // three notes stand in the time of two: each third is written as a half of the beat
  const parts = (piece.to - piece.from) / unit;
  const written = parts === 5 ? [4, 1] : [parts];
  for (const [k, count] of written.entries()) {
    const length = ticksToFraction(count * (unit === 4 ? 6 : 3), beatLength);
    const isLast = k === written.length - 1;
    page.open.events.push(eventOf({ ...piece, goesOn: piece.goesOn || !isLast }, length, page, notes));
    page.open.owners.push(piece.note);
  }
}

function flushTuplet(page: Page): void {
  if (page.open === null) return;
  const { beat, events, owners } = page.open;
  const { beatsPerBar } = beatFrame(page.context.metre);
  const bar = Math.floor(beat / beatsPerBar) - page.firstBar;
  const unit = page.units[beat - page.firstBeat] ?? 4;
  const ratio = unit === 4 ? { actual: 3, normal: 2 } : { actual: 6, normal: 4 };
  page.bars[bar]?.push(...tuplet(ratio, events));
  page.noteOf[bar]?.push(...owners);
  page.open = null;
}

function eventOf(piece: Piece, length: Fraction, page: Page, notes: readonly HeardNote[]): ScoreEvent {
  if (piece.note === null) return rest(length);
  const heard = notes[piece.note];
  const slur = page.slurs.get(piece.note) ?? null;
  // a slur opens on the first piece of a note and closes on the last
  const isFirst =
    page.noteOf.every((bar) => !bar.includes(piece.note)) && !page.open?.owners.includes(piece.note);
  const shown = (slur === 'start' && isFirst) || (slur === 'stop' && !piece.goesOn) ? slur : null;
  return note(spellHeard((heard?.midi ?? 60) + page.up, page.key), length, {
    isTied: piece.goesOn,
    slur: shown,
  });
}

function ticksToFraction(ticks: number, beatLength: Fraction): Fraction {
  return fraction(ticks * beatLength.n, ticksPerBeat * beatLength.d);
}

function chordsOf(bar: number, context: TakeContext, instrument: Instrument): readonly ChordSymbol[] {
  if (context.chart === null || bar < 0) return [];
  const bars = unfoldRepeats(context.chart.bars);
  const length = barLength(context.metre);
  const transposition = invertDirection(transpositionOf(instrument));
  return (bars[bar % bars.length]?.chords ?? []).map(({ chord, at }) =>
    chordSymbol(
      chord === null ? null : transposeChord(chord, transposition),
      fraction(at.n * length.n, at.d * length.d),
    ),
  );
}

function beatValue(context: TakeContext): {
  readonly type: 'quarter' | 'eighth' | 'half';
  readonly dots: 0 | 1;
} {
  const { beatLength, isCompound } = beatFrame(context.metre);
  if (isCompound) return { type: beatLength.d === 8 ? 'quarter' : 'eighth', dots: 1 };
  return { type: beatLength.d === 2 ? 'half' : beatLength.d === 8 ? 'eighth' : 'quarter', dots: 0 };
}
