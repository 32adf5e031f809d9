// A teacher who hears the screen: where the focus is after each deed, and what is said of it. Each test names its success
// criterion of WCAG 2.2 (W3C Recommendation, 12 December 2024).

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { CourseView, DayView, LessonView, StudentsView } from '#contract';
import { present } from '#core';
import { words } from '../../src/web/words/index.ts';
import { lessonsOf, readStudio, readView } from '../harness/api.ts';
import { launchBrowser, openPage, patience, type WatchedPage } from '../harness/browser.ts';
import { createKeyboard } from '../harness/keyboard.ts';
import { type Listener, listenTo } from '../harness/listener.ts';
import { createDataFolder, type StudioProcess, startStudio } from '../harness/studio-process.ts';
import { createFrame } from '../page-models/frame.ts';
import { createWelcomePage } from '../page-models/welcome-page.ts';

const folder = createDataFolder();
let studio: StudioProcess;
let browser: Browser;
let watched: WatchedPage;
let page: Page;
let ears: Listener;
let keys: ReturnType<typeof createKeyboard>;

beforeAll(async () => {
  [studio, browser] = await Promise.all([startStudio(folder.path), launchBrowser()]);
  watched = await openPage(browser, { reducedMotion: 'reduce' });
  page = watched.page;
  ears = await listenTo(page);
  keys = createKeyboard(page);
  await createWelcomePage(page).open(studio.link);
  await createWelcomePage(page).lookRound();
});
afterAll(async () => {
  await browser?.close();
  await studio?.stop();
  folder.remove();
});

const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true });
const messages = () => createFrame(page).messages;
const go = async (path: string) => {
  await page.goto(new URL(path, page.url()).href);
  await page.getByRole('main').getByRole('heading', { level: 1 }).waitFor();
  await page.getByText(words.frame.loading, { exact: true }).waitFor({ state: 'detached' });
  await ears.heard();
};
/** Goes to a control and presses it, as a screen reader does. */
const press = async (control: ReturnType<typeof button>, key = 'Enter') => {
  await control.first().focus();
  await page.keyboard.press(key);
};
const focused = () =>
  page.evaluate(() => {
    const at = document.activeElement;
    return `${at?.tagName} ${at?.getAttribute('aria-label') ?? at?.textContent?.trim()}`;
  });
/** Waits until this is said; returns all that was said since the last time. */
const says = async (wanted: RegExp) => {
  const all: string[] = [];
  await expect
    .poll(
      async () => {
        all.push(...(await ears.heard()));
        return all.join('\n');
      },
      { timeout: patience },
    )
    .toMatch(wanted);
  return all;
};

/** The course with the most to tell. */
async function readBusiest(): Promise<CourseView> {
  const { students } = await readView<StudentsView>(page, '/api/students');
  const courses = await Promise.all(
    students
      .flatMap((student) => student.courses)
      .map((id) => readView<CourseView>(page, `/api/courses/${id}`)),
  );
  const single = courses.filter((course) => course.learner.student !== null);
  return present(single.toSorted((a, b) => b.moves.length - a.moves.length)[0], 'a course');
}

test('each place begins at its title (2.4.2, 2.4.3)', async () => {
  await go('/');
  for (const place of ['students', 'units', 'materials', 'term', 'settings'] as const) {
    await press(page.getByRole('link', { name: words.frame[place], exact: true }));
    await expect.poll(focused).toBe(`H1 ${words.frame[place]}`);
    expect(await page.title()).toContain(words.frame[place]);
  }
});

test('a day that is turned to is said, and the turning goes on (4.1.3)', async () => {
  await go('/');
  await press(button(words.day.next));
  await expect.poll(() => page.title()).not.toBe('');
  await says(/\d{4}/);
  expect(await focused()).toContain(words.day.next);
});

test('a message waits for who is at it, and its Undo leads back (2.2.1, 2.4.3)', async () => {
  await go('/');
  const { today } = await readStudio(page);
  const { lessons } = await readView<DayView>(page, `/api/days/${today}`);
  const { name } = present(
    lessons.find((lesson) => lesson.status === 'planned')?.learner ?? null,
    'a lesson',
  );
  await press(button(words.day.changeOf(name)));
  await page.getByRole('menuitem', { name: words.day.cancel }).focus();
  await keys.press('Enter');
  const dialog = page.getByRole('dialog');
  await press(dialog.getByRole('button', { name: words.day.dialog.cancelDo, exact: true }));
  await dialog.waitFor({ state: 'hidden' });
  await expect.poll(focused).toContain(words.day.changeOf(name));

  const undo = messages().getByRole('button', { name: words.frame.undo, exact: true });
  await undo.focus();
  // Longer than a message stands by itself.
  await page.waitForTimeout(10_000);
  expect(await keys.isOn(undo)).toBe(true);
  await keys.press('Enter');
  await expect.poll(focused).toContain(words.day.changeOf(name));
});

