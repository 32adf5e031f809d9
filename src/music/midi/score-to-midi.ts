// Score → Standard MIDI File, format 1: one track for tempo, metre, key and sections, then one for each part.

import { compare, type Fraction, fraction, minus, over, plus } from '../fraction/fraction.ts';
import { transpositionOf } from '../instrument/instrument.ts';
import { keyFifths, transposeKey } from '../key/key.ts';
import { formatMetre } from '../rhythm/metre.ts';
import { beatUnits } from '../rhythm/metre-tree.ts';
import type { Part, Score, ScoreBar } from '../score/score.ts';
import { keyEvent, metreEvent, midiFile, type TrackEvent, tempoEvent, textEvent } from './midi-file.ts';
import { type PlayedNote, type PlayedScore, performScore } from './perform-score.ts';

/** Divides by 2 to the fifth, by 3 and by 5; sevens are rounded to a tick. */
export const ticksPerCrotchet = 480;

function toTicks({ n, d }: Fraction): number {
  return Math.round((4 * ticksPerCrotchet * n) / d);
}

/** MIDI channels from 0, without percussion's. */
function channelOf(part: number): number {
  const free = part % 15;
  return free < 9 ? free : free + 1;
}
const percussion = 9;

/** The bar's metre; a short bar's own length where it can be written as one. */
function writeMetre(bar: ScoreBar): readonly number[] {
  const { metre, length } = bar;
  const beat = beatUnits(metre)[0] ?? 1;
  const full = over(length, fraction(metre.beats, metre.unit));
  const isShort = full.d !== 1;
  const canBeWritten = (length.d & (length.d - 1)) === 0;
  if (isShort && canBeWritten) return metreEvent(length.n, length.d, 96 / Math.max(4, length.d));
  return metreEvent(metre.beats, metre.unit, (96 / metre.unit) * beat);
}

function conductorTrack(score: Score, { bars }: PlayedScore): readonly TrackEvent[] {
  const events: TrackEvent[] = [];
  const top = score.parts[0];
  if (score.title !== '') events.push({ tick: 0, order: 0, bytes: textEvent(0x03, score.title) });
  let [tempo, metre, key] = [0, '', ''];
  for (const { bar, index, start, tempo: now } of bars) {
    const tick = toTicks(start);
    const add = (order: number, bytes: readonly number[]) => events.push({ tick, order, bytes });
    const shape = `${formatMetre(bar.metre)} ${bar.length.n}/${bar.length.d}`;
    if (shape !== metre) add(1, writeMetre(bar));
    const written = top?.bars[index]?.key;
    if (top !== undefined && written !== undefined) {
      const sounding = transposeKey(written, transpositionOf(top.instrument));
      const name = `${keyFifths(sounding)} ${sounding.mode}`;
      if (name !== key) add(2, keyEvent(keyFifths(sounding), sounding.mode));
      key = name;
    }
    if (now !== tempo) add(3, tempoEvent(now));
    if (bar.section !== null) add(4, textEvent(0x06, bar.section));
    [tempo, metre] = [now, shape];
  }
  return events;
}

/** Foot down and up of the sustaining pedal, controller 64. */
function pedalEvents(part: Part, channel: number, { bars }: PlayedScore): readonly TrackEvent[] {
  return bars.flatMap(({ index, start }) =>
    (part.bars[index]?.directions ?? []).flatMap((direction) =>
      direction.kind === 'pedal'
        ? [
            {
              tick: toTicks(plus(start, direction.at)),
              order: 1,
              bytes: [0xb0 | channel, 64, direction.foot === 'down' ? 127 : 0],
            },
          ]
        : [],
    ),
  );
}

function noteEvents(note: PlayedNote, channel: number): readonly TrackEvent[] {
  const on = toTicks(note.start);
  const off = Math.max(on + 1, toTicks(plus(note.start, note.duration)));
  const own = note.isDrum ? percussion : channel;
  return [
    { tick: on, order: 2, bytes: [0x90 | own, note.midi, note.velocity] },
    { tick: off, order: 0, bytes: [0x80 | own, note.midi, 64] },
  ];
}

/**
 * One key for one pitch: where two voices meet on it, a key still down is struck again and held as long as either asks.
 */
function withOneKeyEach(notes: readonly PlayedNote[]): readonly PlayedNote[] {
  const sounding = new Map<string, PlayedNote>();
  const done: PlayedNote[] = [];
  for (const note of notes) {
    const key = `${note.isDrum} ${note.midi}`;
    const before = sounding.get(key);
    let now = note;
    if (before !== undefined) {
      const end = plus(before.start, before.duration);
      if (compare(end, plus(note.start, note.duration)) > 0)
        now = { ...note, duration: minus(end, note.start) };
      const cut = compare(end, note.start) > 0 ? minus(note.start, before.start) : before.duration;
      if (cut.n > 0) done.push({ ...before, duration: cut });
    }
    sounding.set(key, now);
  }
  return [...done, ...sounding.values()];
}

function partTrack(part: Part, index: number, performance: PlayedScore): readonly TrackEvent[] {
  const channel = channelOf(index);
  const name = part.name === '' ? part.instrument.name : part.name;
  return [
    { tick: 0, order: -2, bytes: textEvent(0x03, name) },
    // General MIDI programs are counted from 1 in the table, from 0 in the message.
    { tick: 0, order: -1, bytes: [0xc0 | channel, part.instrument.program - 1] },
    ...pedalEvents(part, channel, performance),
    ...withOneKeyEach(performance.notes.filter((note) => note.part === index)).flatMap((note) =>
      noteEvents(note, channel),
    ),
  ];
}

/** The score as the bytes of a MIDI file, as it sounds. The same score gives the same bytes. */
export function scoreToMidi(score: Score): Uint8Array {
  const performance = performScore(score);
  return midiFile(ticksPerCrotchet, [
    conductorTrack(score, performance),
    ...score.parts.map((part, index) => partTrack(part, index, performance)),
  ]);
}
