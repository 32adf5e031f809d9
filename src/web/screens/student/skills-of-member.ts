import type { CourseView, SkillStandingView } from '#contract';
import type { Id } from '#core';

type Taken = Pick<CourseView, 'skills' | 'bars' | 'learner'>;

/** The lessons of a group's course in which this member was not there. */
export function lessonsWithout(
  course: Pick<CourseView, 'bars'>,
  member: Id<'student'>,
): ReadonlyMap<Id<'lesson'>, CourseView['bars'][number] & { readonly kind: 'lesson' }> {
  return new Map(
    course.bars.flatMap((bar) =>
      bar.kind === 'lesson' && bar.absent.some(({ student }) => student === member)
        ? [[bar.lesson, bar] as const]
        : [],
    ),
  );
}

/** A course's skills as one member was seen: without what the group was seen to do while that member was not there. */
export function skillsOfMember(course: Taken, member: Id<'student'>): readonly SkillStandingView[] {
  const without = lessonsWithout(course, member);
  if (course.learner.group === null || without.size === 0) return course.skills;
  return course.skills.map((skill) => {
    const history = skill.history.filter(({ lesson }) => lesson === null || !without.has(lesson));
    if (history.length === skill.history.length) return skill;
    // History is in the order of days; with its newest gone, what stood before stands.
    const isNewestGone = skill.history.at(-1) !== history.at(-1);
    return { ...skill, history, level: isNewestGone ? (history.at(-1)?.level ?? null) : skill.level };
  });
}
