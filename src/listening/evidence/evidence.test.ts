import { expect, test } from 'vitest';
import { alignTake } from '../alignment/align-take.ts';
import { judgeCheck } from '../check/judge-check.ts';
import { parseTakeContext } from '../context/take-context.ts';
import type { HeardNote } from '../notes/heard-note.ts';
import { compareTakes } from './compare-takes.ts';
import type { EvidenceInput } from './evidence-input.ts';
import { finePitch } from './fine-pitch.ts';
import { type Evidence, evidenceNames, gatherEvidence } from './gather-evidence.ts';
import { harmonicShare } from './harmonicity.ts';
import { countLengths } from './phrases.ts';
import { findVibrato } from './vibrato.ts';

const rate = 22_050;

interface Told {
  readonly at: number;
  readonly length: number;
  readonly midi: number;
  readonly cents?: number;
  readonly db?: number;
  readonly late?: number;
}

/** Notes at beats of 100 a minute over C major and a chart, as if heard without error. */
function inputOf(line: readonly Told[], fields: object = {}): EvidenceInput {
  const context = parseTakeContext({
    tempo: 100,
    offsetS: 0,
    scale: { tonic: 'C', name: 'major' },
    chart: 'C | G7 | C | G7',
    ...fields,
  });
  if (!context.ok) throw new Error(context.error.message);
  const notes = line.map((n): HeardNote => {
    const onset = n.at * 0.6 + (n.late ?? 0);
    return {
      onset,
      offset: onset + n.length * 0.6 * 0.9,
      midi: n.midi,
      cents: n.cents ?? 0,
      db: n.db ?? -20,
      confidence: 1,
    };
  });
  const ends = notes.map((n) => n.offset);
  const alignment = alignTake(notes, context.value, ends);
  return {
    samples: new Float32Array(0),
    sampleRate: rate,
    context: context.value,
    notes,
    ends,
    f0: { hop: 0.01, midi: [] },
    alignment,
  };
}

function evidenceOf(line: readonly Told[], fields: object = {}): Evidence {
  return gatherEvidence(inputOf(line, fields), []);
}

/** Two phrases, of four beats and of two, with a bar's rest made up of what is left. */
const twoPhrases: readonly Told[] = [
  { at: 0, length: 1, midi: 60 },
  { at: 1, length: 1, midi: 62 },
  { at: 2, length: 2, midi: 64 },
  { at: 6, length: 0.5, midi: 65 },
  { at: 6.5, length: 0.5, midi: 67 },
  { at: 7, length: 1, midi: 64 },
  { at: 12, length: 1, midi: 60 },
  { at: 13, length: 1, midi: 59 },
  { at: 14, length: 2, midi: 60 },
];

test('phrases end at rests and are measured in bars', () => {
  const { phrases } = evidenceOf(twoPhrases);
  if (!phrases.heard) throw new Error(phrases.reason);
  expect(phrases.details.phrases.map((p) => p.bars)).toEqual([1, 0.5, 1]);
  expect(phrases.details.phrases.map((p) => p.start)).toEqual([
    { bar: 1, beat: 1 },
    { bar: 2, beat: 3 },
    { bar: 4, beat: 1 },
  ]);
  expect(phrases.details.phrases.map((p) => p.restBeats)).toEqual([2, 4, null]);
  expect(phrases.figures.count?.value).toBe(3);
  expect(phrases.figures.differentLengths?.value).toBe(2);
  expect(phrases.passages[1]).toMatchObject({ bar: 2, shows: 'a phrase of 0.5 bars' });
});

test.each([
  [[1, 1, 1], 1],
  [[1, 1.25, 2, 4], 3],
  [[], 0],
])('%j has %d lengths', (lengths, count) => expect(countLengths(lengths)).toBe(count));

test('note values, their variety and the longest run of one', () => {
  const { noteValues } = evidenceOf(twoPhrases);
  if (!noteValues.heard) throw new Error(noteValues.reason);
  expect(noteValues.details.values.map((v) => [v.name, v.count])).toEqual([['crotchet', 5], ['minim', 2], ['quaver', 2]]); // biome-ignore format: one line
  expect(noteValues.figures.longestRun?.value).toBe(3);
});

