// A teacher's week, as one story: an empty machine, a studio, students from a spreadsheet, a unit of one's own, two courses
// from the same units, a lesson taught and closed, a lesson cancelled, a power cut in the middle of a note, and the whole
// studio carried to another machine.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import type { CourseView, LessonView, SkillMapView, UnitRow, UnitView } from '#contract';
import { addDays, type PlainDate, present, weekdayOf } from '#core';
import { formatDay, formatWeekday } from '../../src/web/app/format.ts';
import { sentenceCase } from '../../src/web/app/sentence-case.ts';
import { words } from '../../src/web/words/index.ts';
import { lessonsOf, readCourseOf, readStudio, readView, untilView } from '../harness/api.ts';
import { launchBrowser, openPage, type WatchedPage } from '../harness/browser.ts';
import { createStory } from '../harness/story.ts';
import { createDataFolder, type StudioProcess, startStudio } from '../harness/studio-process.ts';
import { createClosePage } from '../page-models/close-page.ts';
import { createDayPage } from '../page-models/day-page.ts';
import { createFrame } from '../page-models/frame.ts';
import { createImportPage } from '../page-models/import-page.ts';
import { createLessonPage } from '../page-models/lesson-page.ts';
import { createSettingsPage } from '../page-models/settings-page.ts';
import { createStudentPage, type TableLesson } from '../page-models/student-page.ts';
import { createStudentsPage } from '../page-models/students-page.ts';
import { createTermPage } from '../page-models/term-page.ts';
import { createUnitEditorPage } from '../page-models/unit-editor-page.ts';
import { createWelcomePage } from '../page-models/welcome-page.ts';
import { ourUnit } from './our-unit.ts';

const [technique, improvisation, repertoire] = words.students.defaultStrands;
const given = [
  { title: ourUnit.title, strand: technique },
  { title: 'The beat in your feet', strand: improvisation },
  { title: 'Five good notes', strand: repertoire },
] as const;

/** Same units, different students. `longestGo`: about the age in minutes, 5 to 20 (common practice, no source). */
const learners = [
  { name: 'Nora Quell', minutes: 30, longestGo: 9 },
  { name: 'Bram Oduya', minutes: 45, longestGo: 20 },
] as const;
const [nora, bram] = learners;

const folder = createDataFolder();
const otherFolder = createDataFolder();
let studio: StudioProcess;
let otherStudio: StudioProcess | null = null;
let browser: Browser;
let watched: WatchedPage;
let today: PlainDate;
let lastDay: PlainDate;
let locale: string;

beforeAll(async () => {
  [studio, browser] = await Promise.all([startStudio(folder.path), launchBrowser()]);
  watched = await openPage(browser, { acceptDownloads: true });
});
afterAll(async () => {
  await browser?.close();
  await Promise.all([studio?.stop(), otherStudio?.stop()]);
  folder.remove();
  otherFolder.remove();
});

const tell = createStory(() => watched?.context.pages() ?? []);
const frame = () => createFrame(watched.page);
const studentPage = () => createStudentPage(watched.page);
const day = (date: PlainDate) => formatDay(date, locale);

async function openStudent(name: string): Promise<void> {
  await frame().goTo('students');
  await createStudentsPage(watched.page).open(name);
}

/** What stands in the course for one activity, by lesson. */
const chunksOf = (course: CourseView, title: string) =>
  lessonsOf(course).flatMap((bar) =>
    bar.segments
      .filter((segment) => segment.kind === 'work' && segment.title === title)
      .map((segment) => ({ date: bar.date, minutes: segment.minutes })),
  );

tell('the start-up link leads to the welcome, and a studio is founded with the starter units', async () => {
  const welcome = createWelcomePage(watched.page);
  await welcome.open(studio.link);
  await welcome.found('Quay Lane Studio', 'Mara Lindqvist');
  const view = await readStudio(watched.page);
  expect(view).toMatchObject({ founded: true, name: 'Quay Lane Studio', demo: false });
  expect(view.counts).toEqual({ students: 0, units: 12, terms: 0, courses: 0 });
  ({ today, locale } = view);
  lastDay = addDays(today, 14 * 7);
});

