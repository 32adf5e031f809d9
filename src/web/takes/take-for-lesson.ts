// A take for a part of a lesson: what is played, at what tempo and over which chords, and what is listened for.

import type { LessonSegmentView, LessonView, MaterialView } from '#contract';
import type { Id } from '#core';
import { findInstrument, fitBacking, parseBackingMaterial } from '#music';
import { seedOf } from '../components/material-seed.ts';
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

/** The spec of a material; a backing track in the key in which the lesson plays it. */
function fitSpec(lesson: LessonView, segment: LessonSegmentView, material: MaterialView): unknown {
  const read = parseBackingMaterial(material.spec);
  const { instrument, stage, age } = lesson.learner;
  const plays = findInstrument(instrument);
  if (!read.ok || plays === null) return material.spec;
  return fitBacking(read.value, { instrument: plays, stage, age, seed: seedOf(lesson, segment, material) });
}
