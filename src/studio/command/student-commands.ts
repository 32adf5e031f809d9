// Students join, change, leave, come back, and, when nothing was ever taught, are taken out again.

import type { CommandOf, Fault } from '#contract';
import { addDays, err, ok } from '#core';
import { formatDay } from '#planning';
import type { StudentId, StudentRecord } from '../record/records.ts';
import type { Reader } from '../record/store.ts';
import { formatCount, formatList } from '../sentence/amounts.ts';
import { forgetAbsent } from './absence-commands.ts';
import { type Desk, type Handler, takeCourse, touchCourse } from './desk.ts';
import { settleFamily } from './family-commands.ts';
import { changedElsewhere, invalid, notAllowed, notFound } from './fault.ts';
import { remakeLessons } from './remake-lessons.ts';
import { removeCourse } from './remove-course.ts';
import { removeTake } from './take-sounds.ts';

type StudentGiven = CommandOf<'student.add'>['student'];

export const addStudent: Handler<'student.add'> = async (desk, { student }) => {
  const fault = await findAddFault(desk, student);
  if (fault !== null) return err(fault);
  await desk.tx.put('student', newStudent(student));
  return ok(`Added ${student.name}`);
};

export const addStudents: Handler<'student.addMany'> = async (desk, { students }) => {
  const seen = new Set<StudentId>();
  for (const student of students) {
    if (seen.has(student.id)) return invalid('students', `${student.name} is in the list twice.`);
    seen.add(student.id);
    const fault = await findAddFault(desk, student);
    if (fault !== null)
      return err({ ...fault, message: `${student.name}: ${fault.message} Nobody was added.` });
  }
  for (const student of students) await desk.tx.put('student', newStudent(student));
  return ok(`Added ${formatCount(students.length, 'student')}`);
};

export const changeStudent: Handler<'student.change'> = async (desk, { seen, student }) => {
  const now = await desk.tx.get('student', student.id);
  if (now === null) return notFound('student');
  if (!desk.imagining && now.revision !== seen) return changedElsewhere(desk.tx, 'student', now.id, now.name);
  const fault = await findFieldFault(desk, student);
  if (fault !== null) return err(fault);
  const next: StudentRecord = { ...newStudent(student), left: now.left, revision: now.revision + 1 };
  const ageChanged = next.born !== now.born || next.birthYear !== now.birthYear;
  const courses = ageChanged ? await coursesOf(desk.tx, now.id) : [];
  for (const { id } of courses) await takeCourse(desk, id);
  await desk.tx.put('student', next);
  if (next.family !== now.family) await settleFamily(desk.tx, now.family);
  for (const { id } of courses) touchCourse(desk, id);
  await followStages(desk, now, next);
  return ok(`Changed ${student.name}`);
};

/** A course at its player's stage follows the player to the next; one that was set apart by hand stays. */
async function followStages(desk: Desk, now: StudentRecord, next: StudentRecord): Promise<void> {
  for (const course of await desk.tx.list('course', { where: { student: now.id } })) {
    const stageIn = ({ instruments }: StudentRecord) =>
      instruments.find((i) => i.instrument === course.instrument)?.stage;
    const stage = stageIn(next);
    if (course.ended !== null || stage === undefined) continue;
    if (stageIn(now) !== course.stage || stage === course.stage) continue;
    await takeCourse(desk, course.id);
    await desk.tx.put('course', { ...course, stage });
    touchCourse(desk, course.id);
  }
}

export const studentLeaves: Handler<'student.leave'> = async (desk, { seen, student: id, on }) => {
  const student = await desk.tx.get('student', id);
  if (student === null) return notFound('student');
  if (!desk.imagining && student.revision !== seen)
    return changedElsewhere(desk.tx, 'student', id, student.name);
  if (student.left !== null) return notAllowed(`${student.name} left on ${formatDay(student.left)} already.`);
  await desk.tx.put('student', { ...student, left: on, revision: student.revision + 1 });
  for (const course of await desk.tx.list('course', { where: { student: id } })) {
    if (course.ended !== null) continue;
    await takeCourse(desk, course.id);
    await desk.tx.put('course', { ...course, ended: on });
    await remakeLessons(desk, course.id);
    touchCourse(desk, course.id);
  }
  return ok(`${student.name} leaves on ${formatDay(on)}`);
};