test('notes outside the scale are counted by time, and those that move on by step', () => {
  const line = [60, 62, 64, 61, 62, 66, 60, 67].map((midi, i) => ({ at: i, length: 1, midi }));
  const { notesChosen } = evidenceOf(line);
  if (!notesChosen.heard) throw new Error(notesChosen.reason);
  expect(notesChosen.figures.inScale?.value).toBeCloseTo(6 / 8, 6);
  expect(notesChosen.figures.outsideResolved?.value).toBeCloseTo(1 / 2, 6);
  // strong beats: C over C, E over C, D over G7, C over G7
  expect(notesChosen.figures.chordTonesOnStrongBeats?.value).toBeCloseTo(3 / 4, 6);
});

test('timing tells mean and spread against a given grid', () => {
  const late = [0.03, 0.01, 0.02, 0.03, 0.01, 0.02, 0.03, 0.01, 0.02, 0.03, 0.01, 0.02];
  const line = late.map((stray, i) => ({ at: i, length: 1, midi: 60 + (i % 3), late: stray }));
  const { timing } = evidenceOf(line);
  if (!timing.heard) throw new Error(timing.reason);
  expect(timing.figures.late?.value).toBeCloseTo(20, 0);
  expect(timing.figures.lateShareOfBeat?.value).toBeCloseTo(20 / 600, 2);
  expect(timing.figures.drift).toBeUndefined();
});

test('without a given grid nobody can be called late', () => {
  const line = Array.from({ length: 16 }, (_, i) => ({ at: i, length: 1, midi: 60 + (i % 5), late: 0.03 }));
  const { timing } = evidenceOf(line, { offsetS: null });
  expect(timing.heard && timing.figures.late).toBeUndefined();
  expect(timing.heard && timing.figures.spread?.value).toBeLessThan(5);
});

test('tuning is told apart from straying, and registers from each other', () => {
  const line = Array.from({ length: 18 }, (_, i) => {
    const isHigh = i >= 12;
    return { at: i, length: 1, midi: isHigh ? 84 - (i % 2) : 60 + (i % 3), cents: isHigh ? 22 : 10 };
  });
  const { intonation } = evidenceOf(line);
  if (!intonation.heard) throw new Error(intonation.reason);
  expect(intonation.figures.tuning?.value).toBeGreaterThan(9);
  expect((intonation.figures.high?.value ?? 0) - (intonation.figures.low?.value ?? 0)).toBeCloseTo(12, 0);
});

test('dynamics tell the range and the shape', () => {
  const line = Array.from({ length: 16 }, (_, i) => ({ at: i, length: 1, midi: 60, db: -40 + i }));
  const { dynamics } = evidenceOf(line);
  if (!dynamics.heard) throw new Error(dynamics.reason);
  expect(dynamics.figures.range?.value).toBeCloseTo(12, 0);
  expect(dynamics.figures.slope?.value).toBeGreaterThan(10);
  expect(dynamics.details.shape[0]).toBeLessThan(dynamics.details.shape[7] ?? 0);
});

test('a cell that comes back a step higher is a motif, a scale is none', () => {
  const cell = (at: number, from: readonly number[]): Told[] => [
    { at, length: 0.5, midi: from[0] ?? 60 },
    { at: at + 0.5, length: 0.5, midi: from[1] ?? 60 },
    { at: at + 1, length: 1, midi: from[2] ?? 60 },
    { at: at + 2, length: 2, midi: from[3] ?? 60 },
  ];
  const { motifs } = evidenceOf([
    ...cell(0, [60, 62, 64, 60]),
    ...cell(4, [62, 64, 65, 62]),
    ...cell(8, [64, 65, 67, 64]),
  ]);
  if (!motifs.heard) throw new Error(motifs.reason);
  expect(motifs.details.motifs[0]?.places.map((p) => p.semitones)).toEqual([0, 2, 4]);
  const scale = Array.from({ length: 15 }, (_, i) => ({
    at: i * 0.5,
    length: 0.5,
    midi: 48 + ([0, 2, 4, 5, 7, 9, 11][i % 7] ?? 0) + 12 * Math.floor(i / 7),
  }));
  const plain = evidenceOf(scale).motifs;
  expect(plain.heard && plain.figures.motifs?.value).toBe(0);
});

