// Where the student stands: the latest level of each skill, and whether a skill can be rested on.

import { type PlainDate, stages } from '#core';
import type { Level, Skill, SkillId } from '../skill/skill.ts';
import type { CourseInput } from './course-input.ts';

export interface SkillStanding {
  /** The latest level recorded, or null when none was. */
  levelOf(skill: SkillId): Level | null;
  /** The day of that level, or null. */
  seenOn(skill: SkillId): PlainDate | null;
  skillOf(skill: SkillId): Skill | null;
  /** Reinforced in every lesson. */
  isOngoing(skill: SkillId): boolean;
  /** The level at which the course's own units count the skill as learnt; *with help* where none checks it. */
  wantedLevel(skill: SkillId): Level;
  /** Whether work that rests on the skill may start. */
  has(skill: SkillId): boolean;
}

const withHelp: Level = 2;

/** Reads the standing of every skill out of the course's observations. */
export function readStanding(input: CourseInput): SkillStanding {
  const skillById = new Map(input.skills.map((skill) => [skill.id, skill]));
  const latest = new Map<SkillId, { readonly level: Level; readonly date: PlainDate }>();
  for (const { skill, level, date } of input.observations) {
    const known = latest.get(skill);
    if (known === undefined || date >= known.date) latest.set(skill, { level, date });
  }
  const wanted = new Map<SkillId, Level>();
  for (const unit of input.units)
    for (const check of unit.document.checks)
      if (!wanted.has(check.skill)) wanted.set(check.skill, check.level);

  const levelOf = (skill: SkillId) => latest.get(skill)?.level ?? null;
  const wantedLevel = (skill: SkillId) => wanted.get(skill) ?? withHelp;
  const isOngoing = (skill: SkillId) => skillById.get(skill)?.ongoing ?? false;
  return {
    levelOf,
    seenOn: (skill) => latest.get(skill)?.date ?? null,
    skillOf: (skill) => skillById.get(skill) ?? null,
    isOngoing,
    wantedLevel,
    has(skill) {
      if (isOngoing(skill)) return true;
      const level = levelOf(skill);
      if (level !== null) return level >= wantedLevel(skill);
      const known = skillById.get(skill);
      // No teacher records what an intermediate player learnt as a beginner: it is taken as there until seen otherwise.
      return known === undefined || stages.indexOf(known.stage) < stages.indexOf(input.stage);
    },
  };
}
