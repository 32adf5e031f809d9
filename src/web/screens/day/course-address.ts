import type { DayLesson } from '#contract';

/** The course score of a lesson's learner. */
export function courseAddress({ learner, course }: Pick<DayLesson, 'learner' | 'course'>): string {
  const student = learner.student ?? learner.members[0]?.student;
  return student ? `/student/${student}?course=${course}` : '/students';
}

/** The same with the choice of a unit to give open. */
export function giveAddress(lesson: Pick<DayLesson, 'learner' | 'course'>): string {
  const address = courseAddress(lesson);
  return address.includes('?') ? `${address}&give` : address;
}
