// A take for a part of a lesson: what is played, at what tempo and over which chords, and what is listened for.

import type { LessonSegmentView, LessonView, MaterialView } from '#contract';
import type { Id } from '#core';
import { findInstrument, fitBacking, parseBackingMaterial } from '#music';
import { seedOf } from '../screens/practice/practice-materials.ts';
import type { TakeFor } from './take-for.ts';

/** One student, who may be one of a group. */
export interface TakeOf {
  readonly student: Id<'student'>;
  readonly name: string;
}

/** A take of a segment's work, recorded in its lesson. */
export function takeForSegment(lesson: LessonView, segment: LessonSegmentView, who: TakeOf): TakeFor {
  const { courseUnit, activity } = segment;
  return {
    ...who,
    course: lesson.course,
    lesson: lesson.id,
    practiceOf: null,
    activity: courseUnit === null || activity === null ? null : { courseUnit, activity },
    title: segment.title,
    instrument: lesson.learner.instrument,
    materials: segment.materials.map((material) => fitSpec(lesson, segment, material)),
    skills: segment.skills.map(({ skill, title, wanted }) => ({ skill, title, wanted })),
    checks: segment.skills.flatMap(({ listenable }) => listenable),
  };
}

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

/** The spec of a material; a backing track in the key in which the lesson plays it. */
function fitSpec(lesson: LessonView, segment: LessonSegmentView, material: MaterialView): unknown {
  const read = parseBackingMaterial(material.spec);
  const { instrument, stage, age } = lesson.learner;
  const plays = findInstrument(instrument);
  if (!read.ok || plays === null) return material.spec;
  return fitBacking(read.value, { instrument: plays, stage, age, seed: seedOf(lesson, segment, material) });
}
