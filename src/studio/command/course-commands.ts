// Courses begin, change and end; their slots and events.

import type { CommandOf, Fault } from '#contract';
import { addDays, err, ok, type Result } from '#core';
import { defaultCourseSettings, formatDay } from '#planning';
import { findClashes } from '../calendar/find-clashes.ts';
import { loadLearner } from '../course/course-records.ts';
import type { CourseRecord, SlotRecord, StudentRecord } from '../record/records.ts';
import type { Transactor } from '../record/store.ts';
import { studioId } from '../record/studio-id.ts';
import { formatCount, formatList } from '../sentence/amounts.ts';
import { type Desk, type Handler, takeCourse, takeSeenCourse, touchCourse } from './desk.ts';
import { invalid, notAllowed, notFound } from './fault.ts';
import { remakeLessons } from './remake-lessons.ts';

export const openCourse: Handler<'course.open'> = async (desk, { course, slot }) => {
  const { tx } = desk;
  if ((await tx.get('course', course.id)) !== null)
    return invalid('course.id', 'This course is open already.');
  if ((course.student === null) === (course.group === null))
    return invalid('course.student', 'A course is for one student or for one group. Choose one of the two.');
  if (course.student !== null) {
    const student = await tx.get('student', course.student);
    if (student === null) return notFound('student');
    if (student.left !== null) return notAllowed(`${student.name} has left. Take them back first.`);
    await noteInstrument(tx, student, course);
  }
  if (course.group !== null && (await tx.get('group', course.group)) === null) return notFound('group');
  const strandFault = findStrandFault(course.strands);
  if (strandFault !== null) return err(strandFault);
  const studio = await tx.get('studio', studioId);
  const row: CourseRecord = {
    id: course.id,
    revision: 0,
    student: course.student,
    group: course.group,
    instrument: course.instrument,
    stage: course.stage,
    strands: course.strands,
    settings: course.settings ?? studio?.defaults ?? defaultCourseSettings,
    moved: [],
    plan: null,
    ended: null,
  };
  await tx.put('course', row);
  const { name } = await loadLearner(tx, row);
  await takeCourse(desk, row.id);
  touchCourse(desk, row.id);
  if (slot !== null) {
    const put = await putSlotRow(desk, row, slot);
    if (!put.ok) return put;
  }
  return ok(`Opened a course for ${name}`);
};

/** A student who was entered without an instrument plays, from the first course on, what it is for. */
async function noteInstrument(
  tx: Transactor,
  student: StudentRecord,
  { instrument, stage }: Pick<CourseRecord, 'instrument' | 'stage'>,
): Promise<void> {
  if (student.instruments.length > 0) return;
  await tx.put('student', {
    ...student,
    instruments: [{ instrument, stage }],
    revision: student.revision + 1,
  });
}

export const changeCourse: Handler<'course.change'> = async (desk, command) => {
  const taken = await takeSeenCourse(desk, command.course, command.seen);
  if (!taken.ok) return taken;
  const { course, learner, units } = taken.value;
  if (command.strands !== undefined) {
    const { strands } = command;
    const strandFault = findStrandFault(strands);
    if (strandFault !== null) return err(strandFault);
    const lost = units.filter((u) => !strands.some((s) => s.id === u.strand));
    if (lost.length > 0)
      return notAllowed(
        `Units still stand on a strand you are taking away: ${formatList(lost.map((u) => u.document.title))}. Move them to another strand first.`,
      );
  }
  await desk.tx.put('course', {
    ...course,
    stage: command.stage ?? course.stage,
    instrument: command.instrument ?? course.instrument,
    strands: command.strands ?? course.strands,
    settings: command.settings ?? course.settings,
  });
  touchCourse(desk, course.id);
  return ok(`Changed ${learner.name}’s course`);
};

export const endCourse: Handler<'course.end'> = async (desk, { seen, course: id, on }) => {
  const taken = await takeSeenCourse(desk, id, seen);
  if (!taken.ok) return taken;
  const { course, learner } = taken.value;
  const left = learner.group === null ? learner.students.find((s) => s.left !== null) : undefined;
  if (on === null && left !== undefined)
    return notAllowed(`${left.name} has left. Take ${left.name} back first, and the course goes on too.`);
  await desk.tx.put('course', { ...course, ended: on });
  await remakeLessons(desk, id);
  touchCourse(desk, id);
  return ok(
    on === null ? `Let ${learner.name}’s course go on` : `Ended ${learner.name}’s course on ${formatDay(on)}`,
  );
};

export const putSlot: Handler<'slot.put'> = async (desk, { seen, course: id, slot }) => {
  const taken = await takeSeenCourse(desk, id, seen);
  if (!taken.ok) return taken;
  const put = await putSlotRow(desk, taken.value.course, slot);
  return put.ok ? ok(`Set ${taken.value.learner.name}’s weekly lesson`) : put;
};

