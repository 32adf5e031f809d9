// The page is loaded again while there is no server: Levare says so, keeps what was written, and goes on by itself.

import { Agent, get } from 'node:http';
import { setTimeout as wait } from 'node:timers/promises';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import type { LessonView } from '#contract';
import { present } from '#core';
import { words } from '../../src/web/words/index.ts';
import { lessonsOf, readCourseOf, readView, untilView } from '../harness/api.ts';
import { findWithAxe } from '../harness/axe.ts';
import { launchBrowser, openPage, type WatchedPage } from '../harness/browser.ts';
import { foundSmallStudio, type SmallStudio } from '../harness/small-studio.ts';
import { createStory } from '../harness/story.ts';
import { createDataFolder, type StudioProcess, startAgain, startStudio } from '../harness/studio-process.ts';
import { createLessonPage } from '../page-models/lesson-page.ts';

const folder = createDataFolder();
let studio: StudioProcess;
let browser: Browser;
let watched: WatchedPage;
let small: SmallStudio;

beforeAll(async () => {
  [studio, browser] = await Promise.all([startStudio(folder.path), launchBrowser()]);
  watched = await openPage(browser);
  await watched.page.goto(studio.link);
  small = await foundSmallStudio(watched.page);
});
afterAll(async () => {
  await browser?.close();
  await studio?.stop();
  folder.remove();
});

const tell = createStory(() => [watched.page]);

tell('a note written without a server outlives the page, and the page comes back without one', async () => {
  const { page } = watched;
  const { lesson } = present(lessonsOf(await readCourseOf(page, small.name))[0], 'a lesson');
  await page.goto(`${studio.address}/lesson/${lesson}`);
  const { note } = createLessonPage(page);
  await note.waitFor();
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));

  await studio.kill();
  await note.fill('Written in the dark.');
  await page.getByRole('status').filter({ hasText: /wait/ }).first().waitFor();
  await page.reload();
  await page.getByRole('heading', { name: words.frame.away.title }).waitFor();
  await page.getByText(words.frame.waiting(1)).waitFor();
  expect(await findWithAxe(page)).toEqual([]);

  studio = await startAgain(studio);
  await note.waitFor();
  await expect.poll(() => note.inputValue()).toBe('Written in the dark.');
  await untilView(
    async () => (await readView<LessonView>(page, `/api/lessons/${lesson}`)).note,
    (text) => text === 'Written in the dark.',
    'the studio has the note, once',
  );
  expect(watched.faults(/ERR_CONNECTION|ERR_EMPTY_RESPONSE|ERR_INCOMPLETE_CHUNKED|ERR_SOCKET/)).toEqual([]);
});

tell('what the server has anew is never hidden behind the page that was kept', async () => {
  const { page } = watched;
  const kept = await page.evaluate(async () => (await (await caches.match('/'))?.text()) ?? '');
  const answer = await page.goto(studio.address);
  expect(kept).toContain('<div id="root">');
  // Asked of the server each time: the worker passed the answer on.
  expect(answer?.fromServiceWorker()).toBe(true);
  expect(await answer?.text()).toBe(kept);
  expect(answer?.headers()['cache-control']).toBe('no-cache');
});

tell('a screen not seen before opens while there is no server', async () => {
  const { page } = watched;
  const { lesson } = present(lessonsOf(await readCourseOf(page, small.name))[0], 'a lesson');
  await page.goto(`${studio.address}/lesson/${lesson}`);
  await createLessonPage(page).note.waitFor();
  // All screens are fetched in a quiet moment after the first.
  await page.waitForFunction(() =>
    performance.getEntriesByType('resource').some(({ name }) => /close-screen.*\.css/.test(name)),
  );
  await studio.kill();
  await page.getByRole('link', { name: words.lesson.close }).click();
  await page.getByRole('heading', { name: words.lesson.closing.review }).waitFor();
  studio = await startAgain(studio);
});

tell('a browser that did not come by the link is told so, and rests', async () => {
  const stranger = await openPage(browser);
  let asked = 0;
  stranger.page.on('request', (request) => {
    if (request.url().endsWith('/api/studio')) asked++;
  });
  await stranger.page.goto(studio.address);
  await stranger.page.getByRole('heading', { name: words.frame.notSignedIn.title }).waitFor();
  const before = asked;
  await stranger.page.waitForTimeout(1_000);
  expect(asked - before).toBeLessThanOrEqual(1);
  expect(await findWithAxe(stranger.page)).toEqual([]);
  await stranger.context.close();
});

tell(
  'requests that come after a rest, while the machine is too busy, are answered late and not cut off',
  async () => {
    const agent = new Agent({ keepAlive: true });
    const ask = () =>
      new Promise<number | string>((answer) => {
        get(studio.address, { agent }, (reply) => {
          reply.resume().on('end', () => answer(reply.statusCode ?? 0));
        }).on('error', ({ message }) => answer(message));
      });
    const askAll = () => Promise.all(Array.from({ length: 40 }, ask));
    expect(new Set(await askAll())).toEqual(new Set([200]));
    studio.sleep();
    // Node lets go of a connection that rested for five seconds, whatever came on it meanwhile.
    await wait(6500);
    const late = askAll();
    await wait(300);
    studio.wake();
    expect(new Set(await late)).toEqual(new Set([200]));
    agent.destroy();
  },
);
