// The main steps with the keyboard alone: nothing is clicked, nothing is filled past the keys. Locators only say where the
// focus is to come to, and what there is to be seen.

import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import type { CourseView, LessonView, SegmentView, UnitRow } from '#contract';
import { addDays, type PlainTime, present, weekdayOf } from '#core';
import { formatWeekday } from '../../src/web/app/format.ts';
import { words } from '../../src/web/words/index.ts';
import { lessonsOf, readCourseOf, readStudio, readView, untilView } from '../harness/api.ts';
import { launchBrowser, openPage, type WatchedPage } from '../harness/browser.ts';
import { hold } from '../harness/hold.ts';
import { createKeyboard } from '../harness/keyboard.ts';
import { settle } from '../harness/settle.ts';
import { createStory } from '../harness/story.ts';
import { createDataFolder, type StudioProcess, startStudio } from '../harness/studio-process.ts';

const folder = createDataFolder();
const name = 'Ilse Marr';
let studio: StudioProcess;
let browser: Browser;
let watched: WatchedPage;
let page: Page;
let keys: ReturnType<typeof createKeyboard>;

beforeAll(async () => {
  [studio, browser] = await Promise.all([startStudio(folder.path), launchBrowser()]);
  watched = await openPage(browser);
  page = watched.page;
  keys = createKeyboard(page);
});
afterAll(async () => {
  await browser?.close();
  await studio?.stop();
  folder.remove();
});

const tell = createStory(() => [page]);
const button = (label: string, within: Page | Locator = page) =>
  within.getByRole('button', { name: label, exact: true });
const link = (label: string) => page.getByRole('link', { name: label, exact: true });
const field = (label: string, within: Page | Locator = page) => within.getByLabel(label, { exact: true });
const heading = (text: string | RegExp) => page.getByRole('heading', { name: text }).first().waitFor();
const readCourse = () => readCourseOf(page, name);

tell('a file that is refused leaves the keys where they were', async () => {
  await page.goto(studio.link);
  await heading(words.welcome.found.title);
  const { importAction, importing } = words.settings.keep;
  const reply = await hold(page, '**/api/import', 'after it is answered');
  const choosing = page.waitForEvent('filechooser');
  await keys.act(button(importAction));
  const file = { name: 'studio.json', mimeType: 'application/json', buffer: Buffer.from('{"format":') };
  await (await choosing).setFiles(file);
  await reply.asked;
  expect(await keys.isOn(button(importing))).toBe(true);
  // Meanwhile it hears nothing.
  let isAskedAgain = false;
  page.on('filechooser', () => {
    isAskedAgain = true;
  });
  await keys.press('Enter');
  reply.letGo();
  await page.getByText('This file ends too early').waitFor();
  await button(importAction).waitFor();
  await settle(page);
  expect(await keys.isOn(button(importAction))).toBe(true);
  expect(isAskedAgain).toBe(false);
});

tell('found a studio', async () => {
  await keys.write(page.getByLabel(words.welcome.found.name), 'Quay Lane Studio');
  await keys.write(page.getByLabel(words.welcome.found.teacher), 'Mara Lindqvist');
  await keys.press('Enter');
  await heading(words.welcome.start.title);
});

tell('set the term and add a student with a course', async () => {
  const { today } = await readStudio(page);
  await keys.act(link(words.welcome.start.steps.term.action));
  const { terms } = words.term;
  const span = page.getByRole('dialog', { name: terms.addTitle });
  await keys.write(span.getByLabel(terms.name), 'Winter');
  await keys.writeDate(span.getByLabel(terms.starts), today);
  await keys.writeDate(span.getByLabel(terms.ends), addDays(today, 98));
  await keys.act(button(terms.save, span));
  await span.waitFor({ state: 'hidden' });

  await keys.act(link(words.term.next.studentsAction));
  const { form } = words.students;
  const dialog = page.getByRole('dialog', { name: form.addTitle });
  await keys.write(dialog.getByLabel(form.name).first(), name);
  await keys.write(field(form.birthYear, dialog), String(Number(today.slice(0, 4)) - 12));
  await keys.choose(field(form.instrument, dialog), 'Violin');
  await keys.choose(field(form.weekday, dialog), formatWeekday(weekdayOf(today), 'en-GB'));
  await keys.writeTime(field(form.time, dialog), '15:00' as PlainTime);
  await keys.act(button(form.addAction, dialog));
  await dialog.waitFor({ state: 'hidden' });
  // The first student leads on to the course.
  await heading(name);
  const course = await readCourse();
  expect(course.learner).toMatchObject({ name, age: expect.any(Number), instrument: 'violin' });
  expect(lessonsOf(course)[0]).toMatchObject({ date: today, time: '15:00' });
});

