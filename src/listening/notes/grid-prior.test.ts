import { expect, test } from 'vitest';
import { createSeededRandom } from '#core';
import { leanOnGrid } from './grid-prior.ts';
import type { HeardNote } from './heard-note.ts';

const notesAt = (onsets: readonly number[]): readonly HeardNote[] =>
  onsets.map((onset) => ({ onset, offset: onset + 0.2, midi: 60, cents: 0, db: -20, confidence: 1 }));

const crotchets = Array.from({ length: 16 }, (_, i) => 0.5 + 0.6 * i);
const at = (odds: Float32Array | null, seconds: number) => odds?.[Math.round(seconds * 100)] ?? Number.NaN;

test('the beats of a known tempo are likelier than what lies between, and never by more than a factor of two', () => {
  const odds = leanOnGrid(notesAt(crotchets), { tempo: 100, offsetS: 0.5 }, 1200);
  for (const beat of crotchets) expect(at(odds, beat)).toBeGreaterThan(0.2);
  for (const beat of crotchets) expect(at(odds, beat + 0.22)).toBeLessThan(0);
  for (const value of odds ?? []) expect(Math.abs(value)).toBeLessThanOrEqual(Math.log(2.02));
});

test('where the tempo is known but not the place, the playing tells the place', () => {
  const odds = leanOnGrid(notesAt(crotchets.map((t) => t + 0.17)), { tempo: 100 }, 1300);
  for (const beat of crotchets) expect(at(odds, beat + 0.17)).toBeGreaterThan(at(odds, beat + 0.39));
});

test('a player who is late throughout is expected late', () => {
  const odds = leanOnGrid(notesAt(crotchets.map((t) => t + 0.08)), { tempo: 100, offsetS: 0.5 }, 1300);
  for (const beat of crotchets) expect(at(odds, beat + 0.08)).toBeGreaterThan(at(odds, beat));
});

test('nothing is expected without a tempo, of few notes, or of playing that keeps to no grid', () => {
  const random = createSeededRandom(9);
  let t = 0.4;
  const free = Array.from({ length: 40 }, () => {
    t += 0.11 + 0.7 * random.next() ** 2;
    return t;
  });
  expect(leanOnGrid(notesAt(crotchets), {}, 1200)).toBeNull();
  expect(leanOnGrid(notesAt(crotchets.slice(0, 5)), { tempo: 100, offsetS: 0.5 }, 1200)).toBeNull();
  expect(leanOnGrid(notesAt(free), { tempo: 100, offsetS: 0.5 }, 3000)).toBeNull();
});
