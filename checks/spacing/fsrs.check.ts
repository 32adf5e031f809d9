// Source: FSRS-6 as in py-fsrs 6.3.1 (MIT), see README.md. Read through our own wrapper unless said otherwise.

import { readFileSync } from 'node:fs';
import { createEmptyCard, default_w, FSRSVersion, fsrs, type Grade } from 'ts-fsrs';
import { expect, test } from 'vitest';
import { addDays, type PlainDate } from '#core';
import { daysUntilRecall, levelToRating, type MemoryCard, type Rating, recallOn, seeSkill } from '#planning';

interface Reference {
  readonly fsrs: {
    readonly default_parameters: readonly number[];
    readonly ratings: Readonly<Record<string, Rating>>;
    readonly forgetting_curve_S10: readonly { readonly days: number; readonly fsrs6: number }[];
    readonly interval_S10: readonly { readonly desired_retention: number; readonly fsrs6_days: number }[];
    readonly first_rating: readonly {
      readonly rating: string;
      readonly stability: number;
      readonly difficulty: number;
    }[];
    readonly reference_test_1: { readonly ratings: string; readonly interval_days: readonly number[] };
    readonly reference_test_2: {
      readonly ratings: string;
      readonly gaps_days: readonly number[];
      readonly stability: number;
      readonly difficulty: number;
      readonly tolerance: number;
    };
    readonly weekly_lesson_trace: {
      readonly rows: readonly {
        readonly rating: string;
        readonly gap: number;
        readonly R: number | null;
        readonly S: number;
        readonly D: number;
        readonly next_interval: number;
      }[];
    };
  };
}
const file = new URL('./data/fsrs-and-spacing.json', import.meta.url);
const reference: Reference['fsrs'] = (JSON.parse(readFileSync(file, 'utf8')) as Reference).fsrs;
const day = '2026-01-05' as PlainDate;
const tenDays: MemoryCard = { stability: 10, difficulty: 5, lastSeen: day };
const letters: Readonly<Record<string, Rating>> = { A: 1, H: 2, G: 3, E: 4 };
const ratingsOf = (text: string) => text.split(' ').map((letter) => letters[letter] ?? 1);

test('the library is FSRS-6 with the published default parameters', () => {
  expect(FSRSVersion).toMatch(/FSRS-6/);
  expect(default_w).toEqual(reference.default_parameters);
});

test('levels are rated as the reference names its ratings', () => {
  const { again, hard, good, easy } = reference.ratings;
  expect(([0, 1, 2, 3, 4] as const).map(levelToRating)).toEqual([again, again, hard, good, easy]);
});

test('forgetting curve at a stability of ten days', () => {
  for (const { days, fsrs6 } of reference.forgetting_curve_S10)
    expect(recallOn(tenDays, addDays(day, days)), `${days} days`).toBeCloseTo(fsrs6, 5);
});

test('interval for a wanted retention at a stability of ten days', () => {
  // The library rounds its interval factor to eight places.
  for (const { desired_retention, fsrs6_days } of reference.interval_S10)
    expect(daysUntilRecall(tenDays, desired_retention), `${desired_retention}`).toBeCloseTo(fsrs6_days, 5);
});

test('first ratings', () => {
  for (const { rating, stability, difficulty } of reference.first_rating) {
    const card = seeSkill(null, day, reference.ratings[rating] ?? 1);
    expect(card.stability, rating).toBeCloseTo(stability, 5);
    expect(card.difficulty, rating).toBeCloseTo(difficulty, 5);
  }
});

test("the reference library's own memory-state test", () => {
  const { ratings, gaps_days, stability, difficulty, tolerance } = reference.reference_test_2;
  let date = day;
  let card = null as MemoryCard | null;
  ratingsOf(ratings).forEach((rating, at) => {
    date = addDays(date, gaps_days[at] ?? 0);
    card = seeSkill(card, date, rating);
  });
  expect(card).not.toBeNull();
  const { stability: S, difficulty: D } = card as unknown as MemoryCard;
  expect(Math.abs(S - stability)).toBeLessThanOrEqual(tolerance);
  expect(Math.abs(D - difficulty)).toBeLessThanOrEqual(tolerance);
});

test('weekly lessons, row by row', () => {
  let date = day;
  let card = null as MemoryCard | null;
  for (const row of reference.weekly_lesson_trace.rows) {
    date = addDays(date, row.gap);
    if (card !== null && row.R !== null) expect(recallOn(card, date)).toBeCloseTo(row.R, 5);
    card = seeSkill(card, date, reference.ratings[row.rating] ?? 1);
    expect(card.stability).toBeCloseTo(row.S, 4);
    expect(card.difficulty).toBeCloseTo(row.D, 4);
    // The reference schedules whole days at a retention of 90 %, at least one.
    expect(Math.max(1, Math.round(daysUntilRecall(card, 0.9)))).toBe(row.next_interval);
  }
});

test("the reference library's own interval test, asked of ts-fsrs directly: it has learning steps of minutes", () => {
  const scheduler = fsrs({ enable_fuzz: false, learning_steps: ['1m', '10m'], relearning_steps: ['10m'] });
  let card = createEmptyCard(new Date('2022-11-29T12:30:00Z'));
  let now = card.due;
  const intervals = ratingsOf(reference.reference_test_1.ratings).map((rating) => {
    card = scheduler.next(card, now, rating as Grade).card;
    const days = Math.floor((card.due.getTime() - now.getTime()) / 86_400_000);
    now = card.due;
    return days;
  });
  expect(intervals).toEqual(reference.reference_test_1.interval_days);
});