tell('give two units', async () => {
  const { give, units } = words.student;
  for (const title of ['Five good notes', 'The beat in your feet']) {
    await keys.act(button(units.give));
    const dialog = page.getByRole('dialog', { name: give.title });
    await keys.write(dialog.getByLabel(give.find), title);
    await keys.act(dialog.getByRole('button', { name: title }));
    await keys.act(button(give.preview, dialog));
    await button(give.give, dialog).waitFor();
    await keys.act(button(give.give, dialog));
    await dialog.waitFor({ state: 'hidden' });
  }
  expect((await readCourse()).units.length).toBe(2);
});

const score = () => page.getByRole('application');
/** The segment or bar that the focus is on. */
const idNow = () => page.evaluate(() => document.activeElement?.getAttribute('data-id') ?? '');

tell('walk the score by bars and segments', async () => {
  await keys.tabTo(score().getByRole('button'));
  const course = await readCourse();
  const [first, second] = lessonsOf(course);
  await keys.press('Control+Home');
  expect(await idNow()).toBe(present(first, 'lesson 1').lesson);
  expect(await keys.nameNow()).toContain(words.score.lesson(1));
  await keys.press('ArrowRight');
  expect(await idNow()).toBe(present(second, 'lesson 2').lesson);
  // Down through the lines of the bar, and along a line from segment to segment.
  const segments = new Set(lessonsOf(course).flatMap((bar) => bar.segments.map((s) => s.id as string)));
  await keys.press('ArrowDown');
  const one = await idNow();
  expect(segments.has(one)).toBe(true);
  await keys.press('ArrowRight');
  const next = await idNow();
  expect(next).not.toBe(one);
  expect(segments.has(next)).toBe(true);
  await keys.press('ArrowLeft');
  expect(await idNow()).toBe(one);
});

/** Walks along the lines, top to bottom, until the focus is on a segment of this key. */
async function walkTo(wanted: () => Promise<SegmentView | null>): Promise<SegmentView> {
  const segment = present(await wanted(), 'a segment to walk to');
  await keys.tabTo(score().getByRole('button'));
  await keys.press('Control+Home');
  for (let line = 0; line < 12; line++) {
    for (let step = 0; step < 40; step++) {
      if ((await idNow()) === segment.id) return segment;
      const before = await idNow();
      await keys.press('ArrowRight');
      if ((await idNow()) === before) break;
    }
    await keys.press('Control+Home');
    for (let down = 0; down <= line; down++) await keys.press('ArrowDown');
    await keys.press('Home');
  }
  throw new Error(`The arrows never came to ${segment.title}`);
}
const workIn = (lesson: number) => async () =>
  lessonsOf(await readCourse())[lesson]?.segments.find((s) => s.kind === 'work' && !s.pinned) ?? null;

tell('pin, set aside, take back, and move a segment', async () => {
  const pinned = await walkTo(workIn(1));
  await keys.press('p');
  const withPin = await untilView(
    readCourse,
    (course) => lessonsOf(course)[1]?.segments.some((s) => s.key === pinned.key && s.pinned) ?? false,
    'it is pinned',
  );

  const aside = await walkTo(workIn(2));
  await keys.press('s');
  await untilView(
    readCourse,
    (course) => course.setAside.some((one) => one.activity === aside.activity),
    'it is set aside',
  );
  await keys.press('ControlOrMeta+z');
  const back = await untilView(readCourse, (course) => course.setAside.length === 0, 'it is taken back');
  expect(lessonsOf(back).map((bar) => bar.segments.map((s) => [s.title, s.minutes]))).toEqual(
    lessonsOf(withPin).map((bar) => bar.segments.map((s) => [s.title, s.minutes])),
  );

  const moved = await walkTo(workIn(3));
  await keys.press('m');
  await keys.press('ArrowRight');
  await keys.press('Enter');
  const after = await untilView(readCourse, (course) => course.revision > back.revision, 'it was moved');
  const there = present(lessonsOf(after)[4], 'lesson 5').segments;
  expect(there.some((s) => s.activity === moved.activity && s.pinned)).toBe(true);
});

