// The demo studio shows at a glance what Levare does: different paces, revisits, what is not ready, events, holidays, a
// term half taught; and a what-if that saves nothing.

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { CourseView, StudentsView } from '#contract';
import { addDays, present } from '#core';
import { formatDay } from '../../src/web/app/format.ts';
import { words } from '../../src/web/words/index.ts';
import { lessonsOf, readStudio, readView } from '../harness/api.ts';
import { launchBrowser, openPage, type WatchedPage } from '../harness/browser.ts';
import { createDataFolder, type StudioProcess, startStudio } from '../harness/studio-process.ts';
import { createFrame } from '../page-models/frame.ts';
import { createStudentPage } from '../page-models/student-page.ts';
import { createStudentsPage } from '../page-models/students-page.ts';
import { createWelcomePage } from '../page-models/welcome-page.ts';

const folder = createDataFolder();
let studio: StudioProcess;
let browser: Browser;
let watched: WatchedPage;
/** Courses of one student; a group's course stands on its members' pages too. */
let courses: readonly CourseView[];

beforeAll(async () => {
  [studio, browser] = await Promise.all([startStudio(folder.path), launchBrowser()]);
  watched = await openPage(browser);
  const welcome = createWelcomePage(watched.page);
  await welcome.open(studio.link);
  await welcome.lookRound();
  const { students } = await readView<StudentsView>(watched.page, '/api/students');
  const ids = [...new Set(students.flatMap((student) => student.courses))];
  const all = await Promise.all(ids.map((id) => readView<CourseView>(watched.page, `/api/courses/${id}`)));
  courses = all.filter((course) => course.learner.student !== null);
});
afterAll(async () => {
  await browser?.close();
  await studio?.stop();
  folder.remove();
});

const model = () => createStudentPage(watched.page);
const courseWith = (what: string, has: (course: CourseView) => boolean): CourseView =>
  present(courses.find(has) ?? null, `a course with ${what}`);
async function openCourse(course: CourseView): Promise<void> {
  await createFrame(watched.page).goTo('students');
  await createStudentsPage(watched.page).open(course.learner.name);
  await model().score.waitFor();
}

test('24 students of 7 to 71, half-way through the term', async () => {
  await createFrame(watched.page).goTo('students');
  await createStudentsPage(watched.page).count(24).waitFor();
  const { students } = await readView<StudentsView>(watched.page, '/api/students');
  const ages = students.flatMap((student) => (student.age === null ? [] : [student.age]));
  expect([students.length, Math.min(...ages), Math.max(...ages)]).toEqual([24, 7, 71]);
  for (const course of courses) {
    const statuses = new Set(lessonsOf(course).map((bar) => bar.status));
    expect(statuses.has('taught') && statuses.has('planned'), course.learner.name).toBe(true);
  }
});

test('paces differ, and the list of students says so', async () => {
  const paces = courses.map((course) => Math.round(course.pace.percent));
  expect(Math.max(...paces) - Math.min(...paces)).toBeGreaterThanOrEqual(20);
  await createFrame(watched.page).goTo('students');
  const { students } = await readView<StudentsView>(watched.page, '/api/students');
  const slowest = present(
    students.toSorted((a, b) => (b.pacePercent ?? 0) - (a.pacePercent ?? 0))[0],
    'a student',
  );
  const percent = present(slowest.pacePercent, 'a pace');
  await createStudentsPage(watched.page)
    .row(slowest.name)
    .filter({ hasText: words.students.paceSays(percent) })
    .waitFor();
});

test('revisits stand in the table, past and to come', async () => {
  const revisited = courseWith('revisits', (course) =>
    (['taught', 'planned'] as const).every((status) =>
      lessonsOf(course).some(
        (bar) => bar.status === status && bar.segments.some((s) => s.kind === 'revisit'),
      ),
    ),
  );
  await openCourse(revisited);
  await model().showTable();
  const lines = (await model().readTable()).flatMap((lesson) => lesson.lines);
  expect(lines.filter((line) => line.remarks.includes(words.score.kind.revisit)).length).toBeGreaterThan(1);
});

test('what is not ready says what it rests on and the way there', async () => {
  const waiting = courseWith('something not ready', (course) => course.notReady.length > 0);
  await openCourse(waiting);
  const part = watched.page.getByRole('region', { name: words.student.notReady.title });
  await part.getByText(present(waiting.notReady[0], 'a sentence').sentence).waitFor();
});

test('events and holidays stand in the score and its table', async () => {
  const { locale } = await readStudio(watched.page);
  const festive = courseWith(
    'an event and a holiday',
    (course) => course.events.length > 0 && course.bars.some((bar) => bar.kind === 'rest'),
  );
  await openCourse(festive);
  const rest = present(festive.bars.find((bar) => bar.kind === 'rest') ?? null, 'a holiday');
  await model()
    .score.getByRole('button', { name: new RegExp(`^${rest.name}`) })
    .first()
    .waitFor();
  const event = present(festive.events[0], 'an event');
  await model().showTable();
  await model()
    .table.getByRole('rowheader', { name: words.score.event(event.title, formatDay(event.date, locale)) })
    .waitFor();
  await model().table.getByRole('rowheader').filter({ hasText: rest.name }).first().waitFor();
});

test('three weeks away are shown as they would be, and nothing is saved', async () => {
  const { today, revision } = await readStudio(watched.page);
  // one of them may be the break, and lessons of this week may be over
  const [from, to] = [addDays(today, 1), addDays(today, 21)];
  const full = courseWith(
    'work in the next three weeks',
    (course) =>
      lessonsOf(course).filter((bar) => bar.date >= from && bar.date <= to && bar.status === 'planned')
        .length >= 2,
  );
  const before = await readView<CourseView>(watched.page, `/api/courses/${full.id}`);
  await openCourse(before);
  await model().openWhatIf();
  const changes = await model().imagineAway(from, to);
  expect(changes.length).toBeGreaterThan(0);
  // The course as it would be is drawn; the one that is stays as it was.
  await model().score.waitFor();
  expect(await readView<CourseView>(watched.page, `/api/courses/${full.id}`)).toEqual(before);
  expect((await readStudio(watched.page)).revision).toBe(revision);
  await model().leaveWhatIf();
  await model().showTable();
  expect((await model().readTable()).length).toBe(before.bars.length);
  expect(watched.faults()).toEqual([]);
});