export const studentReturns: Handler<'student.return'> = async (desk, { seen, student: id }) => {
  const student = await desk.tx.get('student', id);
  if (student === null) return notFound('student');
  if (!desk.imagining && student.revision !== seen)
    return changedElsewhere(desk.tx, 'student', id, student.name);
  if (student.left === null) return notAllowed(`${student.name} has not left.`);
  await desk.tx.put('student', { ...student, left: null, revision: student.revision + 1 });
  for (const course of await desk.tx.list('course', { where: { student: id } })) {
    // Only what ended because they left begins again.
    if (course.ended !== student.left) continue;
    await takeCourse(desk, course.id);
    await desk.tx.put('course', { ...course, ended: null });
    await remakeLessons(desk, course.id);
    touchCourse(desk, course.id);
  }
  return ok(`${student.name} is back`);
};

export const removeStudent: Handler<'student.remove'> = async (desk, { seen, student: id }) => {
  const { tx } = desk;
  const student = await tx.get('student', id);
  if (student === null) return notFound('student');
  if (!desk.imagining && student.revision !== seen) return changedElsewhere(tx, 'student', id, student.name);
  const courses = await tx.list('course', { where: { student: id } });
  for (const course of courses)
    if ((await tx.list('lesson', { where: { course: course.id, status: 'taught' } })).length > 0)
      return notAllowed(
        `${student.name} has lessons that were taught, and they stay on record. Say on which day ${student.name} leaves instead, or erase them for good if that is asked for.`,
      );
  const groups = (await tx.list('group')).filter((g) => g.members.includes(id));
  if (groups.length > 0)
    return notAllowed(
      `${student.name} is a member of ${formatList(groups.map((g) => g.name))}. Take them out of it first.`,
    );
  for (const course of courses) await removeCourse(tx, course.id);
  for (const observation of await tx.list('observation', { where: { student: id } }))
    await tx.remove('observation', observation.id);
  for (const take of await tx.list('take', { where: { student: id } })) await removeTake(desk, take);
  for (const consent of await tx.list('consent', { where: { student: id } }))
    await tx.remove('consent', consent.id);
  await forgetAbsent(desk, id);
  await tx.remove('student', id);
  await settleFamily(tx, student.family);
  return ok(`Removed ${student.name}`);
};

function newStudent(student: StudentGiven): StudentRecord {
  return { ...student, revision: 1, left: null };
}

/** Courses a student takes part in, alone or in a group. */
async function coursesOf(reader: Reader, student: StudentId) {
  const own = await reader.list('course', { where: { student } });
  const groups = (await reader.list('group')).filter((g) => g.members.includes(student));
  const shared = await Promise.all(groups.map((g) => reader.list('course', { where: { group: g.id } })));
  return [...own, ...shared.flat()];
}

async function findAddFault(desk: Desk, student: StudentGiven): Promise<Fault | null> {
  if ((await desk.tx.get('student', student.id)) !== null)
    return { kind: 'Invalid', field: 'student.id', message: 'This student was added already.' };
  return findFieldFault(desk, student);
}

async function findFieldFault(desk: Desk, student: StudentGiven): Promise<Fault | null> {
  const { born, birthYear, instruments, family } = student;
  const year = Number(desk.today.slice(0, 4));
  if (born !== null && born > addDays(desk.today, 1))
    return { kind: 'Invalid', field: 'student.born', message: 'The date of birth lies in the future.' };
  if (birthYear !== null && birthYear > year)
    return { kind: 'Invalid', field: 'student.birthYear', message: 'The year of birth lies in the future.' };
  if (born !== null && birthYear !== null && Number(born.slice(0, 4)) !== birthYear)
    return {
      kind: 'Invalid',
      field: 'student.birthYear',
      message: `The year of birth ${birthYear} does not agree with the date ${born}. Leave one of them out.`,
    };
  if (new Set(instruments.map((i) => i.instrument)).size < instruments.length)
    return { kind: 'Invalid', field: 'student.instruments', message: 'An instrument is listed twice.' };
  if (family !== null && (await desk.tx.get('family', family)) === null)
    return { kind: 'NotFound', field: 'student.family', message: 'There is no such family any more.' };
  return null;
}