tell('the term is set from today to fourteen weeks on', async () => {
  await createWelcomePage(watched.page).takeStep(words.welcome.start.steps.term.action);
  await createTermPage(watched.page).addTerm('Winter', today, lastDay);
  await createTermPage(watched.page).term('Winter').waitFor();
});

tell('six students come from a spreadsheet: one row is mended, one is left out for all to see', async () => {
  const { page } = watched;
  await page.getByRole('link', { name: words.welcome.start.steps.students.other }).click();
  const weekday = formatWeekday(weekdayOf(today), 'en-GB');
  const year = Number(today.slice(0, 4));
  const importing = createImportPage(page);
  await importing.choose({
    name: 'students.csv',
    text: [
      'Student,Age,Year born,Plays,Level,Day,Start,Length,Remarks',
      `Nora Quell,9,,clarinet,beginner,${weekday},15:00,30,"Shy at first, loves animals"`,
      `Bram Oduya,,${year - 34},alto saxophone,elementary,${weekday},16:00,45,"Plays in a band, on Fridays"`,
      `Ilse Marr,12,,violin,elementary,${weekday},17:00,30,`,
      `Tomas Veil,15,,guitar,intermediate,${weekday},17:45,45,"Says ""maybe"", means no"`,
      `Petra Lund,41,,cello,beginner,${weekday},18:30,45,`,
      `Rui Ferro,10,,trumpetto,beginner,${weekday},19:30,30,`,
      `Lena Okoro,8,,flute,beginner,${weekday},25:00,30,`,
    ].join('\r\n'),
  });
  await importing.summary(5, 2).waitFor();
  await importing.mend('Plays', 7, 'trumpet');
  await importing.summary(6, 1).waitFor();
  // The row at fault says what is wrong and cannot be taken.
  const left = importing.row('Lena Okoro');
  expect(await left.getByRole('checkbox').isDisabled()).toBe(true);
  expect(await left.innerText()).toMatch(/25:00/);
  await importing.importRows(6);
  // Their times came with them: on the page that follows each wants a first unit alone.
  const bram = page.getByRole('group', { name: 'Bram Oduya' });
  await bram.getByLabel(words.students.first.unit).waitFor();
  expect(await bram.getByLabel(words.students.first.day).count()).toBe(0);
  await importing.leaveFirstLessons();
  await createStudentsPage(page).count(6).waitFor();
  await page.getByRole('link', { name: words.students.first.begin, exact: true }).waitFor();
  const names = await createStudentsPage(page).names();
  expect([...names].sort()).toEqual(
    ['Nora Quell', 'Bram Oduya', 'Ilse Marr', 'Tomas Veil', 'Petra Lund', 'Rui Ferro'].sort(),
  );
  expect((await readStudio(page)).counts).toMatchObject({ students: 6, courses: 6 });
});

