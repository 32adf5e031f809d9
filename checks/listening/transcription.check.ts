// Source: mir_eval 0.8.2 (Raffel et al. 2014, ISMIR), worked example computed with it; see README.md.
import { expect, test } from 'vitest';
import { rawPitch, scoreNotes } from '../../bench/listening/match-notes.ts';
import { listeningTable } from './reference.ts';

const { example } = listeningTable.transcription;

test.each([
  ['with_offsets', { offsets: true }],
  ['without_offsets', { offsets: false }],
  ['onsets_only', { offsets: false, pitch: false }],
] as const)('the worked example scores as in mir_eval: %s', (name, rule) => {
  const ours = scoreNotes(example.ref, example.est, rule);
  const theirs = example[name];
  expect(ours.precision).toBeCloseTo(theirs.precision, 6);
  expect(ours.recall).toBeCloseTo(theirs.recall, 6);
  expect(ours.f1).toBeCloseTo(theirs.f1, 5);
  if (theirs.avg_overlap !== undefined) expect(ours.overlap).toBeCloseTo(theirs.avg_overlap, 2);
});

// mir_eval.transcription.match_notes: as many pairs as can be, not the nearest first
test('one-to-one matching is the largest there is', () => {
  const at = (onset: number) => ({ onset, offset: onset + 0.2, hz: 440 });
  expect(scoreNotes([at(1), at(1.05)], [at(1.04), at(1.09)], { offsets: false }).pairs).toHaveLength(2);
  expect(scoreNotes([at(1), at(1.04)], [at(1.045), at(0.99)], { offsets: false }).pairs).toHaveLength(2);
});

// mir_eval.melody.raw_pitch_accuracy: 50 cents, over the frames that have a true pitch
test('raw pitch counts frames within 50 cents', () => {
  const heard = [60.4, 60.6, null, 62];
  const { hits, frames } = rawPitch([60, 60, 60, null], 0.01, (s) => heard[Math.round(s / 0.01)] ?? null);
  expect([hits, frames]).toEqual([1, 3]);
});
