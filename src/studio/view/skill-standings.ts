// Where each skill of a course stands: its levels by day, how well it is likely remembered today, and when it is due.

import type { SkillStandingView } from '#contract';
import type { PlainDate } from '#core';
import {
  type CourseInput,
  dueDate,
  recallOn,
  rememberSkill,
  type Sighting,
  type Skill,
  type SkillId,
} from '#planning';
import type { CourseRecords } from '../course/course-records.ts';
import type { CourseActivities } from './course-activity.ts';
import { latestLevels } from './latest-level.ts';

/** Skills of the course's units and any that was observed, in the order of the map. */
export function listStandings(
  records: CourseRecords,
  input: CourseInput,
  activities: CourseActivities,
  skills: readonly Skill[],
): readonly SkillStandingView[] {
  const involved = new Set<SkillId>([
    ...records.units.flatMap((u) => u.document.skills),
    ...activities.all.flatMap((a) => a.activity.develops),
    ...records.observations.map((o) => o.skill),
  ]);
  const levels = latestLevels(records.observations);
  const sightings = listSightings(input, activities);
  return skills
    .filter((s) => involved.has(s.id))
    .map((skill) => {
      const card = rememberSkill(sightings.get(skill.id) ?? []);
      return {
        skill: skill.id,
        title: skill.title,
        area: skill.area,
        ongoing: skill.ongoing,
        level: levels.get(skill.id) ?? null,
        history: records.observations
          .filter((o) => o.skill === skill.id)
          .map(({ id, lesson, date, level, note, take }) => ({
            observation: id,
            lesson,
            date,
            level,
            note,
            take,
          })),
        recall: card === null ? null : recallOn(card, input.today),
        due: card === null ? null : dueDate(card, input.settings.retention),
      };
    });
}

/** Every day on which a skill was met: a level, a revisit, work on it, and the recap of the lesson after. */
function listSightings(
  input: CourseInput,
  activities: CourseActivities,
): ReadonlyMap<SkillId, readonly Sighting[]> {
  const bySkill = new Map<SkillId, Sighting[]>();
  const see = (skill: SkillId, date: PlainDate, level: Sighting['level']) => {
    const list = bySkill.get(skill);
    if (list === undefined) bySkill.set(skill, [{ date, level }]);
    else list.push({ date, level });
  };
  const develops = new Map(
    activities.all.map((a) => [`${a.unit.id} ${a.activity.key}`, a.activity.develops]),
  );
  let lastWorked: readonly SkillId[] = [];
  for (const lesson of input.taught) {
    const worked = lesson.work.flatMap((w) => develops.get(`${w.courseUnit} ${w.activity}`) ?? []);
    const recapped = input.settings.recap > 0 ? lastWorked : [];
    for (const skill of new Set([...lesson.revisited, ...worked, ...recapped])) see(skill, lesson.date, null);
    lastWorked = worked;
  }
  for (const { skill, date, level } of input.observations) see(skill, date, level);
  return bySkill;
}