test('what goes away hands the focus on (2.4.3)', async () => {
  const course = await readBusiest();
  await go(`/student/${course.learner.student}?course=${course.id}`);
  await press(button(words.score.moves.looked));
  await button(words.score.moves.looked).waitFor({ state: 'hidden' });
  await expect.poll(focused).toBe(`H1 ${course.learner.name}`);

  await go('/term');
  const remove = page.getByRole('list').getByRole('button', { name: /^Remove / });
  const before = await remove.count();
  await press(remove.last());
  // only what the studio has taken can be taken back
  await expect.poll(() => remove.count()).toBe(before - 1);
  await expect.poll(focused).toMatch(/^(H2|BUTTON) /);
  await keys.press('ControlOrMeta+z');
  await messages()
    .getByText(/Took back/)
    .waitFor();
  await expect.poll(focused).toMatch(/^(H2|BUTTON) /);
});

test('What if… opens at its title, and leaving it loses nothing (2.4.3)', async () => {
  const course = await readBusiest();
  await go(`/student/${course.learner.student}?course=${course.id}`);
  await press(button(words.student.whatIf.open));
  await expect.poll(focused).toBe(`H2 ${words.student.whatIf.title}`);
  await expect.poll(() => button(words.student.whatIf.open).getAttribute('aria-expanded')).toBe('true');
  await press(button(words.student.whatIf.leave));
  await expect.poll(focused).toBe(`H1 ${course.learner.name}`);
});

test('what moved in a course is said once, and the focus stays in its lesson (4.1.3, 2.4.3)', async () => {
  const course = await readBusiest();
  await go(`/student/${course.learner.student}?course=${course.id}`);
  const bar = present(
    lessonsOf(course).findLast(
      ({ status, segments }) => status === 'planned' && segments.some((s) => s.kind === 'work'),
    ) ?? null,
    'a planned lesson',
  );
  const segment = present(bar.segments.findLast((s) => s.kind === 'work' && !s.pinned) ?? null, 'work');
  await page.locator(`[data-id="${segment.id}"]`).focus();
  await keys.press('s');
  await says(/^Moved: /m);
  const at = await page.evaluate(() => document.activeElement?.getAttribute('data-id') ?? '');
  const after = lessonsOf(await readView<CourseView>(page, `/api/courses/${course.id}`));
  const there = present(after.find((one) => one.lesson === bar.lesson) ?? null, 'the lesson');
  expect([there.lesson, ...there.segments.map((one) => one.id)]).toContain(at);
});

test('a lesson says where it is; a note is saved in one word (4.1.3)', async () => {
  const { today } = await readStudio(page);
  const { lessons } = await readView<DayView>(page, `/api/days/${today}`);
  const { id } = present(lessons.find((one) => one.status === 'planned') ?? null, 'a lesson');
  const lesson = await readView<LessonView>(page, `/api/lessons/${id}`);
  await go(`/lesson/${id}`);
  await page.getByLabel(words.lesson.lessonNote).focus();
  await page.keyboard.type('A good tone, a slow start, more long notes.', { delay: 40 });
  expect(await says(new RegExp(words.frame.saved))).toHaveLength(1);

  const [first, second] = lesson.segments;
  await press(button(words.lesson.next));
  await says(new RegExp(`${second?.title}`, 'i'));
  await press(button(words.lesson.previous));
  await says(new RegExp(`${first?.title}`, 'i'));
  await press(button(words.lesson.moveOn));
  await says(new RegExp(`${words.lesson.outcome.finished}.*${second?.title}`, 'i'));
});

test('a closed lesson says how much it moved (4.1.3)', async () => {
  const { today } = await readStudio(page);
  const { lessons } = await readView<DayView>(page, `/api/days/${today}`);
  const { id } = present(lessons.find((one) => one.status === 'planned') ?? null, 'a lesson');
  await go(`/lesson/${id}/close`);
  await press(button(words.lesson.closing.do));
  await expect.poll(focused).toMatch(/^H1 /);
  await says(/moved in the course/);
});

test('a sheet that is drawn anew says so (4.1.3)', async () => {
  await go('/materials');
  await page.locator('.sheet-view[aria-busy="false"] svg').first().waitFor();
  await says(/: drawn\./);
  await press(button(words.materials.another));
  await says(/: drawn\./);
});
