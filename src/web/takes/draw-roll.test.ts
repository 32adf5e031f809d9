import { expect, test } from 'vitest';
import type { HeardTake } from '#contract';
import type { Evidence } from '#listening';
import { drawRoll } from './draw-roll.ts';
import { settingsToContext, suggestSettings } from './take-settings.ts';

const silent = { heard: false, reason: '' } as const;
const evidence: Evidence = {
  phrases: silent,
  noteValues: silent,
  syncopation: silent,
  notesChosen: silent,
  timing: silent,
  intonation: silent,
  tone: silent,
  dynamics: silent,
  motifs: silent,
};
const context = settingsToContext({ ...suggestSettings([], null), tempo: 60, chart: 'C | F G' }, 1);
const note = (onset: number, midi: number) => ({
  onset,
  offset: onset + 0.9,
  midi,
  cents: 0,
  db: -20,
  confidence: 1,
});
const heard: HeardTake = {
  seconds: 10,
  notes: [note(1, 60), note(2, 72)],
  alignment: {
    grid: {
      offset: 1,
      tempo: 60,
      swing: 0.5,
      drift: 0,
      isGiven: true,
      anchors: [
        { beat: 0, seconds: 1 },
        { beat: 1, seconds: 2 },
      ],
    },
    rhythm: [],
    fit: 1,
  },
  problems: [],
  waveform: [0, 1, 0.5],
};

test('bars stand where the grid has them, with the chords of the chart again and again', () => {
  const { bars, width } = drawRoll(heard, evidence, context);
  expect(bars.map((bar) => [bar.number, Math.round((bar.x / width) * 10), bar.chord])).toEqual([
    [1, 1, 'C'],
    [2, 5, 'F G'],
    [3, 9, 'C'],
  ]);
});

test('notes lie by time and pitch, an octave above the other', () => {
  const roll = drawRoll(heard, evidence, context);
  const [low, high] = roll.notes;
  expect((low?.x ?? 0) / roll.width).toBeCloseTo(0.1);
  expect((low?.y ?? 0) - (high?.y ?? 0)).toBe(12 * roll.rowHeight);
  for (const { y } of roll.notes) expect(y + roll.rowHeight).toBeLessThanOrEqual(roll.height);
});

test('a take without beat, notes or length is still drawn', () => {
  const empty: HeardTake = { seconds: 0, notes: [], alignment: null, problems: [], waveform: [] };
  const roll = drawRoll(empty, evidence, context);
  expect(roll.bars).toEqual([]);
  expect(Number.isFinite(roll.height) && Number.isFinite(roll.width)).toBe(true);
});
