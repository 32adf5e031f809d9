// Sources: swing as shares of the beat, r / (1 + r); Longuet-Higgins & Lee 1984 for syncopation; Shannon 1948 for entropy;
// see README.md.
import { expect, test } from 'vitest';
import {
  alignTake,
  type Evidence,
  gatherEvidence,
  type HeardNote,
  parseTakeContext,
  type TakeContext,
} from '#listening';
import { listeningTable } from './reference.ts';

function contextOf(fields: object): TakeContext {
  const context = parseTakeContext(fields);
  if (!context.ok) throw new Error(context.error.message);
  return context.value;
}

function noteAt(onset: number, offset: number, midi = 67): HeardNote {
  return { onset, offset, midi, cents: 0, db: -20, confidence: 1 };
}

/** Evidence from notes alone; the rows that listen inside the sound have none. */
function evidenceOf(notes: readonly HeardNote[], context: TakeContext): Evidence {
  const ends = notes.map((note) => note.offset);
  const alignment = alignTake(notes, context, ends);
  const silence = { samples: new Float32Array(0), sampleRate: 44_100, f0: { hop: 0.01, midi: [] } };
  return gatherEvidence({ ...silence, context, notes, ends, alignment }, []);
}

// beyond 3:1 the second quaver is written as a semiquaver
const usual = listeningTable.swing_ratio.filter((row) => row.percent_first < 75);

test.each(usual)('quavers at $ratio are heard to swing so', ({ ratio, percent_first }) => {
  const [long = 1, short = 1] = ratio.split(':').map(Number);
  const beat = 0.5;
  const notes = Array.from({ length: 32 }, (_, i) => {
    const start = 1 + Math.floor(i / 2) * beat + (i % 2) * beat * (percent_first / 100);
    return noteAt(start, start + 0.18, 60 + (i % 5));
  });
  const context = contextOf({ tempo: 120, metre: [4, 4], offsetS: 1 });
  expect(Math.abs((alignTake(notes, context)?.grid.swing ?? 0) - percent_first / 100)).toBeLessThan(0.02);
  const { timing } = evidenceOf(notes, context);
  const swing = timing.heard ? timing.figures.swing?.value : undefined;
  expect(swing).toBeCloseTo(long / short, 1);
});

// the published examples in quavers of 4/4, four times over so that a beat can be found
const inFour = listeningTable.syncopation_lhl.examples.filter((row) => row.meter.join() === '2,2,2');

test.each(inFour)('a played $iois has the published syncopation $sum', ({ iois, sum }) => {
  const quaver = 0.25;
  const notes: HeardNote[] = [];
  for (let bar = 0; bar < 4; bar++) {
    let at = bar * 8;
    for (const gap of iois) {
      const start = 1 + at * quaver;
      notes.push(noteAt(start, start + gap * quaver * 0.9, 60 + notes.length));
      at += gap;
    }
  }
  const { syncopation } = evidenceOf(notes, contextOf({ tempo: 120, metre: [4, 4], swing: 0.5, offsetS: 1 }));
  expect(syncopation.heard && syncopation.figures.perBar?.value).toBeCloseTo(sum, 6);
});

test('two values in equal number have one bit of variety', () => {
  const notes: HeardNote[] = [];
  for (let beat = 0, at = 0.5; beat < 24; beat++) {
    const lengths = beat % 3 === 0 ? [0.3, 0.3] : beat % 3 === 1 ? [0.6] : [0.6];
    for (const length of lengths) {
      notes.push(noteAt(at, at + length * 0.9, 60 + (beat % 7)));
      at += length;
    }
  }
  const { noteValues } = evidenceOf(notes, contextOf({ tempo: 100, offsetS: 0.5 }));
  expect(noteValues.heard && noteValues.figures.kinds?.value).toBe(2);
  expect(noteValues.heard && noteValues.figures.entropy?.value).toBeCloseTo(1, 6);
});