tell('a unit of one’s own is written in the editor', async () => {
  const { page } = watched;
  await frame().goTo('units');
  const editor = createUnitEditorPage(page);
  await editor.begin();
  await editor.writeAbout(ourUnit.title, ourUnit.goal, ourUnit.stages);
  const written = new Set<string>();
  for (const activity of ourUnit.activities) {
    await editor.addActivity(activity, !written.has(activity.skill));
    written.add(activity.skill);
  }
  await editor.addCheck(ourUnit.check.skill, ourUnit.check.level, ourUnit.check.lookFor);
  await editor.involve(ourUnit.ongoing);
  await editor.save(ourUnit.title);

  const { units } = await readView<{ units: readonly UnitRow[] }>(page, '/api/units');
  const row = present(units.find((unit) => unit.title === ourUnit.title) ?? null, 'our unit');
  expect(row).toMatchObject({ version: 1, goal: ourUnit.goal, usualMinutes: 44, activities: 3 });
  const { document, findings } = await readView<UnitView>(page, `/api/units/${row.id}`);
  expect(document.activities.map(({ title, howTo, minutes }) => ({ title, howTo, ...minutes }))).toEqual(
    ourUnit.activities.map(({ skill: _, ...activity }) => activity),
  );
  expect(document.checks).toMatchObject([{ level: ourUnit.check.level, lookFor: ourUnit.check.lookFor }]);
  expect(findings).toEqual([]);
  const { skills } = await readView<SkillMapView>(page, '/api/skills');
  const titlesById = new Map(skills.map((skill) => [skill.id, skill.title]));
  expect(document.skills.map((id) => titlesById.get(id)).sort()).toEqual(
    [...written, ourUnit.ongoing].sort(),
  );
});

for (const { name } of learners)
  tell(`${name} is given the unit and two starter units`, async () => {
    await openStudent(name);
    for (const { title, strand } of given) {
      const foretold = await studentPage().giveUnit(title, strand);
      expect(foretold.length, `what giving ${title} would do`).toBeGreaterThan(0);
    }
    const course = await readCourseOf(watched.page, name);
    expect(course.units.map((unit) => unit.title).sort()).toEqual(given.map(({ title }) => title).sort());
    expect(course.notReady).toEqual([]);
  });

tell('two different dated courses exist, and the table twin says what the server holds', async () => {
  const tables: TableLesson[][] = [];
  for (const { name, minutes, longestGo } of learners) {
    await openStudent(name);
    await studentPage().showTable();
    const course = await readCourseOf(watched.page, name);
    const lessons = lessonsOf(course);
    // One lesson a week on today's weekday, within the term, each as long as booked.
    expect(lessons.map((bar) => bar.date)).toEqual(
      Array.from({ length: 15 }, (_, week) => addDays(today, 7 * week)),
    );
    for (const bar of lessons) {
      expect(weekdayOf(bar.date)).toBe(weekdayOf(today));
      expect(bar.minutes).toBe(minutes);
      expect(bar.segments.reduce((sum, segment) => sum + segment.minutes, 0)).toBe(minutes);
    }
    // Each activity of our unit stands with all its usual minutes, in goes between its shortest and the longest for the age.
    for (const activity of ourUnit.activities) {
      const chunks = chunksOf(course, activity.title);
      expect(
        chunks.reduce((sum, chunk) => sum + chunk.minutes, 0),
        activity.title,
      ).toBe(activity.usual);
      for (const chunk of chunks) {
        expect(chunk.minutes, activity.title).toBeGreaterThanOrEqual(activity.shortest);
        expect(chunk.minutes, activity.title).toBeLessThanOrEqual(longestGo);
      }
    }
    // The table holds the same lessons and segments, minute by minute.
    const table = await studentPage().readTable();
    expect(table.length).toBe(lessons.length);
    for (const [at, bar] of lessons.entries()) {
      const shown = present(table[at], 'a lesson in the table');
      expect(shown.head).toContain(words.score.lesson(bar.number));
      expect(shown.head).toContain(day(bar.date));
      expect(shown.lines.map(({ what, minutes: shownMinutes }) => [what, shownMinutes])).toEqual(
        bar.segments.map((segment) => [sentenceCase(segment.title), segment.minutes]),
      );
      let minute = 0;
      for (const line of shown.lines) {
        expect(line.from).toBe(minute);
        minute += line.minutes;
      }
      expect(minute).toBe(minutes);
    }
    tables.push([...table]);
  }
  const [noras, brams] = tables.map((table) =>
    table.map(({ lines }) => lines.map(({ what, minutes }) => [what, minutes])),
  );
  expect(noras).not.toEqual(brams);
});

let unfinished: LessonView['segments'][number];
let faster: LessonView['segments'][number];
let closedLesson: LessonView;

