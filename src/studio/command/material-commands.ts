// Sheets and backings on one lesson's practice sheet: kept there beside what its activities bring, and taken off again.

import { err, ok, type Result } from '#core';
import { parseBackingMaterial, parseMaterialSpec, type SpecFault } from '#music';
import { formatDay } from '#planning';
import { type Handler, takeCourse, touchCourse } from './desk.ts';
import { invalid, notAllowed, notFound } from './fault.ts';

/** More would be a book, and no lesson's practice. */
const mostOnOneSheet = 30;

export const keepMaterial: Handler<'material.keep'> = async (desk, { lesson: lessonId, material }) => {
  const { tx } = desk;
  const lesson = await tx.get('lesson', lessonId);
  const records = lesson === null ? null : await takeCourse(desk, lesson.course);
  if (lesson === null || records === null) return notFound('lesson');
  const day = formatDay(lesson.date);
  if (lesson.status === 'cancelled' || lesson.status === 'missed')
    return notAllowed(
      `The lesson of ${day} is marked as ${lesson.status} and has no practice sheet. Keep it on another lesson’s.`,
    );
  if ((await tx.get('lessonMaterial', material.id)) !== null)
    return invalid('material.id', 'This is kept already.');
  const read = readSpec(material.spec);
  if (!read.ok) return invalid('material.spec', `“${material.title}” cannot be read: ${read.error.message}`);
  const there = await tx.list('lessonMaterial', { where: { lesson: lesson.id } });
  if (there.length >= mostOnOneSheet)
    return notAllowed(
      `The practice sheet of ${day} holds ${there.length} already. Take something off it first.`,
    );
  await tx.put('lessonMaterial', {
    ...material,
    lesson: lesson.id,
    course: lesson.course,
    keptAt: desk.outside.clock.instant(),
  });
  touchCourse(desk, lesson.course, { replan: false });
  return ok(`Kept “${material.title}” on ${records.learner.name}’s practice sheet of ${day}`);
};

export const removeMaterial: Handler<'material.remove'> = async (desk, { material: id }) => {
  const material = await desk.tx.get('lessonMaterial', id);
  if (material === null) return notFound('sheet');
  const lesson = await desk.tx.get('lesson', material.lesson);
  const records = await takeCourse(desk, material.course);
  if (lesson === null || records === null) return notFound('lesson');
  await desk.tx.remove('lessonMaterial', id);
  touchCourse(desk, material.course, { replan: false });
  return ok(
    `Took “${material.title}” off ${records.learner.name}’s practice sheet of ${formatDay(lesson.date)}`,
  );
};

/** A spec is notation or a band; either reader says what is wrong with its own kind. */
function readSpec(spec: Readonly<Record<string, unknown>>): Result<null, SpecFault> {
  const read = spec['kind'] === 'backing' ? parseBackingMaterial(spec) : parseMaterialSpec(spec);
  return read.ok ? ok(null) : err(read.error);
}
