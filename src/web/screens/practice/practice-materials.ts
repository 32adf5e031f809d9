// The sheets a lesson's work wants, as wishes for the engraver: one for each material with a spec on an activity that was
// worked on.

import type { LessonSegmentView, LessonView, MaterialView } from '#contract';
import { type MaterialSpec, parseMaterialSpec } from '#music';
import { hashText } from './hash-text.ts';

export interface PracticeMaterial {
  readonly id: string;
  readonly title: string;
  readonly spec: MaterialSpec;
  readonly seed: number;
}

const materialId = ({ courseUnit, activity }: LessonSegmentView, key: string): string =>
  `${courseUnit} ${activity} ${key}`;

/** The seed a student's sheet is made with: the material's, or one of their own. */
export function seedOf(
  lesson: Pick<LessonView, 'course'>,
  segment: LessonSegmentView,
  material: MaterialView,
): number {
  return material.seed ?? hashText(`${lesson.course} ${materialId(segment, material.key)}`);
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
    for (const material of segment.materials) {
      const { key, title } = material;
      if (material.spec === null) continue;
      const spec = parseMaterialSpec(material.spec);
      if (!spec.ok) continue; // sound and not notation, or written by a newer Levare
      const id = materialId(segment, key);
      if (!found.has(id))
        found.set(id, { id, title, spec: spec.value, seed: seedOf(lesson, segment, material) });
    }
  }
  return [...found.values()];
}
