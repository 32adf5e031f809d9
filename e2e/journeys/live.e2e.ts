// What is changed elsewhere while a page is being read or its live line is not open yet is shown all the same. The gaps, which
// are milliseconds on one machine, are held open.

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import { launchBrowser, openPage, openWindow, type WatchedPage } from '../harness/browser.ts';
import { hold } from '../harness/hold.ts';
import { addStudent } from '../harness/open-course.ts';
import { foundSmallStudio } from '../harness/small-studio.ts';
import { createStory } from '../harness/story.ts';
import { createDataFolder, type StudioProcess, startAgain, startStudio } from '../harness/studio-process.ts';

const folder = createDataFolder();
let studio: StudioProcess;
let browser: Browser;
/** Where the changes are made. */
let elsewhere: WatchedPage;

beforeAll(async () => {
  [studio, browser] = await Promise.all([startStudio(folder.path), launchBrowser()]);
  elsewhere = await openPage(browser);
  await elsewhere.page.goto(studio.link);
  await foundSmallStudio(elsewhere.page);
});
afterAll(async () => {
  await browser?.close();
  await studio?.stop();
  folder.remove();
});

const tell = createStory(() => browser?.contexts().flatMap((context) => context.pages()) ?? []);

const addElsewhere = (name: string) => addStudent(elsewhere.page, name);

const named = (page: Page, name: string) => page.getByText(name).first();

tell('a change between the reading of a page and the opening of its line is shown', async () => {
  const { page, faults } = await openWindow(elsewhere.context);
  const line = await hold(page, '**/api/live', 'before it is asked');
  await page.goto(`${studio.address}/students`);
  await Promise.all([named(page, 'Nora Quell').waitFor(), line.asked]);
  await addElsewhere('Ada Gap');
  expect(await page.getByText('Ada Gap').count()).toBe(0);
  line.letGo();
  await named(page, 'Ada Gap').waitFor({ timeout: 10_000 });
  expect(faults()).toEqual([]);
  await page.close();
});

tell('a page that was opened behind another shows what was changed until it came to the front', async () => {
  const { page } = await openWindow(elsewhere.context);
  await page.addInitScript(() =>
    Object.defineProperty(document, 'visibilityState', { configurable: true, get: () => 'hidden' }),
  );
  await page.goto(`${studio.address}/students`);
  await named(page, 'Ada Gap').waitFor();
  await addElsewhere('Bo Behind');
  await page.evaluate(() => {
    Object.defineProperty(document, 'visibilityState', { configurable: true, get: () => 'visible' });
    document.dispatchEvent(new Event('visibilitychange'));
  });
  await named(page, 'Bo Behind').waitFor({ timeout: 10_000 });
  await page.close();
});

tell(
  'a reading that was begun before a change and arrives after the line told of it is asked for again',
  async () => {
    const { page } = await openWindow(elsewhere.context);
    await page.goto(`${studio.address}/units`);
    await page.getByRole('heading', { level: 1 }).waitFor();
    const reading = await hold(page, '**/api/students', 'after it is answered');
    // Within the page, so that its line stays open.
    await page.getByRole('link', { name: 'Students' }).first().click();
    await reading.asked;
    const heard = page.waitForRequest('**/api/studio');
    await addElsewhere('Cy Late');
    await heard;
    reading.letGo();
    await named(page, 'Cy Late').waitFor({ timeout: 10_000 });
    await page.close();
  },
);

tell('a change after a line was lost and before it is open again is shown', async () => {
  const { page } = await openWindow(elsewhere.context);
  await page.goto(`${studio.address}/students`);
  await named(page, 'Cy Late').waitFor();
  const line = await hold(page, '**/api/live', 'before it is asked');
  await studio.stop();
  studio = await startAgain(studio);
  await line.asked;
  await addElsewhere('Di Again');
  expect(await page.getByText('Di Again').count()).toBe(0);
  line.letGo();
  await named(page, 'Di Again').waitFor({ timeout: 10_000 });
  await page.close();
});
