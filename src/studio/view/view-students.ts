// All students and groups in one list.

import type { CourseRow, StudentRow, StudentsView } from '#contract';
import { addDays } from '#core';
import { findInstrument } from '#music';
import { applyVariant, defaultPacePrior, learnPace, type PaceObservation } from '#planning';
import { ageOfStudent, isHereOn, loadLearner } from '../course/course-records.ts';
import { workOf } from '../lesson/work-segment.ts';
import type {
  CourseId,
  CourseRecord,
  CourseUnitRecord,
  GroupId,
  LessonRecord,
  SegmentRecord,
  StudentRecord,
} from '../record/records.ts';
import type { Reader } from '../record/store.ts';
import { studioId } from '../record/studio-id.ts';
import type { ViewOutside } from './view-studio.ts';

/** Students by name, those who left last; groups by name. */
export async function viewStudents(reader: Reader, { clock }: ViewOutside): Promise<StudentsView> {
  const today = clock.today();
  const students = await reader.list('student', { orderBy: ['name'] });
  const groups = await reader.list('group', { orderBy: ['name'] });
  const courses = await reader.list('course');
  const nextByCourse = new Map<CourseId, LessonRecord>();
  for (const lesson of await reader.list('lesson', {
    where: { status: 'planned' },
    range: { column: 'date', from: today },
    orderBy: ['date', 'time'],
  }))
    if (!nextByCourse.has(lesson.course)) nextByCourse.set(lesson.course, lesson);
  // Units are long: they are read once, for the pace and for how many each course has.
  const units = await reader.list('courseUnit');
  const logByCourse = await readPaceLog(reader, { courses, students, units }, today);
  // The prior that the courses are planned with, or the list would say another pace than the student's own page.
  const prior = (await reader.get('studio', studioId))?.pace?.prior ?? defaultPacePrior;

  const rows = students.map((student): StudentRow => {
    const groupIds = new Set(groups.filter((g) => g.members.includes(student.id)).map((g) => g.id));
    const own = courses.filter(
      (c) => c.student === student.id || (c.group !== null && groupIds.has(c.group)),
    );
    const [next] = own
      .flatMap((c) => nextByCourse.get(c.id) ?? [])
      .filter((lesson) => isHereOn(student, lesson.date))
      .sort((a, b) => (`${a.date} ${a.time}` < `${b.date} ${b.time}` ? -1 : 1));
    const log = own.filter((c) => c.student !== null).flatMap((c) => logByCourse.get(c.id) ?? []);
    const pace = learnPace(log, prior);
    return {
      id: student.id,
      name: student.name,
      siblings: students.flatMap(({ id, name, family, left }) =>
        family !== null && family === student.family && id !== student.id ? [{ id, name, left }] : [],
      ),
      age: ageOfStudent(student, today),
      instruments: student.instruments.map(({ instrument, stage }) => ({
        instrument,
        name: findInstrument(instrument)?.name ?? instrument,
        stage,
      })),
      courses: own.map((c) => c.id),
      next: next === undefined ? null : { lesson: next.id, date: next.date, time: next.time },
      left: student.left,
      here: isHereOn(student, today),
      pacePercent: pace.observations === 0 ? null : Math.round(100 * Math.exp(pace.mean)),
    };
  });
  return {
    students: [...rows.filter((r) => r.here), ...rows.filter((r) => !r.here)],
    groups: groups.map((g) => ({
      id: g.id,
      revision: g.revision,
      name: g.name,
      members: g.members,
      ...coursesOfGroup(courses, g.id, today),
    })),
    courses: await listCourseRows(reader, { courses, units }, today),
  };
}

function coursesOfGroup(
  courses: readonly CourseRecord[],
  group: GroupId,
  today: LessonRecord['date'],
): Pick<StudentsView['groups'][number], 'courses' | 'ended'> {
  const own = courses.filter((c) => c.group === group);
  const ends = own.flatMap(({ ended }) => (ended !== null && ended < today ? [ended] : [])).sort();
  return {
    courses: own.map((c) => c.id),
    ended: ends.length === own.length ? (ends.at(-1) ?? null) : null,
  };
}

