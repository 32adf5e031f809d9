// Everything the store keeps of one course, loaded together.

import { ageOn, type PlainDate } from '#core';
import type {
  CourseId,
  CourseRecord,
  CourseUnitRecord,
  EventRecord,
  GroupRecord,
  LessonId,
  LessonRecord,
  ObservationRecord,
  SegmentRecord,
  SetAsideRecord,
  SlotRecord,
  StudentRecord,
} from '../record/records.ts';
import type { Reader } from '../record/store.ts';

export interface Learner {
  /** The student's name, or the group's. */
  readonly name: string;
  /** One student, or the members of a group. */
  readonly students: readonly StudentRecord[];
  readonly group: GroupRecord | null;
}

export interface CourseRecords {
  readonly course: CourseRecord;
  readonly learner: Learner;
  /** By strand priority and position. */
  readonly units: readonly CourseUnitRecord[];
  readonly slots: readonly SlotRecord[];
  readonly events: readonly EventRecord[];
  /** By date and time. */
  readonly lessons: readonly LessonRecord[];
  /** By position. */
  readonly segmentsByLesson: ReadonlyMap<LessonId, readonly SegmentRecord[]>;
  /** The course's own, and the student's on other courses of the same instrument; by date. */
  readonly observations: readonly ObservationRecord[];
  readonly setAside: readonly SetAsideRecord[];
}

/** Loads a course, or null when there is none of this id. */
export async function loadCourse(reader: Reader, id: CourseId): Promise<CourseRecords | null> {
  const course = await reader.get('course', id);
  if (course === null) return null;
  const where = { course: id };
  const learner = await loadLearner(reader, course);
  const units = await reader.list('courseUnit', { where, orderBy: ['position'] });
  const segments = await reader.list('segment', { where, orderBy: ['lesson', 'position'] });
  return {
    course,
    learner,
    units: orderUnits(course, units),
    slots: await reader.list('slot', { where }),
    events: await reader.list('event', { where, orderBy: ['date'] }),
    lessons: await reader.list('lesson', { where, orderBy: ['date', 'time'] }),
    segmentsByLesson: groupByLesson(segments),
    observations: await loadObservations(reader, course),
    setAside: await reader.list('setAside', { where }),
  };
}

/** Who learns on a course. */
export async function loadLearner(
  reader: Reader,
  course: Pick<CourseRecord, 'student' | 'group'>,
): Promise<Learner> {
  if (course.group !== null) {
    const group = await reader.get('group', course.group);
    const students: StudentRecord[] = [];
    for (const member of group?.members ?? []) {
      const student = await reader.get('student', member);
      if (student !== null) students.push(student);
    }
    return { name: group?.name ?? 'A group', students, group };
  }
  const student = course.student === null ? null : await reader.get('student', course.student);
  return { name: student?.name ?? 'A student', students: student === null ? [] : [student], group: null };
}

/** Whether a student is taught on a day: up to the last one. */
export const isHereOn = ({ left }: Pick<StudentRecord, 'left'>, day: PlainDate): boolean =>
  left === null || left >= day;

/** Those of a learner's students who are taught on a day: who has left a group is in it no more. */
export function studentsOn(students: readonly StudentRecord[], day: PlainDate): readonly StudentRecord[] {
  const here = students.filter((s) => isHereOn(s, day));
  return here.length === 0 ? students : here;
}

/** Age in years on a day, of the youngest there whose age is known; null when none is. */
export function ageOfLearner(students: readonly StudentRecord[], day: PlainDate): number | null {
  const ages = studentsOn(students, day).flatMap((s) => {
    const age = ageOfStudent(s, day);
    return age === null ? [] : [age];
  });
  return ages.length === 0 ? null : Math.min(...ages);
}

/** Age in years on a day: exact from a birth date, to within a year from a birth year alone. */
export function ageOfStudent(student: StudentRecord, day: PlainDate): number | null {
  if (student.born !== null) return Math.max(0, ageOn(student.born, day));
  if (student.birthYear !== null) return Math.max(0, Number(day.slice(0, 4)) - student.birthYear);
  return null;
}

/** Segments of a lesson in order; none for a lesson without. */
export const segmentsOf = (records: CourseRecords, lesson: LessonId): readonly SegmentRecord[] =>
  records.segmentsByLesson.get(lesson) ?? [];

/** Whether anything was logged in a lesson's segments: a time or an outcome. */
export const isLogged = (segments: readonly SegmentRecord[]): boolean =>
  segments.some((s) => s.seconds !== null || s.outcome !== null);

/** Whether anything was logged or written in a lesson's segments. */
export const isBegun = (segments: readonly SegmentRecord[]): boolean =>
  isLogged(segments) || segments.some((s) => s.note !== '');

/**
 * Lessons whose segments replanning leaves alone: taught ones, planned ones of days gone by that wait to be closed, and
 * any that has begun.
 */
export function isSettled(records: CourseRecords, lesson: LessonRecord, today: PlainDate): boolean {
  if (lesson.status === 'taught') return true;
  if (lesson.status !== 'planned') return false;
  const segments = segmentsOf(records, lesson.id);
  return lesson.date < today || (lesson.date === today ? isBegun(segments) : isLogged(segments));
}

function groupByLesson(segments: readonly SegmentRecord[]): ReadonlyMap<LessonId, readonly SegmentRecord[]> {
  const byLesson = new Map<LessonId, SegmentRecord[]>();
  for (const segment of segments) {
    const list = byLesson.get(segment.lesson);
    if (list === undefined) byLesson.set(segment.lesson, [segment]);
    else list.push(segment);
  }
  return byLesson;
}

function orderUnits(course: CourseRecord, units: readonly CourseUnitRecord[]): readonly CourseUnitRecord[] {
  const rank = new Map(
    [...course.strands].sort((a, b) => a.priority - b.priority).map((strand, i) => [strand.id, i]),
  );
  return [...units].sort(
    (a, b) => (rank.get(a.strand) ?? 99) - (rank.get(b.strand) ?? 99) || a.position - b.position,
  );
}

async function loadObservations(reader: Reader, course: CourseRecord): Promise<readonly ObservationRecord[]> {
  const own = await reader.list('observation', {
    where: { course: course.id },
    orderBy: ['date', 'notedAt'],
  });
  if (course.student === null) return own;
  const others = (
    await reader.list('observation', { where: { student: course.student }, orderBy: ['date', 'notedAt'] })
  ).filter((o) => o.course !== course.id);
  if (others.length === 0) return own;
  const sameInstrument = new Map<CourseId, boolean>();
  for (const { course: id } of others)
    if (!sameInstrument.has(id))
      sameInstrument.set(id, (await reader.get('course', id))?.instrument === course.instrument);
  const when = (o: ObservationRecord) => `${o.date} ${o.notedAt ?? ''}`;
  return [...own, ...others.filter((o) => sameInstrument.get(o.course))].sort((a, b) =>
    when(a) < when(b) ? -1 : when(a) > when(b) ? 1 : 0,
  );
}
