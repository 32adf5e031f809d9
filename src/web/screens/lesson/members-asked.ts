import type { LessonView, MemberView } from '#contract';

/**
 * Whom a lesson asks of, whether they were there: the members of a group of several, and who was noted as not there and
 * is in the group no more. None for a student alone.
 */
export function membersAsked({
  learner,
  absent,
}: Pick<LessonView, 'learner' | 'absent'>): readonly MemberView[] {
  if (learner.group === null) return [];
  const known = new Set(learner.members.map(({ student }) => student));
  const all = [...learner.members, ...absent.filter(({ student }) => !known.has(student))];
  return all.length < 2 ? [] : all;
}
