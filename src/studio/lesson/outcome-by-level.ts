// What the levels recorded in a lesson say of a piece of its work: the wanted level reached means move on (product's
// word), below it means carry on.

import type { Level, SkillId } from '#planning';
import type { CourseRecords } from '../course/course-records.ts';
import type { LessonId } from '../record/records.ts';

/** Where no unit of the course checks a skill, one moves on at "with help". */
const usualWanted: Level = 2;

/** null while not every skill of the work has a level here, and none is below what is wanted. */
export function outcomeByLevel(
  records: CourseRecords,
  lesson: LessonId,
  develops: readonly SkillId[],
): 'finished' | 'partly' | null {
  const wanted = (skill: SkillId): Level =>
    records.units.flatMap((u) => u.document.checks).find((c) => c.skill === skill)?.level ?? usualWanted;
  const here = develops.map((skill) => ({
    skill,
    levels: records.observations.filter((o) => o.lesson === lesson && o.skill === skill).map((o) => o.level),
  }));
  if (here.some(({ skill, levels }) => levels.some((level) => level < wanted(skill)))) return 'partly';
  return here.length > 0 && here.every(({ levels }) => levels.length > 0) ? 'finished' : null;
}
