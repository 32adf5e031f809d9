// Two windows on one course: what one changes is never written over by the other without a word, and what is typed in
// both is kept.

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import type { CourseView, LessonView } from '#contract';
import { present } from '#core';
import { words } from '../../src/web/words/index.ts';
import { lessonsOf, readView, untilView } from '../harness/api.ts';
import { launchBrowser, openPage, openWindow, type WatchedPage } from '../harness/browser.ts';
import { addStudent } from '../harness/open-course.ts';
import { foundSmallStudio, type SmallStudio } from '../harness/small-studio.ts';
import { createStory } from '../harness/story.ts';
import { createDataFolder, type StudioProcess, startStudio } from '../harness/studio-process.ts';
import { createFrame } from '../page-models/frame.ts';
import { createLessonPage } from '../page-models/lesson-page.ts';
import { createStudentPage } from '../page-models/student-page.ts';

const folder = createDataFolder();
let studio: StudioProcess;
let browser: Browser;
let one: WatchedPage;
let other: WatchedPage;
let small: SmallStudio;

beforeAll(async () => {
  [studio, browser] = await Promise.all([startStudio(folder.path), launchBrowser()]);
  one = await openPage(browser);
  await one.page.goto(studio.link);
  small = await foundSmallStudio(one.page);
});
afterAll(async () => {
  await browser?.close();
  await studio?.stop();
  folder.remove();
});

const tell = createStory(() => browser?.contexts().flatMap((context) => context.pages()) ?? []);
const readCourse = () => readView<CourseView>(one.page, `/api/courses/${small.course}`);
const firstLesson = async () => present(lessonsOf(await readCourse())[0], 'the first lesson');

tell('a stale change is refused in words, and nothing is overwritten', async () => {
  other = await openWindow(one.context);
  // The other window does not hear what happens elsewhere, as behind a network that dropped its live channel.
  await other.page.route('**/api/live', (route) => route.abort());
  for (const { page } of [one, other]) {
    await page.goto(`${studio.address}/student/${small.student}`);
    await createStudentPage(page).showTable();
  }
  const work = present(
    (await firstLesson()).segments.find((segment) => segment.kind === 'work'),
    'planned work',
  );
  await createStudentPage(one.page).act(work.title, words.score.menu.pin);
  const pinned = await untilView(
    readCourse,
    (course) => lessonsOf(course)[0]?.segments.some((s) => s.key === work.key && s.pinned) ?? false,
    'the segment is pinned',
  );

  await createStudentPage(other.page).act(work.title, words.score.menu.setAside);
  const { messages } = createFrame(other.page);
  const newest = messages.getByRole('button', { name: words.frame.lookAtNewest });
  await newest.waitFor();
  const said = await messages.innerText();
  expect(said).toMatch(/changed in another window/);
  expect(said).toMatch(/Nothing was saved/);
  // It names what the other hand did.
  expect(said).toContain(work.title);
  expect(await readCourse()).toEqual(pinned);

  // The newest shows the pin; the same deed is taken now.
  await newest.click();
  const line = other.page.getByRole('row').filter({ hasText: work.title }).first();
  await line.filter({ hasText: words.score.pinned }).waitFor();
  await createStudentPage(other.page).act(work.title, words.score.menu.setAside);
  const after = await untilView(readCourse, (course) => course.setAside.length > 0, 'it is set aside');
  expect(after.setAside.map((aside) => aside.title)).toContain(work.title);
  await createFrame(other.page).undoFromMessage();
  await untilView(readCourse, (course) => course.setAside.length === 0, 'it is taken back');
});

tell('a window that hears of it shows the change by itself', async () => {
  await other.page.unroute('**/api/live');
  await other.page.reload();
  await createStudentPage(other.page).score.waitFor();
  await createStudentPage(one.page).cancelLesson(words.score.lesson(3), 'Storm');
  await createStudentPage(other.page).showTable();
  await other.page.getByRole('rowheader').filter({ hasText: 'Storm' }).waitFor();
  await createFrame(one.page).undoFromMessage();
  await other.page.getByRole('rowheader').filter({ hasText: 'Storm' }).waitFor({ state: 'detached' });
});

