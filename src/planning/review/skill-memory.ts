// From what was recorded of one skill, in lessons, to its memory card.

import type { PlainDate } from '#core';
import type { Level } from '../skill/skill.ts';
import { levelToRating, type MemoryCard, seeSkill } from './memory-card.ts';

/** One day on which a skill was met: with the level recorded that day, or null when none was. */
export interface Sighting {
  readonly date: PlainDate;
  readonly level: Level | null;
}

/**
 * The card that follows from the sightings of one skill, in any order; null when no level was ever recorded. Only the
 * last level of a day counts (an earlier one was corrected); a day without a level counts at the level that stood
 * then; days before the first level are not counted.
 */
export function rememberSkill(sightings: readonly Sighting[]): MemoryCard | null {
  const levelByDate = new Map<PlainDate, Level | null>();
  for (const { date, level } of sightings) levelByDate.set(date, level ?? levelByDate.get(date) ?? null);
  const days = [...levelByDate].sort(([a], [b]) => (a < b ? -1 : 1));
  let card: MemoryCard | null = null;
  let standing: Level | null = null;
  for (const [date, level] of days) {
    standing = level ?? standing;
    if (standing !== null) card = seeSkill(card, date, levelToRating(standing));
  }
  return card;
}
