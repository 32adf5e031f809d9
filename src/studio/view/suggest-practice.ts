// A first draft of the week's practice: one line for each piece of work of the lesson that was not skipped, what is unfinished
// first, with what to look or listen for.

import type { Skill, SkillId } from '#planning';
import { workOf } from '../lesson/work-segment.ts';
import type { SegmentRecord } from '../record/records.ts';
import type { CourseActivities } from './course-activity.ts';

/** Lines of text, one a task. */
export function suggestPractice(
  segments: readonly SegmentRecord[],
  activities: CourseActivities,
  skills: ReadonlyMap<SkillId, Skill>,
): string {
  const lines: { readonly line: string; readonly done: boolean }[] = [];
  for (const segment of segments) {
    if (segment.outcome === 'skipped' || segment.outcome === 'setAside') continue;
    if (segment.kind === 'revisit' && segment.skill !== null) {
      const title = skills.get(segment.skill)?.title ?? segment.title;
      lines.push({ line: `Once a day: ${title}`, done: true });
      continue;
    }
    const found = workOf(segment) === null ? null : activities.ofSegment(segment);
    if (found === null) continue;
    const [main] = found.activity.develops;
    const lookFor = main === undefined ? undefined : activities.checksOf(main)[0]?.lookFor;
    const line = lookFor === undefined ? segment.title : `${segment.title}: ${lookFor}`;
    lines.push({ line, done: segment.outcome === 'finished' });
  }
  const ordered = [...lines.filter((l) => !l.done), ...lines.filter((l) => l.done)];
  return [...new Set(ordered.map((l) => l.line))].join('\n');
}
