// A take that the studio does not answer for, and one that it refuses because another studio was put back meanwhile: the sheet
// does not wait for ever, and no sound is lost.

import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import type { TakesView } from '#contract';
import { present } from '#core';
import { words } from '../../src/web/words/index.ts';
import { readView, untilView } from '../harness/api.ts';
import { findWithAxe } from '../harness/axe.ts';
import { openPage, type WatchedPage } from '../harness/browser.ts';
import { foundStudio } from '../harness/found-studio.ts';
import { createKeyboard } from '../harness/keyboard.ts';
import type { SmallStudio } from '../harness/small-studio.ts';
import { createStory, takePicture } from '../harness/story.ts';
import {
  createDataFolder,
  runLevare,
  type StudioProcess,
  startAgain,
  startStudio,
} from '../harness/studio-process.ts';
import { startTakeStudio } from '../harness/take-studio.ts';
import { createFrame } from '../page-models/frame.ts';
import { createTakePage } from '../page-models/take-page.ts';

const folder = createDataFolder();
let studio: StudioProcess;
let browser: Browser;
let window: WatchedPage;
let small: SmallStudio;

beforeAll(async () => {
  ({ studio, browser, window, small } = await startTakeStudio({
    folder: folder.path,
    line: { tempo: 96, seconds: 60, wander: 5 },
  }));
});
afterAll(async () => {
  studio?.wake();
  await browser?.close();
  await studio?.stop();
  folder.remove();
});

const say = words.takes.refused;
const reason = /The student of this take is not in the studio/;
const savedSound = join(folder.path, 'saved.webm');
const isSetAside = (name: string) => /^studio-set-aside-.*\.sqlite$/.test(name);
const picture = (name: string) => takePicture(window.page, `takes-held-${name}`);
/** Puts a studio in the place of this one that knows nothing of its student. */
async function putBackAnother(): Promise<void> {
  const other = createDataFolder();
  try {
    const another = await startStudio(other.path);
    const stranger = await openPage(browser);
    await stranger.page.goto(another.link);
    await foundStudio(stranger.page, 'Another Studio');
    await stranger.context.close();
    await another.stop();
    runLevare(folder.path, 'restore', join(other.path, 'studio.sqlite'));
  } finally {
    other.remove();
  }
  studio = await startAgain(studio);
}

const tell = createStory(() => (window === undefined ? [] : [window.page]));
const readTakes = () => readView<TakesView>(window.page, `/api/students/${small.student}/takes`);
/** Titles of the takes that this browser holds, whatever the page shows. */
const heldIn = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<string[]>((done, fail) => {
        const opening = indexedDB.open('levare-outbox');
        opening.onerror = () => fail(opening.error);
        opening.onsuccess = () => {
          const all = opening.result.transaction('waiting').objectStore('waiting').getAll();
          all.onsuccess = () => {
            opening.result.close();
            done(all.result.map(({ command }) => command.take.title));
          };
        };
      }),
  );

tell(
  'a studio that says nothing: the sheet closes all the same, and the take is kept once it answers',
  async () => {
    const { page } = window;
    const take = createTakePage(page);
    await page.goto(`${studio.address}/student/${small.student}`);
    await take.open();
    await take.giveConsent('Ida Quell', 'mother');
    await take.soundCheck();
    await take.record(6);
    await take.title.fill('Into the silence');
    studio.sleep();
    await take.press();
    await take.sheet.waitFor({ state: 'hidden' });
    await page.getByText(words.takes.result.held).waitFor();
    expect(await heldIn(page)).toEqual(['Into the silence']);
    studio.wake();
    await untilView(readTakes, (view) => view.takes.length === 1, 'the take is kept');
  },
);

const mark = () => window.page.getByRole('button', { name: say.mark(1), exact: true });
const deed = (name: string) => window.page.getByRole('dialog').getByRole('button', { name, exact: true });
/** Records a take under this title, up to where it can be kept. */
async function play(title: string): Promise<void> {
  const take = createTakePage(window.page);
  await take.open();
  await take.soundCheck();
  await take.record(6);
  await take.title.fill(title);
}

/** Records one that waits in this browser and is refused when it comes. */
async function playRefused(title: string): Promise<void> {
  const { page } = window;
  await play(title);
  const fault = { kind: 'NotAllowedNow', message: 'There is no room for it.' };
  let isReached = false;
  await page.route('**/api/commands', (route) =>
    isReached ? route.fulfill({ status: 409, json: { fault } }) : route.abort(),
  );
  await createTakePage(page).press();
  await createTakePage(page).sheet.waitFor({ state: 'hidden' });
  isReached = true;
  await mark().waitFor();
}

