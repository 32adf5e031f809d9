// How well a skill is likely to be remembered on a day, and when it should come back. The memory model is FSRS-6 with
// its published default parameters, through ts-fsrs: no learning steps, no fuzz, whole days, so a plan is reproducible.
// FSRS: github.com/open-spaced-repetition, Ye, Su & Cao, KDD 2022. See docs/decisions/0004-revisits-fsrs.md.

import { FSRSAlgorithm, type FSRSState } from 'ts-fsrs';
import { addDays, daysBetween, type PlainDate } from '#core';
import type { Level } from '../skill/skill.ts';

/** FSRS's four answers: 1 again · 2 hard · 3 good · 4 easy. */
export type Rating = 1 | 2 | 3 | 4;

/** What is known of the memory of one skill. */
export interface MemoryCard {
  /** Days after which recall has fallen to 90 %. */
  readonly stability: number;
  /** 1 (easy) to 10. */
  readonly difficulty: number;
  readonly lastSeen: PlainDate;
}

const model = new FSRSAlgorithm({
  enable_fuzz: false,
  // Two sightings on one day follow FSRS's same-day rule; the steps of minutes that usually go with it are left out.
  enable_short_term: true,
  learning_steps: [],
  relearning_steps: [],
});

/** Level 0 and 1 count as *again*, 2 *hard*, 3 *good*, 4 *easy*. */
export function levelToRating(level: Level): Rating {
  return level <= 1 ? 1 : level === 2 ? 2 : level === 3 ? 3 : 4;
}

/**
 * The card after the skill is seen on a day, from the card before (null: never seen). A day before the card's own counts
 * as that day.
 *
 * `seeSkill(null, '2026-01-05', 3)` → stability 2.3065 days, difficulty 2.1181
 */
export function seeSkill(card: MemoryCard | null, on: PlainDate, rating: Rating): MemoryCard {
  const state: FSRSState | null =
    card === null ? null : { stability: card.stability, difficulty: card.difficulty };
  const days = card === null ? 0 : Math.max(0, daysBetween(card.lastSeen, on));
  const next = model.next_state(state, days, rating);
  return {
    stability: next.stability,
    difficulty: next.difficulty,
    lastSeen: card === null || on > card.lastSeen ? on : card.lastSeen,
  };
}

/** Predicted chance, 0..1, that the skill is still there on a day; 1 on the day it was last seen. */
export function recallOn(card: MemoryCard, on: PlainDate): number {
  return model.forgetting_curve(Math.max(0, daysBetween(card.lastSeen, on)), card.stability);
}

/** Days after the last sighting until recall has fallen to `retention` (in (0, 1)); not rounded. */
export function daysUntilRecall(card: MemoryCard, retention: number): number {
  return model.calculate_interval_modifier(retention) * card.stability;
}

/** The first day on which predicted recall is below `retention`, at most a hundred years ahead. */
export function dueDate(card: MemoryCard, retention: number): PlainDate {
  return addDays(card.lastSeen, Math.min(36_500, Math.floor(daysUntilRecall(card, retention)) + 1));
}
