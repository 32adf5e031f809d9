// What a practice sheet holds to play from: the materials of the activities that were worked on, then what was kept on this
// sheet alone. Notation is a wish for the engraver; a backing is one for the band.

import type { KeptMaterialView, LessonSegmentView, LessonView, MaterialView } from '#contract';
import {
  type BackingMaterial,
  findInstrument,
  fitBacking,
  type MaterialSpec,
  parseBackingMaterial,
  parseMaterialSpec,
} from '#music';
import { materialId, seedOf } from '../../components/material-seed.ts';

interface Held {
  readonly id: string;
  readonly title: string;
  readonly seed: number;
  /** What takes it off this sheet; null where it comes with an activity. */
  readonly kept: KeptMaterialView['id'] | null;
  /** Whether it is for the lesson still, and stands on the sheet only where the teacher says so. */
  readonly waits: boolean;
}
export interface PracticeNotation extends Held {
  readonly kind: 'notation';
  readonly spec: MaterialSpec;
}
export interface PracticeBacking extends Held {
  readonly kind: 'backing';
  /** In this student's key, where the material asks for that. */
  readonly backing: BackingMaterial;
}
export type PracticeMaterial = PracticeNotation | PracticeBacking;

type SheetLesson = Pick<LessonView, 'course' | 'learner' | 'segments' | 'kept'>;

const isWorkedOn = ({ kind, activity, outcome }: LessonSegmentView): boolean =>
  (kind === 'work' || kind === 'extension') &&
  activity !== null &&
  outcome !== 'skipped' &&
  outcome !== 'setAside';

/**
 * Each material once, those of activities first, also where activities of a unit share it. One without a seed of its own
 * gets one of the student's: the same in every lesson of the activity, another for every other student. What only has a
 * name, or was written by a newer Levare, is left out.
 */
export function listPracticeMaterials(lesson: SheetLesson): readonly PracticeMaterial[] {
  const found = new Map<string, PracticeMaterial>();
  const add = (same: string, held: Held, spec: unknown) => {
    const before = found.get(same);
    // It goes home as soon as one of those that share it lets it.
    if (before !== undefined) found.set(same, { ...before, waits: before.waits && held.waits });
    const read = before === undefined ? readMaterial(held, spec, lesson) : null;
    if (read !== null) found.set(same, read);
  };
  for (const segment of lesson.segments.filter(isWorkedOn))
    for (const material of segment.materials) {
      const { key, title, spec } = material;
      const seed = seedOf(lesson, segment, material);
      const held = {
        id: materialId(segment, key),
        title,
        seed,
        kept: null,
        waits: isWaiting(segment, material),
      };
      add(JSON.stringify([segment.courseUnit, key, spec, material.seed]), held, spec);
    }
  for (const { id, title, spec, seed } of lesson.kept)
    add(id, { id, title, seed, kept: id, waits: false }, spec);
  return [...found.values()];
}

/** Whether it stays in the lesson yet. Before the lesson is closed, the plan says if the activity ends in it. */
function isWaiting({ outcome, completes }: LessonSegmentView, { takeHome }: MaterialView): boolean {
  if (takeHome === 'never') return true;
  return takeHome === 'whenDone' && !(outcome === null ? completes : outcome === 'finished');
}

function readMaterial(held: Held, value: unknown, { learner }: SheetLesson): PracticeMaterial | null {
  const backing = parseBackingMaterial(value);
  if (backing.ok) {
    const instrument = findInstrument(learner.instrument);
    const { stage, age } = learner;
    const fitted =
      instrument === null
        ? backing.value
        : fitBacking(backing.value, { instrument, stage, age, seed: held.seed });
    return { ...held, kind: 'backing', backing: fitted };
  }
  const spec = parseMaterialSpec(value);
  return spec.ok ? { ...held, kind: 'notation', spec: spec.value } : null;
}
