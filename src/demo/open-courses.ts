// The demo's studio before its first lesson: term, holidays, students, courses and the units on them.

import type { Command } from '#contract';
import { addDays, type PlainDate, type PlainTime, present } from '#core';
import type { UnitDocument } from '#planning';
import type { CourseId, StudentId } from '#studio';
import type { DemoCalendar } from './demo-calendar.ts';
import type { DemoDesk } from './demo-desk.ts';
import { concertTitle, type DemoStudent, demoStudents, studioName, teacherName } from './roster.data.ts';

export interface DemoCourse {
  readonly student: DemoStudent;
  readonly studentId: StudentId;
  readonly course: CourseId;
}

/** Sets everything up a few days before the term; null when `goOn` said no after one of the courses. */
export async function openCourses(
  desk: DemoDesk,
  calendar: DemoCalendar,
  timeZone: string,
  goOn: () => Promise<boolean>,
): Promise<readonly DemoCourse[] | null> {
  const day = addDays(calendar.starts, -4);
  await desk.send(day, {
    type: 'studio.found',
    name: studioName,
    teacher: teacherName,
    timeZone,
    locale: 'en-GB',
    starterUnits: true,
  });
  await desk.send(day, {
    type: 'term.put',
    term: { id: desk.mint('term'), name: 'This term', starts: calendar.starts, ends: calendar.ends },
  });
  await desk.send(day, {
    type: 'holiday.putMany',
    holidays: [
      {
        id: desk.mint('holiday'),
        name: 'Harbour Day',
        starts: calendar.harbourDay,
        ends: calendar.harbourDay,
        source: '',
      },
      {
        id: desk.mint('holiday'),
        name: 'Break week',
        starts: calendar.breakStarts,
        ends: calendar.breakEnds,
        source: '',
      },
    ],
  });
  const ids = new Map(demoStudents.map((s) => [s.name, desk.mint('student')]));
  await desk.send(day, {
    type: 'student.addMany',
    students: demoStudents.map((s) => studentOf(s, present(ids.get(s.name), s.name), day)),
  });
  const units = await desk.store.read((reader) => reader.list('unit'));
  const documents = new Map(units.map((u) => [u.id.slice('unit:'.length), u.document]));
  const courses: DemoCourse[] = [];
  for (const student of demoStudents.filter((s) => s.sharesWith === undefined)) {
    const studentId = present(ids.get(student.name), student.name);
    const course = await openCourse(desk, calendar, day, student, ids, documents);
    courses.push({ student, studentId, course });
    if (!(await goOn())) return null;
  }
  return courses;
}

function studentOf(student: DemoStudent, id: StudentId, day: PlainDate) {
  return {
    id,
    name: student.name,
    born: null,
    birthYear: Number(day.slice(0, 4)) - student.age,
    instruments: [{ instrument: student.instrument, stage: student.stage }],
    family: null,
    contacts:
      student.contact === null
        ? []
        : [
            {
              ...student.contact,
              phone: '',
              email: `${student.contact.name.split(' ')[0]?.toLowerCase()}@example.net`,
            },
          ],
    note: student.note,
    since: addDays(day, -30 * ((student.name.length % 9) + 1)),
  };
}

async function openCourse(
  desk: DemoDesk,
  calendar: DemoCalendar,
  day: PlainDate,
  student: DemoStudent,
  ids: ReadonlyMap<string, StudentId>,
  documents: ReadonlyMap<string, UnitDocument>,
): Promise<CourseId> {
  const studentId = present(ids.get(student.name), student.name);
  const course = desk.mint('course');
  const sharing = demoStudents.filter((s) => s.sharesWith === student.name);
  const group = sharing.length === 0 ? null : desk.mint('group');
  if (group !== null)
    await desk.send(day, {
      type: 'group.put',
      seen: 0,
      group: {
        id: group,
        name: `${student.name.split(' ')[0]} and ${sharing.map((s) => s.name.split(' ')[0]).join(', ')}`,
        members: [studentId, ...sharing.map((s) => present(ids.get(s.name), s.name))],
      },
    });
  const strands = student.strands.map((s, i) => ({
    id: desk.mint('strand'),
    name: s.name,
    ink: (i % 4) as 0 | 1 | 2 | 3,
    priority: i + 1,
    deadline: s.concert === true ? calendar.concert : null,
  }));
  const opened = await desk.send(day, {
    type: 'course.open',
    course: {
      id: course,
      student: group === null ? studentId : null,
      group,
      instrument: student.instrument,
      stage: student.stage,
      strands,
    },
    slot: {
      id: desk.mint('slot'),
      weekday: student.weekday,
      time: student.time as PlainTime,
      minutes: student.minutes,
      starts: calendar.starts,
      ends: null,
    },
  });
  let seen = present(opened.courses[0], 'the opened course').revision;
  const send = async (command: Command) => {
    const reply = await desk.send(day, command);
    seen = reply.courses.find((c) => c.course === course)?.revision ?? seen;
  };
  if (student.strands.some((s) => s.concert === true))
    await send({
      type: 'event.put',
      seen,
      course,
      event: { id: desk.mint('event'), date: calendar.concert, title: concertTitle },
    });
  for (const [i, strand] of student.strands.entries())
    for (const unit of strand.units)
      await send({
        type: 'courseUnit.give',
        seen,
        course,
        courseUnit: desk.mint('course-unit'),
        unit: present(documents.get(unit), unit).id,
        strand: present(strands[i], 'the strand').id,
      });
  return course;
}
