// The demo studio: set up, then taught day by day up to yesterday, so that pace, revisits and replanning have something to
// show. The same day gives the same studio, whoever makes it.

import { addDays, createId, createSeededRandom, daysBetween, type PlainDate } from '#core';
import { type LessonRecord, type Outside, type Store, studioId } from '#studio';
import { createDemoCalendar, weeksTaught } from './demo-calendar.ts';
import { createDemoDesk, type DemoDesk } from './demo-desk.ts';
import { type DemoCourse, openCourses } from './open-courses.ts';
import { demoStudents, siblingsInDemo } from './roster.data.ts';
import { teachLesson } from './teach-lesson.ts';

export interface DemoOptions {
  readonly today: PlainDate;
  readonly timeZone: string;
  /** Told how far it is, 0 to 1; answers whether to go on. */
  readonly onProgress?: (share: number) => Promise<boolean>;
}

const seed = 4380;

/** Fills an empty store with the demo studio; false when it was told to stop on the way. */
export async function createDemo(store: Store, outside: Outside, options: DemoOptions): Promise<boolean> {
  const { today, timeZone, onProgress = async () => true } = options;
  // Two hundred plans are made on the way to one studio: brisk ones do, and each course's next change plans in full.
  const planner: Outside['planner'] = {
    ...outside.planner,
    planCourse: (input, previous) => outside.planner.planCourse(input, previous, 'brisk'),
  };
  const desk = createDemoDesk(store, { ...outside, planner }, seed);
  const calendar = createDemoCalendar(today);
  const alone = demoStudents.filter((s) => s.sharesWith === undefined).length;
  const steps = alone * (1 + weeksTaught) + 1;
  let done = 0;
  const step = () => onProgress(Math.min(1, ++done / steps));

  const courses = await openCourses(desk, calendar, timeZone, step);
  if (courses === null) return false;
  // Of its own chance, as below.
  await joinSiblings(createDemoDesk(store, outside, seed + 2), addDays(calendar.starts, -4));
  // Before the first lesson: Undo takes back the last thing a teacher did, and never this.
  await markAsDemo(store, calendar.starts);
  const courseById = new Map(courses.map((c) => [c.course, c]));
  const taught = new Map<string, number>();
  for (let n = 0; n < daysBetween(calendar.starts, today); n++) {
    const day = addDays(calendar.starts, n);
    const lessons = await store.read((reader) =>
      reader.list('lesson', { where: { date: day }, orderBy: ['time'] }),
    );
    for (const lesson of lessons) {
      const course = courseById.get(lesson.course);
      if (course === undefined || lesson.status !== 'planned') continue;
      await liveLesson(desk, course, lesson, 1 + Math.floor(n / 7), taught);
      if (!(await step())) return false;
    }
  }
  return true;
}

async function liveLesson(
  desk: DemoDesk,
  course: DemoCourse,
  lesson: LessonRecord,
  week: number,
  taught: Map<string, number>,
): Promise<void> {
  const { student } = course;
  const day = lesson.date;
  await desk.send(day, { type: 'course.looked', course: lesson.course });
  if (student.missed?.includes(week) === true) {
    await desk.send(day, { type: 'lesson.miss', lesson: lesson.id, reason: 'Ill' }, lesson.time);
  } else if (student.cancelled?.includes(week) === true) {
    await desk.send(
      day,
      { type: 'lesson.cancel', lesson: lesson.id, reason: 'Away, told in good time' },
      '08:00',
    );
  } else {
    const nth = taught.get(student.name) ?? 0;
    await teachLesson(desk, course, lesson.id, day, nth);
    taught.set(student.name, nth + 1);
  }
}

async function joinSiblings(desk: DemoDesk, day: PlainDate): Promise<void> {
  const students = await desk.store.read((reader) => reader.list('student'));
  for (const names of siblingsInDemo)
    await desk.send(day, {
      type: 'family.join',
      family: desk.mint('family'),
      students: students.filter(({ name }) => names.includes(name)).map(({ id }) => id),
    });
}

/** The studio says of itself that it is invented. */
async function markAsDemo(store: Store, starts: PlainDate): Promise<void> {
  await store.change(
    {
      // Of its own chance: what comes after is as if it had not been.
      id: createId('change', createSeededRandom(seed + 1)),
      at: `${starts}T00:00:00.000Z`,
      type: 'studio.change',
    },
    async (tx) => {
      const studio = await tx.get('studio', studioId);
      if (studio !== null) await tx.put('studio', { ...studio, demo: true });
      return { ok: true, value: { label: 'Set up the demo studio', reply: null } };
    },
  );
}
