// A first draft of the week's practice, from what came of each part of the lesson: the studio suggests it from what is on
// record, the closing of a lesson from what is about to be.

import type { LessonSegmentView } from './view/lesson.ts';

/**
 * Lines of text, one a task: what is unfinished first, nothing twice, and nothing of what was not reached or was set aside,
 * which a student cannot practise.
 */
export function suggestPractice(
  segments: readonly Pick<LessonSegmentView, 'practice' | 'kind' | 'outcome'>[],
): string {
  const held = segments.filter((s) => s.outcome !== 'skipped' && s.outcome !== 'setAside');
  const isDone = (s: (typeof held)[number]) => s.kind === 'revisit' || s.outcome === 'finished';
  const lines = [...held.filter((s) => !isDone(s)), ...held.filter(isDone)].map((s) => s.practice);
  return [...new Set(lines.filter((line) => line !== null))].join('\n');
}
