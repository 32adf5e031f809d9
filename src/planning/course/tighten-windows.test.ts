import { expect, test } from 'vitest';
import {
  exampleActivity as act,
  exampleCourse,
  exampleUnit,
  onCourse,
  exampleSkill as skill,
  weeklyLessons,
} from './example-course.contract.ts';
import { planCourse } from './plan-course.ts';

test('[F18] six activities of which two do not fit whole into a lesson fill four lessons, not six', () => {
  const names = ['a', 'b', 'c', 'd', 'e', 'f'];
  const unit = exampleUnit(
    'u',
    names.map((name) => act(name, 18, [name])),
  );
  const { lessons } = planCourse(
    exampleCourse({
      skills: names.map((name) => skill(name)),
      units: [onCourse('u', unit)],
      lessons: weeklyLessons(8, 45),
    }),
    null,
  );
  const minutes = lessons.map(({ segments }) =>
    segments.filter(({ kind }) => kind === 'work').reduce((sum, { planned }) => sum + planned, 0),
  );
  expect(minutes.filter((sum) => sum > 0)).toHaveLength(4);
  expect(minutes.slice(0, 4).reduce((sum, one) => sum + one, 0)).toBe(6 * 18);
});