/** Words typed by two hands at the same time, in turns. */
async function typeInTurns(hands: readonly (readonly [WatchedPage, string])[]): Promise<void> {
  for (const [{ page }] of hands) await createLessonPage(page).note.click();
  const longest = Math.max(...hands.map(([, text]) => text.length));
  for (let at = 0; at < longest; at += 5)
    for (const [{ page }, text] of hands)
      await createLessonPage(page).note.pressSequentially(text.slice(at, at + 5));
}

for (const place of ['two windows of one browser', 'two browsers'] as const)
  tell(`notes typed in ${place} are both kept, each once`, async () => {
    if (place === 'two browsers') {
      const cookies = await one.context.cookies();
      other = await openPage(browser);
      await other.context.addCookies(cookies);
    }
    const { lesson } = present(lessonsOf(await readCourse())[place === 'two browsers' ? 1 : 0], 'a lesson');
    for (const { page } of [one, other]) {
      await page.goto(`${studio.address}/lesson/${lesson}`);
      await createLessonPage(page).note.waitFor();
    }
    const texts = ['Left window: tone is clearer now.', 'Right window: bring the other reed.'] as const;
    await typeInTurns([
      [one, texts[0]],
      [other, texts[1]],
    ]);
    for (const { page } of [one, other]) {
      await createLessonPage(page).note.press('Escape');
      await createFrame(page).waitUntilSaved();
    }
    const note = await untilView(
      async () => (await readView<LessonView>(one.page, `/api/lessons/${lesson}`)).note,
      (now) => texts.every((text) => now.includes(text)),
      'both notes are kept',
    );
    for (const text of texts) expect(note.split(text).length - 1, text).toBe(1);
    expect(note.replace(texts[0], '').replace(texts[1], '').trim()).toBe('');
    // Both windows come to show both.
    for (const { page } of [one, other])
      await expect.poll(() => createLessonPage(page).note.inputValue(), { timeout: 30_000 }).toBe(note);
  });

tell('what waits in one window is not sent by another that opens, and all of it arrives once', async () => {
  const { lesson } = present(lessonsOf(await readCourse())[2], 'a lesson');
  await one.page.goto(`${studio.address}/lesson/${lesson}`);
  const note = createLessonPage(one.page).note;
  await note.click();
  // The first window's changes do not get through; the second one's would.
  await one.page.route('**/api/commands', (route) => route.abort());
  // In one stroke each: hands that are slow, on a busy machine, would see one half sent before the other.
  await one.page.keyboard.insertText('First words');
  await one.page.getByText(words.frame.waiting(1)).waitFor();
  await one.page.keyboard.insertText(', and more');
  await one.page.getByText(words.frame.waiting(2)).waitFor();
  other = await openWindow(one.context);
  await other.page.goto(`${studio.address}/lesson/${lesson}`);
  await createLessonPage(other.page).note.waitFor();
  await createFrame(other.page).waitUntilSaved();
  await note.pressSequentially(', to the very end.');
  await note.press('Escape');
  await one.page.unroute('**/api/commands');
  await createFrame(one.page).waitUntilSaved();
  const all = 'First words, and more, to the very end.';
  const noteNow = async () => (await readView<LessonView>(one.page, `/api/lessons/${lesson}`)).note;
  expect(await noteNow()).toBe(all);
  await expect.poll(() => createLessonPage(other.page).note.inputValue(), { timeout: 30_000 }).toBe(all);

  // A window that closes leaves what it could not send to those that stay.
  await other.page.route('**/api/commands', (route) => route.abort());
  const left = createLessonPage(other.page).note;
  await left.click();
  await left.press('End');
  await other.page.keyboard.insertText(' And this from a window that closed.');
  await other.page.getByText(words.frame.waiting(1)).waitFor();
  // Nor does it get through while the window closes.
  await other.page.evaluate(() => {
    window.fetch = () => new Promise(() => {});
    navigator.sendBeacon = () => false;
  });
  await other.page.close();
  await expect.poll(noteNow, { timeout: 30_000 }).toBe(`${all} And this from a window that closed.`);
});