export const removeSlot: Handler<'slot.remove'> = async (desk, { seen, course: id, slot: slotId }) => {
  const { tx, today } = desk;
  const taken = await takeSeenCourse(desk, id, seen);
  if (!taken.ok) return taken;
  const slot = taken.value.slots.find((s) => s.id === slotId);
  if (slot === undefined) return notFound('weekly lesson');
  // First it ends, which takes away the untouched lessons to come; then the row goes if no lesson points to it.
  await tx.put('slot', { ...slot, ends: addDays(today, -1) });
  await remakeLessons(desk, id);
  if ((await tx.list('lesson', { where: { slot: slotId } })).length === 0) await tx.remove('slot', slotId);
  touchCourse(desk, id);
  return ok(`Took away ${taken.value.learner.name}’s weekly lesson`);
};

export const putEvent: Handler<'event.put'> = async (desk, { seen, course: id, event }) => {
  const taken = await takeSeenCourse(desk, id, seen);
  if (!taken.ok) return taken;
  const known = await desk.tx.get('event', event.id);
  if (known !== null && known.course !== id)
    return invalid('event.id', 'This event belongs to another course.');
  await desk.tx.put('event', { ...event, course: id });
  touchCourse(desk, id, { replan: false });
  return ok(`Set ${event.title} on ${formatDay(event.date)} for ${taken.value.learner.name}`);
};

export const removeEvent: Handler<'event.remove'> = async (desk, { seen, course: id, event: eventId }) => {
  const taken = await takeSeenCourse(desk, id, seen);
  if (!taken.ok) return taken;
  const event = taken.value.events.find((e) => e.id === eventId);
  if (event === undefined) return notFound('event');
  await desk.tx.remove('event', eventId);
  touchCourse(desk, id, { replan: false });
  return ok(`Removed ${event.title} from ${taken.value.learner.name}’s course`);
};

export const replan: Handler<'course.replan'> = async (desk, { seen, course: id }) => {
  const taken = await takeSeenCourse(desk, id, seen);
  if (!taken.ok) return taken;
  await remakeLessons(desk, id);
  touchCourse(desk, id);
  return ok(`Planned ${taken.value.learner.name}’s course again`);
};

export const courseLooked: Handler<'course.looked'> = async (desk, { course: id }) => {
  const records = await takeCourse(desk, id);
  if (records === null) return notFound('course');
  if (records.course.moved.length > 0) {
    await desk.tx.put('course', { ...records.course, moved: [] });
    touchCourse(desk, id, { replan: false });
  }
  return ok(`Looked at what moved in ${records.learner.name}’s course`);
};

/** Puts a slot, makes its lessons, and tells of clashes and of terms that are missing. */
async function putSlotRow(
  desk: Desk,
  course: CourseRecord,
  given: CommandOf<'slot.put'>['slot'],
): Promise<Result<null, Fault>> {
  const { tx, today } = desk;
  if (given.ends !== null && given.ends < given.starts)
    return invalid('slot.ends', 'The weekly lesson ends before it starts. Swap or mend the dates.');
  const known = await tx.get('slot', given.id);
  if (known !== null && known.course !== course.id)
    return invalid('slot.id', 'This weekly lesson belongs to another course.');
  const before = await tx.list('slot', { where: { course: course.id } });
  const slot: SlotRecord = { ...given, course: course.id };
  await tx.put('slot', slot);
  const { added } = await remakeLessons(desk, course.id, before);
  touchCourse(desk, course.id);
  if ((await tx.list('term')).every((t) => t.ends < today))
    desk.notices.push('There is no term to come yet: set its dates under Term, and the lessons appear.');
  else if (added === 0 && known === null)
    desk.notices.push(
      `No day of a term falls on this weekday from ${formatDay(latest(slot.starts, today))} on.`,
    );
  const clashes = await findClashes(tx, course.id, today);
  if (clashes.length > 0)
    desk.notices.push(
      `${formatCount(clashes.length, 'lesson')} at the same time as another: ${formatList(clashes, 3)}.`,
    );
  return ok(null);
}

function findStrandFault(strands: CourseRecord['strands']): Fault | null {
  if (new Set(strands.map((s) => s.id)).size < strands.length)
    return { kind: 'Invalid', field: 'strands', message: 'Two strands have the same id.' };
  if (new Set(strands.map((s) => s.name.toLocaleLowerCase())).size < strands.length)
    return {
      kind: 'Invalid',
      field: 'strands',
      message: 'Two strands have the same name. Rename one of them.',
    };
  return null;
}

const latest = <T extends string>(a: T, b: T): T => (a > b ? a : b);
