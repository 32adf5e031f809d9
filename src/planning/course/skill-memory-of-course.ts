// The memory cards of a student's skills, from everything in the log that brought a skill back to mind.

import { type PlainDate, present } from '#core';
import type { MemoryCard } from '../review/memory-card.ts';
import { rememberSkill, type Sighting } from '../review/skill-memory.ts';
import type { Level, SkillId } from '../skill/skill.ts';
import { activityId, type CourseActivity } from './course-activity.ts';
import type { CourseInput } from './course-input.ts';
import type { SkillStanding } from './skill-standing.ts';

export interface SkillMemory {
  /** The card as of today; null when no level of the skill was ever recorded. */
  cardOf(skill: SkillId): MemoryCard | null;
  /** The level at which it was last seen. */
  levelOf(skill: SkillId): Level | null;
  /** Whether the next lesson's recap will bring the skill back: it was worked on in the last lesson. */
  isInNextRecap(skill: SkillId): boolean;
  /** Skills with a card. */
  readonly skills: readonly SkillId[];
}

/**
 * Reads the memory of every skill. A skill is seen on a day when a level was recorded, when it was revisited, when it
 * was worked on, and in the recap that opens the lesson after one in which it was worked on. A skill without any level
 * whose activity was finished was moved on from: it counts as seen at the wanted level. One set aside without any level
 * counts as introduced.
 */
export function readSkillMemory(
  input: CourseInput,
  activitiesById: ReadonlyMap<string, CourseActivity>,
  standing: SkillStanding,
): SkillMemory {
  const sightingsBySkill = new Map<SkillId, Sighting[]>();
  const see = (skill: SkillId, sighting: Sighting) => {
    const sightings = sightingsBySkill.get(skill);
    if (sightings) sightings.push(sighting);
    else sightingsBySkill.set(skill, [sighting]);
  };
  const assumed = new Map<SkillId, Level>();
  const assume = (skill: SkillId, date: PlainDate, level: Level) => {
    assumed.set(skill, level);
    see(skill, { date, level });
  };
  const skillsWorked = (at: number): ReadonlySet<SkillId> =>
    new Set(
      (input.taught[at]?.work ?? []).flatMap(
        (work) => activitiesById.get(activityId(work.courseUnit, work.activity))?.develops ?? [],
      ),
    );
  input.taught.forEach((lesson, at) => {
    const seen = new Set<SkillId>([...lesson.revisited, ...skillsWorked(at)]);
    if (input.settings.recap > 0 && at > 0) for (const skill of skillsWorked(at - 1)) seen.add(skill);
    for (const skill of seen) see(skill, { date: lesson.date, level: null });
  });
  for (const { date, work } of input.taught)
    for (const { courseUnit, activity, outcome } of work)
      if (outcome === 'finished')
        for (const skill of activitiesById.get(activityId(courseUnit, activity))?.develops ?? [])
          if (standing.levelOf(skill) === null) assume(skill, date, standing.wantedLevel(skill));
  for (const { skill, date, level } of input.observations) see(skill, { date, level });
  for (const { courseUnit, activity, since } of input.setAside)
    for (const skill of activitiesById.get(activityId(courseUnit, activity))?.develops ?? [])
      if (standing.levelOf(skill) === null && !assumed.has(skill)) assume(skill, since, 1);

  const cards = new Map<SkillId, MemoryCard>();
  for (const [skill, sightings] of sightingsBySkill) {
    const card = rememberSkill(sightings);
    if (card !== null) cards.set(skill, card);
  }
  const inNextRecap = input.settings.recap > 0 ? skillsWorked(input.taught.length - 1) : new Set<SkillId>();
  return {
    cardOf: (skill) => cards.get(skill) ?? null,
    levelOf: (skill) => standing.levelOf(skill) ?? assumed.get(skill) ?? null,
    isInNextRecap: (skill) => inNextRecap.has(skill),
    skills: [...cards.keys()].sort(),
  };
}

/** The first lesson on or after a day, as an index; the number of lessons when there is none. */
export function firstLessonOn(lessons: readonly { readonly date: PlainDate }[], day: PlainDate): number {
  const at = lessons.findIndex((lesson) => lesson.date >= day);
  return at < 0 ? lessons.length : at;
}

/** The last lesson before a day, as an index; −1 when there is none. */
export function lastLessonBefore(lessons: readonly { readonly date: PlainDate }[], day: PlainDate): number {
  for (let at = lessons.length - 1; at >= 0; at--)
    if (present(lessons[at], 'a lesson in range').date < day) return at;
  return -1;
}