tell('Nora’s first lesson is taught: one activity unfinished, one faster, one skill alone', async () => {
  const { page } = watched;
  await frame().goTo('day');
  await createDayPage(page).teach(nora.name);
  const first = present(lessonsOf(await readCourseOf(page, nora.name))[0], 'the first lesson');
  closedLesson = await readView<LessonView>(page, `/api/lessons/${first.lesson}`);
  const work = closedLesson.segments.filter((segment) => segment.kind === 'work');
  faster = present(
    work.find((s) => s.completes && s.skills.length > 0 && s.minutes >= 5) ?? null,
    'work that completes',
  );
  unfinished = present(work.find((s) => s !== faster && s.minutes >= 5) ?? null, 'other work');
  const skill = present(faster.skills[0], 'a skill of the work');

  const lesson = createLessonPage(page);
  for (const segment of closedLesson.segments) {
    await lesson.show(segment.title);
    if (segment.id === unfinished.id) await lesson.judge('carryOn', 0.5);
    else if (segment.id === faster.id) {
      await lesson.level(skill.title, 3);
      await lesson.judge('moveOn');
    } else await lesson.judge('moveOn');
  }
  await page.getByRole('heading', { name: words.lesson.closing.review }).waitFor();
  const close = createClosePage(page);
  await close.holdMore(faster.title);
  await close.setMinutes(faster.title, Math.ceil(faster.minutes / 2));
  expect(await close.isOutcome(unfinished.title, 'partly')).toBe(true);
  expect(await close.isOutcome(faster.title, 'finished')).toBe(true);
  await page.getByText(words.lesson.closing.carriesOver(unfinished.title)).waitFor();
});

tell('closing it moves the course as it should, and says why', async () => {
  const { page } = watched;
  const before = await readCourseOf(page, nora.name);
  const close = createClosePage(page);
  await close.close();
  const sentences = await close.moves();
  const after = await readCourseOf(page, nora.name);
  const [first] = lessonsOf(after);
  expect(first).toMatchObject({ status: 'taught', date: today });
  const outcomes = new Map(present(first, 'lesson 1').segments.map((s) => [s.id, s]));
  expect(outcomes.get(unfinished.id)?.outcome).toBe('partly');
  expect(outcomes.get(faster.id)).toMatchObject({
    outcome: 'finished',
    actualMinutes: Math.ceil(faster.minutes / 2),
  });
  // What was left of the unfinished work is finished in the next lesson: half of the chunk, give or take the pace.
  const toCome = (course: CourseView) =>
    chunksOf(course, unfinished.title).filter((chunk) => chunk.date > today);
  const minutesToCome = (course: CourseView) => toCome(course).reduce((sum, chunk) => sum + chunk.minutes, 0);
  const again = present(toCome(after)[0], 'a lesson with the unfinished work');
  expect(again.date).toBe(addDays(today, 7));
  const half = unfinished.minutes / 2;
  const added = minutesToCome(after) - minutesToCome(before);
  // The pace that sets minutes goes down by one step of 5 % for one quick piece of work.
  expect(Math.abs(added - half), `${added} minutes added, ${half} left`).toBeLessThanOrEqual(
    1.5 + 0.05 * minutesToCome(before),
  );
  // The faster one is one timed piece of work and pulls the pace below usual; the level is on record.
  expect(before.pace.observations).toBe(0);
  expect(after.pace.observations).toBe(1);
  expect(after.pace.percent).toBeLessThan(100);
  const skill = present(faster.skills[0], 'a skill');
  expect(after.skills.find((one) => one.skill === skill.skill)?.level).toBe(3);
  // It says what moved and why, here and on the student's page.
  expect(after.moves.length).toBeGreaterThan(0);
  expect(sentences.join(' ')).toContain(unfinished.title);
  for (const move of after.moves) expect(sentences.join('\n')).toContain(move.sentence);
  await close.toCourse();
  await studentPage().moved.waitFor();
  const told = await studentPage().moved.innerText();
  expect(after.moves.filter((move) => told.includes(move.sentence)).length).toBeGreaterThan(0);
  await page.getByText(words.student.pace.from(1)).waitFor();
  await studentPage().showTable();
  const table = await studentPage().readTable();
  const shown = table.find((lesson) => lesson.head.includes(day(again.date)));
  expect(shown?.lines.map((line) => line.what)).toContain(sentenceCase(unfinished.title));
});

