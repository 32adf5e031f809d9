// A quiet backing that bleeds into the microphone: bass, chords and drums over the chart, at the take's own tempo.

import type { Random } from '#core';
import { chordTones, parseChart, pitchClass } from '#music';
import type { Line } from './line.ts';
import type { ScoreNote } from './sampled.ts';

/** The backing's notes in seconds from the file's start; `place` turns crotchets from bar 1 into seconds. */
export function backingNotes(
  line: Line,
  place: (crotchet: number) => number,
  random: Random,
): readonly ScoreNote[] {
  const chart = parseChart(line.chart);
  if (!chart.ok) throw new Error(`no chart: ${line.chart}`);
  const beats = line.metre[0];
  const notes: ScoreNote[] = [];
  const add = (at: number, length: number, midi: number, velocity: number, program: number, drum = false) => {
    const start = place(at) + (random.next() - 0.5) * 0.01;
    notes.push({
      start,
      held: Math.max(0.05, place(at + length) - place(at)) * 0.9,
      midi,
      velocity,
      program,
      drum,
    });
  };
  const fullBand = random.next() < 0.7;
  for (let bar = 0; bar < line.bars; bar++) {
    const chord = chart.value.bars[bar]?.chords[0]?.chord;
    if (!chord) continue;
    const tones = chordTones(chord).map((tone) => pitchClass(tone));
    const root = tones[0] ?? 0;
    for (let beat = 0; beat < beats; beat++) {
      const at = bar * beats + beat;
      const low = 33 + ((root - 33 + 120) % 12);
      if (beat % 2 === 0 || random.next() < 0.6) add(at, 0.9, beat === 2 ? low + 7 : low, 80, 32);
      if (beat % 2 === 1 || random.next() < 0.3)
        for (const pc of tones) add(at, 0.8, 52 + ((pc - 52 + 120) % 12), 60, 0);
      if (!fullBand) continue;
      add(at, 0.2, 42, 70, 0, true);
      add(at + 0.5, 0.2, 42, 45, 0, true);
      if (beat % 2 === 0) add(at, 0.2, 36, 85, 0, true);
      else add(at, 0.2, 38, 75, 0, true);
    }
  }
  return notes;
}
