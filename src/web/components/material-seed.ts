// Which of all sheets a recipe could make a student gets: the same in every lesson of the activity.

import type { LessonSegmentView, LessonView, MaterialView } from '#contract';
import { hashText } from './hash-text.ts';

/** A material of an activity of a unit as it was given: names it within a sheet. */
export const materialId = ({ courseUnit, activity }: LessonSegmentView, key: string): string =>
  `${courseUnit} ${activity} ${key}`;

/** The seed a student's sheet is made with: the material's, or one of their own. */
export function seedOf(
  lesson: Pick<LessonView, 'course'>,
  segment: LessonSegmentView,
  material: MaterialView,
): number {
  return material.seed ?? hashText(`${lesson.course} ${materialId(segment, material.key)}`);
}