tell('teach: levels, outcomes, notes', async () => {
  await keys.tabTo(score().getByRole('button'));
  await keys.press('Control+Home');
  await keys.press('Enter');
  // The menu opens on its first item: Teach.
  await page.getByRole('menu').waitFor();
  expect(await keys.isOn(page.getByRole('menuitem', { name: words.score.menu.teach }))).toBe(true);
  await keys.press('Enter');
  await page.getByRole('navigation', { name: words.lesson.segments }).waitFor();

  const { lesson } = present(lessonsOf(await readCourse())[0], 'lesson 1');
  const readLesson = () => readView<LessonView>(page, `/api/lessons/${lesson}`);
  const { segments } = await readLesson();
  const work = segments.filter((segment) => segment.kind === 'work');
  const [learnt, carried] = [present(work[0], 'work'), present(work[1], 'more work')];
  const shows = (segment: LessonView['segments'][number]) =>
    page.getByRole('heading', { level: 2, name: segment.title }).waitFor();
  await shows(present(segments[0], 'settling in'));
  for (const segment of segments) {
    await shows(segment);
    if (segment.id === learnt.id) {
      await keys.press('3');
      await keys.press('n');
      await keys.type('Even from the second try.');
      await keys.press('Escape');
      await keys.press('m');
    } else if (segment.id === carried.id) {
      await keys.press('c');
      const half = button(words.lesson.share(0.5));
      await half.waitFor();
      // Taken back, nothing is asked of it any more.
      await keys.press('Control+z');
      await half.waitFor({ state: 'hidden' });
      await keys.press('c');
      await half.waitFor();
      await keys.tabTo(half);
      // The question takes no answer in its first moment, so that one touch does not give two.
      await expect
        .poll(
          async () => {
            if ((await half.count()) > 0) await keys.press('Enter');
            return half.count();
          },
          { timeout: 20_000, interval: 100 },
        )
        .toBe(0);
    } else if (segment !== segments.at(-1)) await keys.press('ArrowRight');
  }
  await keys.press('l');
  await keys.type('Bring the other stand.');
  await keys.press('Escape');
  const taught = await untilView(
    readLesson,
    (view) => view.note === 'Bring the other stand.' && view.segments.some((s) => s.outcome === 'partly'),
    'all of it is saved',
  );
  const of = (id: string) => taught.segments.find((s) => s.id === id);
  expect(of(learnt.id)).toMatchObject({ outcome: 'finished', note: 'Even from the second try.' });
  expect(of(learnt.id)?.skills[0]?.here?.level).toBe(3);
  expect(of(carried.id)).toMatchObject({ outcome: 'partly' });
});

tell('close the lesson and see what moved', async () => {
  const { closing } = words.lesson;
  await keys.act(link(words.lesson.toClose));
  await heading(closing.review);
  const took = page
    .getByRole('group')
    .filter({ has: button(closing.more) })
    .first()
    .getByRole('textbox');
  const before = Number(await took.inputValue());
  await keys.tabTo(took);
  await keys.press('ArrowUp');
  expect(await took.inputValue()).toBe(String(before + 1));
  await keys.act(button(closing.do));
  await heading(closing.moved);
  // The button that closed it is gone; the title has the focus and says so.
  expect(await page.evaluate(() => document.activeElement?.textContent)).toBe(closing.doneTitle(name));
  await keys.act(link(closing.toCourse));
  await score().waitFor();
  const course = await untilView(readCourse, (now) => lessonsOf(now)[0]?.status === 'taught', 'it is taught');
  expect(course.attendance.taught).toBe(1);
});