tell('her next lesson has the last one at hand, with the sheet she took home', async () => {
  const { page } = watched;
  const [taught, next] = lessonsOf(await readCourseOf(page, nora.name));
  await page.goto(`${studio.address}/lesson/${next?.lesson}`);
  await page.getByText(words.lesson.lastOn('')).waitFor();
  const sheet = page.waitForEvent('popup');
  await page.getByRole('link', { name: words.lesson.lastSheet }).click();
  const opened = await sheet;
  await opened.waitForURL(`**/practice/lesson/${taught?.lesson}`);
  await opened.getByRole('heading', { name: nora.name }).first().waitFor();
  await opened.close();
  await page.goBack();
  await studentPage().moved.waitFor();
  await studentPage().showTable();
});

tell('lesson 3 is cancelled: its work goes elsewhere and says why; Undo brings it back', async () => {
  const { page } = watched;
  await studentPage().lookedAtMoves();
  const before = await readCourseOf(page, nora.name);
  expect(before.moves).toEqual([]);
  const third = present(lessonsOf(before)[2], 'lesson 3');
  const workOf = (course: CourseView) =>
    lessonsOf(course)
      .filter((bar) => bar.status !== 'cancelled')
      .flatMap((bar) => bar.segments.filter((s) => s.kind === 'work'));
  const worked = third.segments.filter((s) => s.kind === 'work');
  expect(worked.length).toBeGreaterThan(0);
  const cancel = async () => {
    await studentPage().cancelLesson(words.score.lesson(3), 'Teacher away');
    return untilView(
      () => readCourseOf(page, nora.name),
      (course) => lessonsOf(course)[2]?.status === 'cancelled',
      'lesson 3 is cancelled',
    );
  };
  const gone = await cancel();
  const bar = present(lessonsOf(gone)[2], 'lesson 3');
  expect(bar).toMatchObject({ reason: 'Teacher away', number: null, segments: [] });
  // All of its work stands in other lessons, with as many minutes as before.
  const total = (course: CourseView) => workOf(course).reduce((sum, s) => sum + s.minutes, 0);
  expect(total(gone)).toBe(total(before));
  for (const segment of worked) expect(workOf(gone).map((s) => s.title)).toContain(segment.title);
  // What stood in it says why it moved: there is no lesson on that day.
  const said = gone.moves.filter(
    (move) => move.from === third.date && move.sentence.includes('no lesson on'),
  );
  expect(said.length).toBeGreaterThan(0);
  const { sentence } = present(said[0], 'a move');
  await showAllMoves();
  await studentPage().moved.filter({ hasText: sentence }).waitFor();
  expect((await studentPage().readTable())[2]?.lines).toEqual([]);

  await frame().undoFromMessage();
  const back = await untilView(
    () => readCourseOf(page, nora.name),
    (course) => lessonsOf(course)[2]?.status === 'planned',
    'lesson 3 is back',
  );
  expect(planOf(back)).toEqual(planOf(before));
  // as long as the page shows it cancelled, the lesson after it is its lesson 3
  await untilView(
    () => studentPage().readTable(),
    (rows) => (rows[2]?.lines.length ?? 0) > 0,
    'the page shows lesson 3 again',
  );
  const again = await cancel();
  expect(planOf(again)).toEqual(planOf(gone));
});

/** The list of what moved shows its first lines; this shows all of it. */
async function showAllMoves(): Promise<void> {
  const more = studentPage().moved.getByRole('button', { expanded: false });
  if (await more.isVisible()) await more.click();
}