tell('where a browser has no locks, what a window that closed left is sent by the next, once', async () => {
  // As over plain http from another device.
  const cookies = await one.context.cookies();
  const first = await openPage(browser);
  await first.context.addCookies(cookies);
  await first.context.addInitScript(() =>
    Object.defineProperty(Navigator.prototype, 'locks', { get: () => undefined }),
  );
  const { lesson } = present(lessonsOf(await readCourse())[3], 'a lesson');
  const open = async ({ page }: WatchedPage) => {
    await page.goto(`${studio.address}/lesson/${lesson}`);
    await createLessonPage(page).note.waitFor();
    expect(await page.evaluate(() => navigator.locks)).toBeUndefined();
  };
  await open(first);
  await first.page.route('**/api/commands', (route) => route.abort());
  const note = createLessonPage(first.page).note;
  await note.click();
  await first.page.keyboard.insertText('Kept on the tablet');
  await first.page.getByText(words.frame.waiting(1)).waitFor();
  const noteNow = async () => (await readView<LessonView>(one.page, `/api/lessons/${lesson}`)).note;

  // While it is open it is left to go on.
  const second = await openWindow(first.context);
  await open(second);
  await createFrame(second.page).waitUntilSaved();
  await note.click();
  await note.press('End');
  await first.page.keyboard.insertText(', to the end.');
  await first.page.getByText(words.frame.waiting(2)).waitFor();
  await first.page.evaluate(() => {
    window.fetch = () => new Promise(() => {});
  });
  await first.page.close();
  const third = await openWindow(first.context);
  await open(third);
  await expect.poll(noteNow, { timeout: 30_000 }).toBe('Kept on the tablet, to the end.');
  await expect
    .poll(() => createLessonPage(third.page).note.inputValue(), { timeout: 30_000 })
    .toBe('Kept on the tablet, to the end.');
  expect(third.faults()).toEqual([]);
  await first.context.close();
});

/** Tells a page that it is in front or behind, as the browser does; a driven browser shows all of them. */
const putInFront = (page: Page, isInFront: boolean) =>
  page.evaluate(
    (state) => {
      Object.defineProperty(document, 'visibilityState', { configurable: true, get: () => state });
      document.dispatchEvent(new Event('visibilitychange'));
    },
    isInFront ? 'visible' : 'hidden',
  );

tell(
  'more windows than a browser has connections can be open, and one that comes to the front catches up',
  async () => {
    const address = `${studio.address}/students`;
    const windows = [one];
    for (let nth = 0; nth < 7; nth++) {
      await putInFront(present(windows.at(-1), 'a window').page, false);
      const next = await openWindow(one.context);
      await next.page.goto(address);
      await next.page.getByRole('heading', { level: 1 }).waitFor();
      windows.push(next);
    }
    const [behind, front] = [present(windows[1], 'a window').page, present(windows.at(-1), 'a window').page];
    await addStudent(front, 'Zoe Harbour');
    await front.getByText('Zoe Harbour').first().waitFor();
    expect(await behind.getByText('Zoe Harbour').count()).toBe(0);
    await putInFront(behind, true);
    await behind.getByText('Zoe Harbour').first().waitFor();
    await addStudent(front, 'Yan Harbour');
    await behind.getByText('Yan Harbour').first().waitFor();
    for (const { page } of windows.slice(1)) await page.close();
  },
);

tell('nothing went wrong on the pages', async () => {
  expect(one.faults(/ERR_FAILED/)).toEqual([]);
  expect(other.faults(/api\/live|ERR_FAILED|409/)).toEqual([]);
});