tell('write a unit with a new skill and a check', async () => {
  await keys.act(link(words.frame.units));
  await keys.act(link(words.units.create));
  const say = words.units.editor;
  await heading(say.newTitle);
  await keys.write(page.getByLabel(say.title, { exact: true }).first(), 'A note to its end');
  await keys.write(page.getByLabel(say.goal), 'end a long note on purpose');
  await keys.act(page.getByRole('checkbox', { name: words.stageNames.beginner, exact: true }), 'Space');
  const activities = page.getByRole('region', { name: say.activities, exact: true });
  await keys.act(button(say.addActivity, activities));
  // The new activity opens on its title.
  const title = activities.getByLabel(say.activityTitle, { exact: true });
  await title.waitFor();
  await keys.write(title, 'One long line');
  await keys.write(activities.getByLabel(say.howTo), 'One note from nothing to nothing.');
  for (const [which, minutes] of [
    ['shortest', '6'],
    ['usual', '24'],
    ['longest', '30'],
  ] as const)
    await keys.write(field(say[which], activities), minutes);
  const skill = 'lets a note ring to its end';
  await keys.write(activities.getByRole('combobox', { name: say.develops }), skill);
  const create = page.getByRole('option', { name: say.newSkill(skill), exact: true });
  await create.waitFor();
  for (let step = 0; step < 10 && (await create.getAttribute('aria-selected')) !== 'true'; step++)
    await keys.press('ArrowDown');
  await keys.press('Enter');
  const dialog = page.getByRole('dialog', { name: words.units.skills.addTitle });
  await keys.act(button(words.units.skills.form.addAction, dialog));
  await dialog.waitFor({ state: 'hidden' });
  await activities.getByRole('list', { name: say.develops }).getByText(skill).waitFor();
  const checks = page.getByRole('region', { name: say.checks, exact: true });
  await keys.act(button(say.addCheck, checks));
  await keys.write(checks.getByLabel(say.lookFor), 'The end was meant.');
  await keys.act(button(say.saveNew));
  await heading('A note to its end');
  const { units } = await readView<{ units: readonly UnitRow[] }>(page, '/api/units');
  expect(units.find((unit) => unit.title === 'A note to its end')).toMatchObject({ usualMinutes: 24 });
});

tell('import students from pasted rows, one of them mended', async () => {
  await keys.act(link(words.frame.students));
  await keys.act(link(words.students.importing));
  const say = words.studentsImport;
  await keys.write(
    page.getByLabel(say.paste),
    'Name;Age;Instrument\nRui Ferro;10;trumpetto\nPetra Lund;41;cello',
  );
  await keys.act(button(say.read));
  await page.getByText(say.summary(1, 1)).waitFor();
  await keys.write(page.getByRole('textbox', { name: say.cell('Instrument', 2) }), 'trumpet');
  await keys.press('Enter');
  await page.getByText(say.summary(2, 0)).waitFor();
  await keys.act(button(say.action(2)));
  const first = words.students.first;
  await heading(first.title);
  const petra = page.getByRole('group', { name: 'Petra Lund' });
  await keys.choose(petra.getByLabel(first.day), formatWeekday(2, 'en-GB'));
  await keys.writeTime(petra.getByLabel(first.time), '09:15' as PlainTime);
  await keys.choose(petra.getByLabel(first.unit), 'Five');
  await keys.act(button(first.action(1)));
  await page
    .getByRole('status')
    .filter({ hasText: words.students.count(3) })
    .waitFor();
});

tell('a text that is refused leaves the keys where they were', async () => {
  await keys.act(link(words.frame.units));
  const say = words.units.file;
  await keys.act(button(words.units.takeIn));
  await keys.write(page.getByLabel(say.paste), 'no unit at all');
  await keys.act(button(say.look));
  await page.getByRole('dialog').getByRole('alert').waitFor();
  await settle(page);
  expect(await keys.isOn(button(say.look))).toBe(true);
  await keys.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'hidden' });
  await keys.act(link(words.frame.students));
});

tell('cancel a lesson from the table, and take it back', async () => {
  await keys.act(link(name));
  await score().waitFor();
  await keys.tabTo(page.getByRole('radio', { name: words.score.asScore }));
  await keys.press('ArrowRight');
  await page.getByRole('table').waitFor();
  await keys.act(button(words.score.menu.actions(words.score.lesson(3))));
  const cancel = page.getByRole('menuitem', { name: words.score.menu.cancel, exact: true });
  await cancel.waitFor();
  for (let step = 0; step < 10 && !(await keys.isOn(cancel)); step++) await keys.press('ArrowDown');
  await keys.press('Enter');
  // The form opens on the reason.
  await page.getByRole('dialog').waitFor();
  await keys.write(page.getByRole('dialog').getByLabel(words.score.dialog.reason), 'Teacher away');
  await keys.press('Enter');
  const third = (status: string) => (course: CourseView) => lessonsOf(course)[2]?.status === status;
  await untilView(readCourse, third('cancelled'), 'it is cancelled');
  await keys.press('ControlOrMeta+z');
  await untilView(readCourse, third('planned'), 'it is back');
});

tell('export everything', async () => {
  await keys.act(link(words.frame.settings));
  await heading(words.settings.title);
  const downloading = page.waitForEvent('download');
  await keys.act(link(words.settings.keep.exportAction));
  expect(await (await downloading).failure()).toBeNull();
  // But for the file that was refused.
  expect(watched.faults(/status of 422/)).toEqual([]);
});