const planOf = (course: CourseView) =>
  lessonsOf(course).map(({ date, status, segments }) => ({
    date,
    status,
    segments: segments.map(({ title, start, minutes }) => ({ title, start, minutes })),
  }));

tell('the server dies while a note is typed; nothing typed is lost, and it is applied once', async () => {
  const { page } = watched;
  await frame().goTo('day');
  await createDayPage(page).teach(bram.name);
  const { lesson: id } = present(lessonsOf(await readCourseOf(page, bram.name))[0], 'Bram’s lesson');
  const readNote = async () => (await readView<LessonView>(page, `/api/lessons/${id}`)).note;
  const { note } = createLessonPage(page);
  const port = Number(new URL(studio.address).port);
  const first = 'Warm, even sound today. ';
  const second = 'Third line rushed when it grew loud; half tempo at home. ';
  const third = 'Lent him the blue folder. ';

  await note.click();
  await note.pressSequentially(first, { delay: 15 });
  await untilView(readNote, (text) => text.startsWith('Warm'), 'the first words are saved');
  await Promise.all([note.pressSequentially(second, { delay: 15 }), studio.kill()]);
  await page.getByRole('status').filter({ hasText: /wait/ }).first().waitFor();
  expect(await note.inputValue()).toBe(first + second);
  studio = await startStudio(folder.path, port);
  await frame().waitUntilSaved();
  expect(await readNote()).toBe(first + second);

  // Once more, and this time the page itself goes while there is no server to load it from.
  await studio.kill();
  await note.pressSequentially(third, { delay: 15 });
  await page.reload().catch(() => undefined);
  studio = await startStudio(folder.path, port);
  await page.goto(`${studio.address}/lesson/${id}`);
  await untilView(readNote, (text) => text === first + second + third, 'all three sentences, each once');
  await expect.poll(() => createLessonPage(page).note.inputValue()).toBe(first + second + third);
  expect(
    watched.faults(
      /ERR_CONNECTION_REFUSED|ERR_CONNECTION_RESET|ERR_EMPTY_RESPONSE|ERR_INCOMPLETE_CHUNKED|ERR_SOCKET/,
    ),
  ).toEqual([]);
});

tell('the whole studio is exported, brought to an empty machine, and is the same there', async () => {
  const { page } = watched;
  const exportOf = async (where: WatchedPage, path: string): Promise<unknown> => {
    await createFrame(where.page).goTo('settings');
    await createSettingsPage(where.page).exportTo(path);
    return JSON.parse(readFileSync(path, 'utf8'));
  };
  const screensOf = async (where: WatchedPage) => {
    const seen: unknown[] = [];
    for (const { name } of learners) {
      await createFrame(where.page).goTo('students');
      await createStudentsPage(where.page).open(name);
      await createStudentPage(where.page).showTable();
      seen.push(await createStudentPage(where.page).readTable());
      seen.push(await createStudentPage(where.page).units.innerText());
    }
    await createFrame(where.page).goTo('day');
    await createDayPage(where.page).lesson(bram.name).waitFor();
    // The clock goes on between the two looks.
    seen.push((await where.page.getByRole('main').innerText()).replace(/now \d\d:\d\d/g, 'now'));
    return seen;
  };
  await page.goto(`${studio.address}/settings`);
  const file = join(folder.path, 'export.json');
  const exported = await exportOf(watched, file);
  const screens = await screensOf(watched);

  otherStudio = await startStudio(otherFolder.path);
  const there = await openPage(browser, { acceptDownloads: true });
  const welcome = createWelcomePage(there.page);
  await welcome.open(otherStudio.link);
  await welcome.bring(file);
  expect(await screensOf(there)).toEqual(screens);
  expect(await exportOf(there, join(otherFolder.path, 'export.json'))).toEqual(exported);
  expect(there.faults()).toEqual([]);
});
