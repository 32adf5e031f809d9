// What a segment leaves to practise at home: one line, as its how-to says it, else with what to look or listen for.

import type { Skill, SkillId } from '#planning';
import { workOf } from '../lesson/work-segment.ts';
import type { SegmentRecord } from '../record/records.ts';
import type { CourseActivities } from './course-activity.ts';

/** The line, whatever came of the segment; null where there is nothing to take home, as of settling in. */
export function practiceLine(
  segment: SegmentRecord,
  activities: CourseActivities,
  skills: ReadonlyMap<SkillId, Skill>,
): string | null {
  if (segment.kind === 'revisit' && segment.skill !== null)
    return `Once a day: ${skills.get(segment.skill)?.title ?? segment.title}`;
  const found = workOf(segment) === null ? null : activities.ofSegment(segment);
  if (found === null) return null;
  const [main] = found.activity.develops;
  const said = readAtHome(found.activity.howTo);
  const lookFor = main === undefined ? undefined : activities.checksOf(main)[0]?.lookFor;
  const task = said ?? lookFor;
  if (task === undefined) return segment.title;
  // "Where is home?" ends its own sentence.
  return /[.?!…]$/.test(segment.title) ? `${segment.title} ${task}` : `${segment.title}: ${task}`;
}

/** The paragraph that begins with “At home:”, as plain text on one line; null where there is none. */
export function readAtHome(howTo: string): string | null {
  for (const paragraph of howTo.split(/\n\s*\n/)) {
    const said = /^\s*\**At home:\**\s*(\S[\s\S]*)$/.exec(paragraph)?.[1];
    const line = said?.replaceAll(/\*+/g, '').replaceAll(/\s+/g, ' ').trim() ?? '';
    if (line !== '') return line;
  }
  return null;
}
