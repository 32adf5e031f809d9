// A backup is put back while a browser is open on the studio: what waits there arrives, and nothing that the backup does not
// hold is shown on, or written back, without a word.

import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import type { LessonView } from '#contract';
import { type Id, present } from '#core';
import { words } from '../../src/web/words/index.ts';
import { lessonsOf, readCourseOf, readView, sendCommand, untilView } from '../harness/api.ts';
import { launchBrowser, openPage, patience, type WatchedPage } from '../harness/browser.ts';
import { foundSmallStudio } from '../harness/small-studio.ts';
import { createStory } from '../harness/story.ts';
import {
  createDataFolder,
  runLevare,
  type StudioProcess,
  startAgain,
  startStudio,
} from '../harness/studio-process.ts';
import { createFrame } from '../page-models/frame.ts';
import { createLessonPage } from '../page-models/lesson-page.ts';

const folder = createDataFolder();
let studio: StudioProcess;
let browser: Browser;
let watched: WatchedPage;
let lesson: Id<'lesson'>;

beforeAll(async () => {
  [studio, browser] = await Promise.all([startStudio(folder.path), launchBrowser()]);
  watched = await openPage(browser);
  await watched.page.goto(studio.link);
  const { name } = await foundSmallStudio(watched.page);
  ({ lesson } = present(lessonsOf(await readCourseOf(watched.page, name))[0], 'a lesson'));
});
afterAll(async () => {
  await browser?.close();
  await studio?.stop();
  folder.remove();
});

const tell = createStory(() => [watched.page]);
const readLesson = () => readView<LessonView>(watched.page, `/api/lessons/${lesson}`);
/** Closes Levare, and puts the first backup back; `meanwhile` happens in the open page before that. */
async function putBack(meanwhile: () => Promise<void>): Promise<void> {
  await studio.stop();
  await meanwhile();
  const backup = present(/levare-\S+\.sqlite/.exec(runLevare(folder.path, 'restore'))?.[0], 'a backup');
  runLevare(folder.path, 'restore', backup);
  studio = await startAgain(studio);
}

tell('what was typed while it was put back is added to what the backup holds', async () => {
  const { page } = watched;
  const { note } = createLessonPage(page);
  await page.goto(`${studio.address}/lesson/${lesson}`);
  await note.fill('Alpha.');
  await createFrame(page).waitUntilSaved();
  // The start makes the backup.
  await studio.stop();
  studio = await startAgain(studio);
  await note.press('Control+End');
  await page.keyboard.insertText(' Bravo.');
  await untilView(readLesson, (view) => view.note === 'Alpha. Bravo.', 'it is taken');
  await createFrame(page).waitUntilSaved();

  await putBack(async () => {
    await page.keyboard.insertText(' Charlie.');
    await page
      .getByRole('status')
      .filter({ hasText: words.frame.waiting(1) })
      .first()
      .waitFor();
  });
  await untilView(readLesson, (view) => view.note === 'Alpha. Charlie.', 'what waited is added');
  await note.press('Escape');
  await expect.poll(() => note.inputValue(), { timeout: patience }).toBe('Alpha. Charlie.');
});

tell(
  'what this window wrote and the backup does not hold is not shown on, though something waits for long',
  async () => {
    const { page } = watched;
    const { note, segmentNote } = createLessonPage(page);
    // Far ahead of the backup.
    for (const letter of ['D', 'E', 'F', 'G']) {
      await note.press('Control+End');
      await page.keyboard.insertText(letter);
      await createFrame(page).waitUntilSaved();
    }
    await note.press('Escape');
    await untilView(readLesson, (view) => view.note.endsWith('DEFG'), 'it is taken');
    const full = {
      status: 507,
      json: { fault: { kind: 'CannotKeep', message: 'The disk is full.' } },
    };
    await putBack(async () => {
      await page.route('**/api/commands', (route) => route.fulfill(full));
      await segmentNote.fill('In the part.');
      await segmentNote.press('Escape');
    });
    await createFrame(page).messages.getByText('The disk is full.').waitFor();
    await page.unroute('**/api/commands');
    await createFrame(page).waitUntilSaved();
    expect((await readLesson()).note).toBe('Alpha.');
    await expect.poll(() => note.inputValue(), { timeout: 10_000 }).toBe('Alpha.');
    expect(await segmentNote.inputValue()).toBe('In the part.');
  },
);

tell(
  'text for a lesson that is not in the studio that was put back is given back in a message that stays',
  async () => {
    const { page } = watched;
    const { note } = createLessonPage(page);
    await studio.stop();
    await note.press('Control+End');
    await page.keyboard.insertText(' For another studio.');
    await page
      .getByRole('status')
      .filter({ hasText: words.frame.waiting(1) })
      .first()
      .waitFor();
    const other = createDataFolder();
    try {
      const another = await startStudio(other.path);
      await sendElsewhere(another);
      await another.stop();
      runLevare(folder.path, 'restore', join(other.path, 'studio.sqlite'));
    } finally {
      other.remove();
    }
    studio = await startAgain(studio);
    await createFrame(page)
      .messages.getByText(/Alpha\. For another studio\./)
      .first()
      .waitFor();
    // Nothing of it landed there.
    const reply = await page.context().request.get(`${studio.address}/api/lessons/${lesson}`);
    expect(reply.status()).toBe(404);
  },
);

/** Founds another studio by a window of its own. */
async function sendElsewhere(another: StudioProcess): Promise<void> {
  const stranger = await openPage(browser);
  await stranger.page.goto(another.link);
  await sendCommand(stranger.page, {
    type: 'studio.found',
    name: 'Another Studio',
    teacher: 'Ivo Brandt',
    timeZone: 'Europe/Berlin',
    locale: 'en-GB',
    starterUnits: false,
  });
  await stranger.context.close();
}
