// The activities of a course as one list: each fitted to the student's stage and age, in teaching order, with the skills
// that it is really for.

import type { PlainDate } from '#core';
import type { Area, SkillId } from '../skill/skill.ts';
import { applyVariant, variantFits } from '../unit/apply-variant.ts';
import type { Activity } from '../unit/unit.ts';
import type { CourseInput, CourseUnitInput } from './course-input.ts';

export interface CourseActivity {
  /** `<course unit>/<activity>`; its id in the planning problem. */
  readonly id: string;
  readonly courseUnit: string;
  readonly unit: CourseUnitInput;
  readonly strand: string;
  readonly area: Area;
  readonly kind: 'core' | 'ext';
  /** As the student meets it: the variant is applied. */
  readonly activity: Activity;
  readonly isVariant: boolean;
  /** Skills it develops that take time of their own: those reinforced in every lesson are left out. */
  readonly develops: readonly SkillId[];
  /** Place in the course's listed order. */
  readonly listed: number;
}

export const activityId = (courseUnit: string, activity: string): string => `${courseUnit}/${activity}`;

/** Every activity and extension of the course, units in the order wanted, core before extensions within each. */
export function listCourseActivities(
  input: CourseInput,
  isOngoing: (skill: SkillId) => boolean,
): readonly CourseActivity[] {
  const list: CourseActivity[] = [];
  const add = (unit: CourseUnitInput, kind: 'core' | 'ext', original: Activity) => {
    const student = { stage: input.stage, age: input.age };
    const activity = applyVariant(original, student);
    list.push({
      id: activityId(unit.id, activity.key),
      courseUnit: unit.id,
      unit,
      strand: unit.strand,
      area: unit.document.area,
      kind,
      activity,
      isVariant: original.variants.some((variant) => variantFits(variant, student)),
      develops: activity.develops.filter((skill) => !isOngoing(skill)),
      listed: list.length,
    });
  };
  for (const unit of input.units) {
    for (const activity of unit.document.activities) add(unit, 'core', activity);
    for (const extension of unit.document.extensions) add(unit, 'ext', extension);
  }
  return list;
}

/** Skills reinforced throughout, of all units on the course, in the order first named. */
export function ongoingSkills(
  input: CourseInput,
  isOngoing: (skill: SkillId) => boolean,
): readonly SkillId[] {
  return [...new Set(input.units.flatMap((unit) => unit.document.skills.filter(isOngoing)))];
}

/** The day that ends the time for a unit: its own last day or its strand's deadline to come, whichever is earlier. */
export function lastDayOf(input: CourseInput, unit: CourseUnitInput): PlainDate | null {
  const deadline = input.strands.find((strand) => strand.id === unit.strand)?.deadline ?? null;
  const days = [unit.notAfter, deadline !== null && deadline > input.today ? deadline : null];
  return days.filter((day) => day !== null).sort()[0] ?? null;
}
