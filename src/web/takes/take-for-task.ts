// A take of one line of the week's practice: the work it belongs to is found by its title.

import type { LessonSegmentView, LessonView } from '#contract';
import type { TakeFor } from './take-for.ts';
import { type TakeOf, takeForSegment } from './take-for-lesson.ts';

/**
 * A take of a task that a lesson set, recorded in practice: for the work it belongs to, where it names one. Levels are for
 * the teacher to judge, later, from the take that was kept.
 */
export function takeForTask(lesson: LessonView, task: string, who: TakeOf): TakeFor {
  const segment = segmentOfTask(task, lesson.segments);
  const plain: TakeFor = {
    ...who,
    course: lesson.course,
    lesson: null,
    practiceOf: lesson.id,
    activity: null,
    title: segment?.title ?? task.slice(0, 200),
    instrument: lesson.learner.instrument,
    materials: [],
    skills: [],
    checks: [],
  };
  if (segment === null) return plain;
  return { ...takeForSegment(lesson, segment, who), lesson: null, practiceOf: lesson.id, skills: [] };
}

/**
 * The part of a lesson that a line of practice is about: the one whose title, or whose skill where it comes back, stands in
 * the line; the longest of several. Null where none does.
 */
export function segmentOfTask<Segment extends Pick<LessonSegmentView, 'kind' | 'title' | 'skills'>>(
  task: string,
  segments: readonly Segment[],
): Segment | null {
  const line = task.toLowerCase();
  let found: { readonly segment: Segment; readonly length: number } | null = null;
  for (const segment of segments) {
    if (!['work', 'extension', 'revisit'].includes(segment.kind)) continue;
    const names = segment.kind === 'revisit' ? segment.skills.map(({ title }) => title) : [segment.title];
    for (const name of names)
      if (name !== '' && line.includes(name.toLowerCase()) && name.length > (found?.length ?? 0))
        found = { segment, length: name.length };
  }
  return found?.segment ?? null;
}
