// What makes a sheet music and not notes: laws read off finished sheets for every instrument and stage.

import { describe, expect, test } from 'vitest';
import { present, type Stage, stages } from '#core';
import { unfoldRepeats } from '../chart/chart.ts';
import { chordTones, guideTones } from '../chord/chord.ts';
import { plus, zero } from '../fraction/fraction.ts';
import { type Instrument, listInstruments } from '../instrument/instrument.ts';
import { formatPitch, pitchClass, pitchToMidi, staffStep, type WrittenPitch } from '../pitch/pitch.ts';
import type { Score } from '../score/score.ts';
import { shapesByStage } from '../shape/stage-shape.data.ts';
import { parseMaterialSpec } from '../spec/material-spec.ts';
import { chordTimeline, scaleForChord, spanAt } from './chart/chord-timeline.ts';
import { studentCharts } from './chart/student-chart.ts';
import { createSheet } from './create-sheet.ts';
import { barTicks } from './rhythm/beat-grid.ts';

interface Sounded {
  readonly pitch: WrittenPitch;
  readonly bar: number;
  /** Ticks from the start of the score's first bar. */
  readonly at: number;
  readonly ticks: number;
  /** Whether silence or a place to breathe follows. */
  readonly isBreath: boolean;
}

/** The sounding notes of the first part, ties joined. */
function notesOf(score: Score): readonly Sounded[] {
  const notes: Sounded[] = [];
  let tied = false;
  const part = present(score.parts[0], 'a part');
  let start = 0;
  for (const [b, bar] of part.bars.entries()) {
    let at = zero;
    for (const event of present(bar.voices[0], 'a voice').events) {
      const ticks = start + (at.n * 192) / at.d;
      const length = (event.duration.n * 192) / event.duration.d;
      const last = notes.at(-1);
      if (event.kind === 'note') {
        const head = present(event.heads[0], 'a head');
        const isBreath = event.articulations.includes('breath');
        if (tied && last !== undefined)
          notes.splice(-1, 1, { ...last, ticks: last.ticks + length, isBreath });
        else notes.push({ pitch: head.pitch, bar: b, at: ticks, ticks: length, isBreath });
        tied = head.isTied;
      } else if (last !== undefined) notes.splice(-1, 1, { ...last, isBreath: true });
      at = plus(at, event.duration);
    }
    start += barTicks(present(score.bars[b], 'a bar').metre);
  }
  return notes;
}

function sheetFor(typed: unknown, instrument: Instrument, stage: Stage, seed: number): Score {
  const spec = parseMaterialSpec(typed);
  if (!spec.ok) throw new Error(spec.error.message);
  const made = createSheet(spec.value, { instrument, stage, age: null, seed });
  if (!made.ok) throw new Error(`${instrument.id} ${stage}: ${made.error.message}`);
  return made.value.score;
}

const steps = (a: WrittenPitch, b: WrittenPitch) => Math.abs(staffStep(a) - staffStep(b)) + 1;