interface AllCourses {
  readonly courses: readonly CourseRecord[];
  readonly students: readonly StudentRecord[];
  readonly units: readonly CourseUnitRecord[];
}

/** How long ago a lesson may be for its practice sheet to be still in use. */
const daysInUse = 35;

async function listCourseRows(
  reader: Reader,
  { courses, units }: Pick<AllCourses, 'courses' | 'units'>,
  today: LessonRecord['date'],
): Promise<readonly CourseRow[]> {
  const from = addDays(today, -daysInUse);
  const lessons = await reader.list('lesson', {
    range: { column: 'date', from },
    orderBy: ['date', 'time'],
  });
  const byCourse = new Map<CourseId, LessonRecord[]>();
  for (const lesson of lessons)
    if (lesson.status === 'planned' || lesson.status === 'taught')
      byCourse.set(lesson.course, [...(byCourse.get(lesson.course) ?? []), lesson]);
  const weekly = new Set<string>();
  for (const { course, ends } of await reader.list('slot'))
    if (ends === null || ends >= today) weekly.add(course);
  const unitsByCourse = new Map<string, number>();
  for (const { course } of units) unitsByCourse.set(course, 1 + (unitsByCourse.get(course) ?? 0));
  const rows: CourseRow[] = [];
  for (const course of courses) {
    if (course.ended !== null && course.ended < today) continue;
    const held = byCourse.get(course.id) ?? [];
    const open = [held.findLast((l) => l.date <= today), held.find((l) => l.date > today)];
    rows.push({
      id: course.id,
      learner: (await loadLearner(reader, course)).name,
      student: course.student,
      instrument: course.instrument,
      instrumentName: findInstrument(course.instrument)?.name ?? course.instrument,
      stage: course.stage,
      revision: course.revision,
      strands: course.strands.map(({ id, name }) => ({ id, name })),
      weekly: weekly.has(course.id),
      units: unitsByCourse.get(course.id) ?? 0,
      sheets: open.flatMap((l) => (l === undefined ? [] : [{ lesson: l.id, date: l.date }])),
    });
  }
  return rows.sort((a, b) => (a.learner < b.learner ? -1 : a.learner > b.learner ? 1 : 0));
}

/** Logged work of every course, read in few queries. */
async function readPaceLog(
  reader: Reader,
  { courses, students, units }: AllCourses,
  today: LessonRecord['date'],
): Promise<ReadonlyMap<CourseId, readonly PaceObservation[]>> {
  const logged: SegmentRecord[] = [];
  for (const outcome of ['finished', 'partly', 'setAside'] as const)
    logged.push(...(await reader.list('segment', { where: { outcome } })));
  const unitById = new Map<string, CourseUnitRecord>(units.map((unit) => [unit.id, unit]));
  const coursesById = new Map(courses.map((c) => [c.id, c]));
  const byCourse = new Map<CourseId, PaceObservation[]>();
  for (const segment of logged) {
    const work = workOf(segment);
    const unit = work === null ? undefined : unitById.get(work.courseUnit);
    const course = coursesById.get(segment.course);
    if (work === null || unit === undefined || course === undefined) continue;
    const found = [...unit.document.activities, ...unit.document.extensions].find(
      (a) => a.key === work.activity,
    );
    if (found === undefined || segment.covered === null) continue;
    const student = students.find((s) => s.id === course.student);
    const age = student === undefined ? null : ageOfStudent(student, today);
    const list = byCourse.get(segment.course) ?? [];
    byCourse.set(segment.course, list);
    list.push({
      area: unit.document.area,
      actual: (segment.seconds ?? 0) / 60,
      covered: segment.covered,
      usual: applyVariant(found, { stage: course.stage, age }).minutes.usual,
    });
  }
  return byCourse;
}
