// A skill is one thing a student can do or understand. Skills rest on earlier skills; together they are the studio's
// skill map, which must stay free of cycles.

import type { Id, Stage } from '#core';

export type SkillId = Id<'skill'>;

/** The six areas of an instrumental lesson that the library is sorted by. */
export const areas = ['technique', 'improvisation', 'rhythm', 'reading', 'ear', 'repertoire'] as const;
export type Area = (typeof areas)[number];

/**
 * What was observed of a skill: 0 not yet · 1 introduced · 2 with help · 3 alone · 4 transfers (a new key, tune or
 * tempo).
 */
export type Level = 0 | 1 | 2 | 3 | 4;

export interface Skill {
  readonly id: SkillId;
  /** As a teacher would say it: "keeps a steady beat while playing long notes". */
  readonly title: string;
  readonly area: Area;
  /** The stage at which it is usually met first. */
  readonly stage: Stage;
  /** What it looks or sounds like when it is there. */
  readonly description: string;
  /** Skills that must be there first. */
  readonly restsOn: readonly SkillId[];
  /** Reinforced in every lesson (tone, posture, time feel) and given no slot of its own. */
  readonly ongoing: boolean;
}