describe.each(stages)('%s', (stage) => {
  test('reading lines end on their tonic and leap no further than the stage reads', () => {
    for (const [i, instrument] of listInstruments().entries()) {
      const score = sheetFor({ kind: 'reading', bars: 8, lines: 2, ties: 'none' }, instrument, stage, i);
      const key = present(score.parts[0]?.bars[0], 'a bar').key;
      const notes = notesOf(score);
      for (const [n, note] of notes.entries()) {
        const next = notes[n + 1];
        const isLineEnd = next === undefined || (next.bar === 8 && note.bar < 8);
        const where = `${instrument.id} seed ${i} bar ${note.bar + 1} ${formatPitch(note.pitch)}`;
        if (isLineEnd) expect(pitchClass(note.pitch), where).toBe(pitchClass(key.tonic));
        else
          expect(steps(note.pitch, next.pitch), where).toBeLessThanOrEqual(shapesByStage[stage].largestLeap);
      }
    }
  });

  test('winds and voices find a place to breathe', () => {
    for (const [i, instrument] of listInstruments().entries()) {
      if (!['woodwind', 'brass', 'voice'].includes(instrument.family)) continue;
      for (const content of ['chord_tones', 'approach_notes', 'guide_tones'] as const) {
        const chart = '| C | Am7 | Dm7 | G7 | C | A7 | Dm7 | G7 |';
        const score = sheetFor({ kind: 'line', content, chart, key: 'fit' }, instrument, stage, i);
        let unbroken = 0;
        for (const { ticks, isBreath } of notesOf(score).slice(0, -1)) {
          unbroken += ticks;
          expect(unbroken, `${instrument.id} ${content} seed ${i}`).toBeLessThanOrEqual(4 * 192);
          if (isBreath) unbroken = 0;
        }
      }
    }
  });

  const chart = '| Dm7 | G7 | Cmaj7 A7 | Dm7 G7 | Em7b5 | A7b9 | Dm6 | G7 |';
  test.each(['chord_tones', 'approach_notes', 'enclosures', 'motif'] as const)(
    '%s: chords begin on a chord tone, notes outside the scale go on to one by semitone, octaves turn back',
    (content) => {
      for (const [i, instrument] of listInstruments().entries()) {
        const typed = { kind: 'line', content, chart, key: 'fit', choruses: 1 };
        const score = sheetFor(typed, instrument, stage, i);
        const spec = parseMaterialSpec(typed);
        if (!spec.ok || spec.value.kind !== 'line') throw new Error('a line');
        const student = { instrument, stage, age: null, seed: i };
        const own = present(studentCharts(spec.value, student)[0], 'a chart');
        const metre = present(score.bars[0], 'a bar').metre;
        const spans = chordTimeline(unfoldRepeats(own.chart.bars), metre);
        const notes = notesOf(score);
        for (const [n, note] of notes.entries()) {
          const chord = present(spanAt(spans, note.at)?.chord, 'a chord');
          const tones = chordTones(chord).map(pitchClass);
          const scale = scaleForChord(chord, own.key).names.map(pitchClass);
          const before = notes[n - 1];
          const next = notes[n + 1];
          const where = `${instrument.id} seed ${i} bar ${note.bar + 1} ${formatPitch(note.pitch)}`;
          const isChange = before === undefined || spanAt(spans, before.at) !== spanAt(spans, note.at);
          if (isChange && content !== 'motif') expect(tones, where).toContain(pitchClass(note.pitch));
          if (!tones.includes(pitchClass(note.pitch)) && !scale.includes(pitchClass(note.pitch))) {
            const target = present(next, where);
            const there = chordTones(present(spanAt(spans, target.at)?.chord, 'a chord')).map(pitchClass);
            expect(Math.abs(pitchToMidi(target.pitch) - pitchToMidi(note.pitch)), where).toBe(1);
            expect(there, where).toContain(pitchClass(target.pitch));
          }
          if (before === undefined || next === undefined || before.isBreath || note.isBreath) continue;
          const [in_, out] = [
            pitchToMidi(note.pitch) - pitchToMidi(before.pitch),
            pitchToMidi(next.pitch) - pitchToMidi(note.pitch),
          ];
          if (Math.abs(in_) > 12) expect(Math.sign(out), `${where} after a leap`).not.toBe(Math.sign(in_));
        }
        const last = present(notes.at(-1), 'a last note');
        const end = present(spans.at(-1)?.chord, 'a last chord');
        expect(chordTones(end).map(pitchClass)).toContain(pitchClass(last.pitch));
      }
    },
  );

  test('guide tones are guide tones', () => {
    for (const [i, instrument] of listInstruments().entries()) {
      const typed = {
        kind: 'line',
        content: 'guide_tones',
        chart: '| Dm7 | G7 | Cmaj7 | F7 |',
        pitch: 'written',
        choruses: 1,
      };
      const names = ['Dm7', 'G7', 'Cmaj7', 'F7'];
      const notes = notesOf(sheetFor(typed, instrument, stage, i));
      expect(notes.length).toBe(4);
      const spec = parseMaterialSpec(typed);
      if (!spec.ok || spec.value.kind !== 'line') throw new Error('a line');
      const { chart: own } = present(
        studentCharts(spec.value, { instrument, stage, age: null, seed: i })[0],
        'a chart',
      );
      for (const [n, note] of notes.entries()) {
        const chord = present(own.bars[n]?.chords[0]?.chord, names[n] ?? 'a chord');
        expect(guideTones(chord).map(pitchClass), `${instrument.id} ${names[n]}`).toContain(
          pitchClass(note.pitch),
        );
      }
    }
  });
});
