// What stands in a chart's bars where there is no tune: slashes, nothing, the chord's tones in turn, or its guide tones.

import { type Chord, chordTones, guideTones } from '../../chord/chord.ts';
import { isInRange, type WrittenRange } from '../../instrument/instrument.ts';
import type { Key } from '../../key/key.ts';
import { nameAtOrAbove, transposePitch } from '../../pitch/interval.ts';
import { pitchToMidi, staffStep, type WrittenPitch, written } from '../../pitch/pitch.ts';
import type { Metre } from '../../rhythm/metre.ts';
import { note, noteHead, notes, rest } from '../../score/create-score.ts';
import type { ScoreEvent } from '../../score/score.ts';
import type { ChartSpec } from '../../spec/material-spec.ts';
import { chordTonePitch } from '../line/line-notes.ts';
import { type Slot, ticksToFraction } from '../rhythm/beat-figure.ts';
import { barTicks, beatGrid } from '../rhythm/beat-grid.ts';
import { noteName } from '../sheet/note-name.ts';
import { type TimedEvent, writeLine } from '../sheet/write-line.ts';
import type { ChordSpan } from './chord-timeline.ts';
import { slashBar } from './slash-bar.ts';

interface Place {
  readonly metre: Metre;
  readonly range: WrittenRange;
  /** Around which staff step the notes lie best. */
  readonly middle: number;
  readonly key: Key;
  readonly names: ChartSpec['names'];
}

/** The root-position chord whose tones lie nearest to the middle of a range; tones that pass its top fold down. */
function rootPosition(chord: Chord, { range, middle }: Place): readonly WrittenPitch[] {
  let root = nameAtOrAbove(chord.root, range.low);
  let best = root;
  let lowest = Number.POSITIVE_INFINITY;
  while (pitchToMidi(root) <= pitchToMidi(range.high)) {
    const tones = chord.quality.tones.map((tone) => written(transposePitch(root, tone)));
    const outside = tones.filter((tone) => !isInRange(range, tone)).length;
    const cost = 10 * outside + Math.abs(staffStep(root) + 2 - middle);
    if (cost < lowest) [best, lowest] = [root, cost];
    root = { ...root, octave: root.octave + 1 };
  }
  return chord.quality.tones.flatMap((tone) => {
    const pitch = chordTonePitch(written(transposePitch(best, tone)), chord.root);
    const folded = written({ ...pitch, octave: pitch.octave - 1 });
    return isInRange(range, pitch) ? [pitch] : isInRange(range, folded) ? [folded] : [];
  });
}

/** Up to four tones for a study: root, third, fifth and seventh, or what the chord has. */
function studyTones(chord: Chord, place: Place): readonly WrittenPitch[] {
  const tones = rootPosition(chord, place);
  if (chordTones(chord).length > 3) return tones.slice(0, 4);
  const top = tones[0] === undefined ? undefined : written({ ...tones[0], octave: tones[0].octave + 1 });
  const middle = tones[1];
  const fourth = top !== undefined && isInRange(place.range, top) ? top : middle;
  return fourth === undefined ? tones : [...tones, fourth];
}

/** Lengths for a chord's tones one after the other: a beat each, or halves of beats where there are few. */
function lengthsFor(span: ChordSpan, bar: number, metre: Metre): readonly Slot[] {
  const start = bar * barTicks(metre);
  const inside = beatGrid(metre)
    .map(({ at }) => at + start)
    .filter((at) => at > span.from && at < span.to);
  const starts = [span.from, ...inside];
  const usable = starts.map((at, i) => ({ at, length: (starts[i + 1] ?? span.to) - at }));
  const halves = usable.length > 2 ? usable : usable.flatMap(splitBeat);
  return halves.map(({ at, length }) => ({ at, length, isRest: false, tuplet: null }));
}

function splitBeat({ at, length }: { readonly at: number; readonly length: number }) {
  const parts = length % 72 === 0 ? 3 : 2;
  if (length % parts !== 0 || length / parts < 12) return [{ at, length }];
  return Array.from({ length: parts }, (_, i) => ({ at: at + (i * length) / parts, length: length / parts }));
}

function chordToneEvents(span: ChordSpan, bar: number, place: Place): readonly TimedEvent[] {
  const slots = lengthsFor(span, bar, place.metre);
  if (span.chord === null) return [silence(span)];
  const tones = studyTones(span.chord, place);
  return slots.map((slot, i) => {
    // Up, and back down where there are more beats than tones.
    const turn = Math.max(1, 2 * tones.length - 2);
    const index = i % turn < tones.length ? i % turn : turn - (i % turn);
    const pitch = tones[index];
    if (pitch === undefined) return { slot, event: null };
    return { slot, event: note(pitch, { n: 1, d: 1 }, { lyric: noteName(pitch, place.key, place.names) }) };
  });
}

function silence(span: ChordSpan): TimedEvent {
  return { slot: { at: span.from, length: span.to - span.from, isRest: false, tuplet: null }, event: null };
}

function guideEvent(span: ChordSpan, place: Place): TimedEvent {
  const { chord } = span;
  if (chord === null) return silence(span);
  const heads = guideTones(chord).flatMap((name) => {
    let pitch = written(nameAtOrAbove(name, place.range.low));
    let best: WrittenPitch | null = null;
    while (isInRange(place.range, pitch)) {
      if (
        best === null ||
        Math.abs(staffStep(pitch) - place.middle) < Math.abs(staffStep(best) - place.middle)
      )
        best = pitch;
      pitch = written({ ...pitch, octave: pitch.octave + 1 });
    }
    return best === null ? [] : [chordTonePitch(best, chord.root)];
  });
  const sorted = heads.toSorted((a, b) => pitchToMidi(a) - pitchToMidi(b));
  const slot = { at: span.from, length: span.to - span.from, isRest: false, tuplet: null };
  return {
    slot,
    event:
      sorted.length === 0
        ? null
        : notes(
            sorted.map((pitch) => noteHead(pitch)),
            { n: 1, d: 1 },
          ),
  };
}

/** The events of each bar. */
export function fillBars(
  content: ChartSpec['bars'],
  spans: readonly ChordSpan[],
  count: number,
  place: Place,
): readonly (readonly ScoreEvent[])[] {
  const { metre } = place;
  const length = barTicks(metre);
  if (content === 'empty') {
    // A beat of room each, so that symbols stand where they sound.
    const beats = beatGrid(metre).map((beat) => rest(ticksToFraction(beat.length), { isHidden: true }));
    return Array.from({ length: count }, () => beats);
  }
  const timed = Array.from({ length: count }, (_, bar) => {
    if (content === 'slashes') return slashBar(metre, bar * length);
    const own = spans.filter((span) => span.bar === bar);
    return own.flatMap((span) =>
      content === 'guide_tones' ? [guideEvent(span, place)] : chordToneEvents(span, bar, place),
    );
  });
  return writeLine(metre, count, timed.flat());
}
