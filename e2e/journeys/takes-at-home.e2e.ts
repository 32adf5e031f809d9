// A take recorded at home, from the practice sheet, by the keys alone: consent, the take, a slip, keeping; then the teacher hears
// it, notes a level that it shows, and finds it again from the level. And a check is told what to listen for without a mouse.

import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import type { CourseView, TakesView } from '#contract';
import { present } from '#core';
import { words } from '../../src/web/words/index.ts';
import { lessonsOf, readView, untilView } from '../harness/api.ts';
import { findWithAxe } from '../harness/axe.ts';
import type { WatchedPage } from '../harness/browser.ts';
import { createKeyboard } from '../harness/keyboard.ts';
import type { SmallStudio } from '../harness/small-studio.ts';
import { createStory, takePicture } from '../harness/story.ts';
import { createDataFolder, type StudioProcess } from '../harness/studio-process.ts';
import { startTakeStudio } from '../harness/take-studio.ts';
import { createTakePage } from '../page-models/take-page.ts';

const say = words.takes;
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
  await browser?.close();
  await studio?.stop();
  folder.remove();
});

const tell = createStory(() => (window === undefined ? [] : [window.page]));
const readTakes = () => readView<TakesView>(window.page, `/api/students/${small.student}/takes`);
const firstLesson = async () => {
  const course = await readView<CourseView>(window.page, `/api/courses/${small.course}`);
  return present(lessonsOf(course)[0], 'a lesson');
};
const recordTask = () => window.page.getByRole('button', { name: /^Record: / }).first();

tell('a check is told what to listen for', async () => {
  const { page } = window;
  const keys = createKeyboard(page);
  await page.goto(`${studio.address}/unit/unit:five-good-notes`);
  await keys.act(page.getByRole('link', { name: words.units.unit.change, exact: true }));
  const check = page.locator('.editor-check').first();
  await keys.act(check.getByRole('button', { name: words.listenFor.add, exact: true }));
  const spec = check.locator('.editor-spec');
  await keys.choose(spec.getByLabel(words.listenFor.what), 'Long notes');
  const { fields } = words.listenFor.kinds.longNotes;
  await keys.write(spec.getByLabel(fields['seconds']?.label ?? '', { exact: true }), '900');
  await spec.getByText(words.listenFor.outside(0.5, 60)).waitFor();
  await keys.write(spec.getByLabel(fields['seconds']?.label ?? '', { exact: true }), '4');
  await spec.getByText('a note held at least 4 s within 15 cents').waitFor();
  await keys.act(page.getByRole('button', { name: words.units.editor.save, exact: true }));
  await page.getByText('a note held at least 4 s within 15 cents').waitFor();
});

tell('a task of the week is recorded, with consent first, and never on paper', async () => {
  const { page } = window;
  const keys = createKeyboard(page);
  const take = createTakePage(page);
  await page.goto(`${studio.address}/practice/lesson/${(await firstLesson()).lesson}`);
  await recordTask().waitFor();
  await page.emulateMedia({ media: 'print' });
  expect(await recordTask().isVisible()).toBe(false);
  await page.emulateMedia({ media: 'screen' });
  expect(await findWithAxe(page)).toEqual([]);
  await keys.act(recordTask());
  await take.sheet.getByText(say.consent.needed(small.name, 'under', 9)).waitFor();
  await keys.write(take.sheet.getByLabel(say.consent.givenBy), 'Ida Quell');
  await keys.act(take.sheet.getByRole('button', { name: say.consent.give }));
  await take.sheet.getByText(say.setUp.levelRight).waitFor();
  await keys.write(take.tempo, '96');
  await keys.act(take.sheet.getByRole('button', { name: say.recording.begin, exact: true }));
  await take.until(8);
  // Stop has the focus already.
  await keys.press('Enter');
  await take.heard();
});

tell('a slip of the hand is asked about; then it is kept, and the focus is back where it was', async () => {
  const { page } = window;
  const keys = createKeyboard(page);
  const take = createTakePage(page);
  await keys.press('Escape');
  await take.sheet.getByText(say.recording.leaveTitle).waitFor();
  // Going on has the focus.
  await keys.press('Enter');
  await take.sheet.getByText(say.recording.leaveTitle).waitFor({ state: 'hidden' });
  // At home nobody is asked for a level.
  expect(await take.sheet.getByText(say.result.observe).count()).toBe(0);
  await keys.act(take.sheet.getByRole('button', { name: say.result.keep, exact: true }));
  await take.sheet.waitFor({ state: 'hidden' });
  await expect.poll(() => keys.isOn(recordTask())).toBe(true);
  const { takes } = await untilView(readTakes, (view) => view.takes.length === 1, 'the take is kept');
  expect(takes[0]).toMatchObject({
    lesson: null,
    practiceOf: (await firstLesson()).lesson,
    activity: { activity: expect.any(String) },
    soundBytes: expect.any(Number),
  });
});

tell('the teacher hears it, notes the level that it shows, and finds it from the level', async () => {
  const { page } = window;
  const keys = createKeyboard(page);
  const take = createTakePage(page);
  await page.goto(`${studio.address}/student/${small.student}`);
  await page.locator('.take-list').getByText(say.atHome).waitFor();
  await keys.act(page.getByRole('button', { name: new RegExp(`^${say.open}`) }));
  const levels = take.sheet.getByRole('radiogroup');
  await levels.waitFor();
  await keys.tabTo(levels.getByRole('radio'));
  await keys.press('ArrowRight');
  await keys.press('ArrowRight');
  await keys.act(take.sheet.getByRole('button', { name: say.result.noteIt, exact: true }));
  const { takes } = await untilView(
    readTakes,
    (view) => view.takes.some(({ proves }) => proves.length > 0),
    'the level is noted',
  );
  await keys.press('Escape');
  await take.sheet.waitFor({ state: 'hidden' });
  const proved = present(takes[0]?.proves[0], 'a level');
  await keys.act(
    page.getByRole('button', { name: new RegExp(`^Hear the take of .*: ${proved.title}$`) }).first(),
  );
  await keys.act(take.sheet.getByRole('button', { name: say.result.hear, exact: true }));
  await keys.act(take.sheet.getByRole('button', { name: say.result.stop, exact: true }));
  await takePicture(page, 'takes-at-home');
  await keys.press('Escape');
  await take.sheet.waitFor({ state: 'hidden' });
  expect(window.faults()).toEqual([]);
});
