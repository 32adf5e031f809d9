// The sheets a lesson's work wants, as wishes for the engraver: one for each material with a spec on an activity that was
// worked on.

import type { LessonSegmentView, LessonView } from '#contract';
import { type MaterialSpec, parseMaterialSpec } from '#music';
import { hashText } from './hash-text.ts';

export interface PracticeMaterial {
  readonly id: string;
  readonly title: string;
  readonly spec: MaterialSpec;
  readonly seed: number;
}

const isWorkedOn = ({ kind, activity, outcome }: LessonSegmentView): boolean =>
  (kind === 'work' || kind === 'extension') &&
  activity !== null &&
  outcome !== 'skipped' &&
  outcome !== 'setAside';

/**
 * Materials of the activities that were, or are to be, worked on, each once. A material without a seed of its own gets one
 * of the student's: the same in every lesson of the activity, another for every other student.
 */
export function listPracticeMaterials(
  lesson: Pick<LessonView, 'course' | 'segments'>,
): readonly PracticeMaterial[] {
  const found = new Map<string, PracticeMaterial>();
  for (const segment of lesson.segments.filter(isWorkedOn)) {
    for (const { key, title, spec: given, seed } of segment.materials) {
      if (given === null) continue;
      const spec = parseMaterialSpec(given);
      if (!spec.ok) continue; // sound and not notation, or written by a newer Levare
      const id = `${segment.courseUnit} ${segment.activity} ${key}`;
      if (!found.has(id))
        found.set(id, { id, title, spec: spec.value, seed: seed ?? hashText(`${lesson.course} ${id}`) });
    }
  }
  return [...found.values()];
}