tell(
  'a take that waits while another studio is put back is refused there, with its reason, and stays in this browser',
  async () => {
    const { page } = window;
    await play('Between: two studios');
    await studio.stop();
    await createTakePage(page).press();
    await createTakePage(page).sheet.waitFor({ state: 'hidden' });
    await putBackAnother();
    await createFrame(page).messages.getByText(reason).waitFor();
    await mark().waitFor();
    expect(await heldIn(page)).toEqual(['Between: two studios']);
    // A page that is opened anew tells of it too.
    await page.goto(`${studio.address}/students`);
    const keys = createKeyboard(page);
    await keys.act(mark());
    await page.getByRole('dialog').getByText(reason).waitFor();
    await picture('refused');
    expect(await findWithAxe(page)).toEqual([]);
    await keys.act(deed(say.again('Between: two studios')));
    await createFrame(page).messages.getByText(reason).waitFor();
    await mark().waitFor();
    expect(await heldIn(page)).toEqual(['Between: two studios']);
  },
);

tell('its sound can be saved as a file', async () => {
  const { page } = window;
  await mark().click();
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    deed(say.saveOf('Between: two studios')).click(),
  ]);
  expect(file.suggestedFilename()).toBe('Between two studios.webm');
  await file.saveAs(savedSound);
  await page.setViewportSize({ width: 820, height: 1180 });
  await createFrame(page).setTheme('hall');
  await picture('refused-hall-820');
  expect(await findWithAxe(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await picture('mark-hall-820');
  await createFrame(page).setTheme('paper');
  await page.setViewportSize({ width: 1440, height: 900 });
});

tell(
  'once the first studio is back it is tried again and kept with its sound, and the file is heard too',
  async () => {
    const { page } = window;
    await studio.stop();
    runLevare(
      folder.path,
      'restore',
      join(folder.path, present(readdirSync(folder.path).find(isSetAside), 'the first studio')),
    );
    studio = await startAgain(studio);
    await page.goto(`${studio.address}/student/${small.student}`);
    await mark().click();
    await deed(say.again('Between: two studios')).click();
    const { takes } = await untilView(readTakes, (view) => view.takes.length === 2, 'the take is kept');
    expect(takes[0]).toMatchObject({ title: 'Between: two studios', soundBytes: expect.any(Number) });
    await mark().waitFor({ state: 'hidden' });
    expect(await heldIn(page)).toEqual([]);
    const take = createTakePage(page);
    await take.open();
    await take.file.setInputFiles(savedSound);
    await take.heard();
    expect(await take.sheet.locator('.roll-note').count()).toBeGreaterThan(5);
    await page.keyboard.press('Escape');
    await take.sheet.waitFor({ state: 'hidden' });
  },
);

tell('one that is refused is discarded on purpose only, by the keys alone', async () => {
  const { page } = window;
  const keys = createKeyboard(page);
  await playRefused('Not wanted');
  await keys.act(mark());
  await keys.act(deed(say.discardOf('Not wanted')));
  await page.getByRole('alertdialog').waitFor();
  await picture('discard');
  expect(await findWithAxe(page)).toEqual([]);
  // Leaving it has the focus.
  await keys.press('Enter');
  expect(await heldIn(page)).toEqual(['Not wanted']);
  await keys.act(deed(say.discardOf('Not wanted')));
  await keys.act(deed(say.discardDo));
  await page.getByRole('dialog').waitFor({ state: 'hidden' });
  await createFrame(page).messages.getByText(say.discarded('Not wanted')).waitFor();
  expect(await createFrame(page).messages.getByText('There is no room').count()).toBe(0);
  await mark().waitFor({ state: 'hidden' });
  await expect.poll(() => heldIn(page)).toEqual([]);
  await page.unroute('**/api/commands');
  await expect.poll(() => page.evaluate(() => document.activeElement !== document.body)).toBe(true);
  expect(window.faults(/Failed to load resource|net::ERR/)).toEqual([]);
});

tell('one that is refused as it is kept stays in its sheet, where its sound can be saved', async () => {
  const { page } = window;
  await play('Refused at once');
  const fault = { kind: 'NotAllowedNow', message: 'There is no room for it.' };
  await page.route('**/api/commands', (route) => route.fulfill({ status: 409, json: { fault } }));
  await createTakePage(page).press();
  const [file] = await Promise.all([page.waitForEvent('download'), deed(say.save).click()]);
  expect(file.suggestedFilename()).toBe('Refused at once.webm');
  await picture('refused-at-once');
  expect(await heldIn(page)).toEqual([]);
});

tell('an erased student’s are let go of with the rest', async () => {
  const { page } = window;
  await page.unroute('**/api/commands');
  await page.keyboard.press('Escape');
  await page.getByRole('dialog').getByRole('button', { name: words.takes.recording.leave }).click();
  await playRefused('To be erased');
  expect(await heldIn(page)).toEqual(['To be erased']);
  await page.unroute('**/api/commands');
  await page.goto(`${studio.address}/student/${small.student}/erase`);
  await mark().waitFor();
  const name = page.getByRole('main').getByLabel(words.erase.confirm.name);
  await name.fill(small.name);
  await name.press('Enter');
  await page.waitForURL('**/students');
  await createFrame(page).messages.getByText(words.erase.done).waitFor();
  await mark().waitFor({ state: 'hidden' });
  await expect.poll(() => heldIn(page)).toEqual([]);
});