test('a rhythm that fits no grid is not told', () => {
  const line = Array.from({ length: 24 }, (_, i) => ({
    at: i,
    length: 0.5,
    midi: 60,
    late: ((i * 7919) % 13) * 0.02 - 0.12,
  }));
  const { phrases, syncopation, dynamics } = evidenceOf(line);
  expect(phrases.heard || syncopation.heard).toBe(false);
  expect(dynamics.heard).toBe(true);
});

test('what stands in the way of hearing silences the rows it touches', () => {
  const input = inputOf(twoPhrases);
  const two = gatherEvidence(input, [{ kind: 'MoreThanOneVoice', share: 0.6 }]);
  expect(evidenceNames.every((name) => !two[name].heard)).toBe(true);
  const clipped = gatherEvidence(input, [{ kind: 'Clipped', share: 0.2 }]);
  expect([clipped.dynamics.heard, clipped.tone.heard, clipped.phrases.heard]).toEqual([false, false, true]);
});

test('two takes: only a difference beyond the doubt is one', () => {
  const played = (spread: number) =>
    evidenceOf(
      Array.from({ length: 40 }, (_, i) => ({
        at: i,
        length: 1,
        midi: 60 + (i % 5),
        late: i % 2 === 0 ? spread : -spread,
      })),
    );
  const spreadOf = (a: Evidence, b: Evidence) =>
    compareTakes(a, b).find((c) => c.row === 'timing' && c.name === 'spread');
  expect(spreadOf(played(0.03), played(0.008))).toMatchObject({ isLarger: true });
  expect(spreadOf(played(0.03), played(0.029))).toMatchObject({ isLarger: false });
  expect(spreadOf(played(0.03), evidenceOf(twoPhrases.slice(0, 3)))).toMatchObject({
    after: null,
    isLarger: null,
  });
});

test('checks are answered from the figures and their doubt', () => {
  const evidence = evidenceOf(twoPhrases);
  expect(judgeCheck({ kind: 'phraseLengths', atLeast: 2 }, evidence)).toMatchObject({ answer: 'reached' });
  expect(judgeCheck({ kind: 'phraseLengths', atLeast: 3 }, evidence)).toMatchObject({ answer: 'not yet' });
  expect(
    judgeCheck({ kind: 'mostlyValue', value: 'crotchet', share: 0.3, others: 1 }, evidence),
  ).toMatchObject({ answer: 'reached' });
  expect(
    judgeCheck({ kind: 'mostlyValue', value: 'crotchet', share: 0.3, others: 4 }, evidence),
  ).toMatchObject({ answer: 'not yet' });
  expect(judgeCheck({ kind: 'longNotes', withinCents: 15, seconds: 4, times: 1 }, evidence)).toMatchObject({
    answer: 'could not hear',
  });
  expect(judgeCheck({ kind: 'swing', from: 1.3, to: 2 }, evidence)).toMatchObject({
    answer: 'could not hear',
  });
});

test('vibrato is told apart from drift and from a steady tone', () => {
  const wave = (f: (t: number) => number) => Array.from({ length: 100 }, (_, i) => f(i * 0.01));
  const found = findVibrato(
    wave((t) => 25 * Math.sin(2 * Math.PI * 5.5 * t) + 20 * t),
    0.01,
  );
  expect(found.vibrato?.rate).toBeCloseTo(5.5, 1);
  expect(Math.abs((found.vibrato?.extent ?? 0) - 25)).toBeLessThan(2);
  expect(
    findVibrato(
      wave((t) => 40 * t),
      0.01,
    ),
  ).toMatchObject({ vibrato: null });
  expect(
    findVibrato(
      wave((t) => 3 * Math.sin(2 * Math.PI * 6 * t)),
      0.01,
    ).vibrato,
  ).toBeNull();
});

test('pitch near a guess is found to a cent, and the share of tone in noise', () => {
  const hz = 440 * 2 ** (7 / 1200);
  const samples = Float32Array.from(
    { length: rate },
    (_, i) => 0.3 * Math.sin((2 * Math.PI * hz * i) / rate),
  );
  expect(Math.abs((finePitch(samples, rate, 0.5, 69) ?? 0) - 69.07)).toBeLessThan(0.01);
  expect(harmonicShare(samples, 1000, rate / hz)).toBeGreaterThan(0.99);
  expect(finePitch(new Float32Array(rate), rate, 0.5, 69)).toBeNull();
  expect(finePitch(samples, rate, 5, 69)).toBeNull();
});
