// What can go wrong while a take is recorded: no microphone, one that is not allowed, one that is pulled out in the middle, a
// sheet closed by a slip, and a server that dies while the take is being kept. Nothing recorded is lost, and what is wrong is
// said with its way out. On a tablet held upright.

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import type { TakesView } from '#contract';
import { present } from '#core';
import { words } from '../../src/web/words/index.ts';
import { readView, untilView } from '../harness/api.ts';
import { findWithAxe } from '../harness/axe.ts';
import { openWindow, type WatchedPage } from '../harness/browser.ts';
import type { SmallStudio } from '../harness/small-studio.ts';
import { createStory, takePicture } from '../harness/story.ts';
import { createDataFolder, type StudioProcess, startAgain } from '../harness/studio-process.ts';
import { startTakeStudio } from '../harness/take-studio.ts';
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
    page: { viewport: { width: 820, height: 1180 }, hasTouch: true },
    inPage: standAtTheMicrophone,
  }));
});
afterAll(async () => {
  await browser?.close();
  await studio?.stop();
  folder.remove();
});

const tell = createStory(() => (window === undefined ? [] : [window.page]));
const readTakes = () => readView<TakesView>(window.page, `/api/students/${small.student}/takes`);
const picture = (name: string) => takePicture(window.page, `takes-trouble-${name}`);

/** Runs in the page: its microphone can be refused by name, and pulled out, as a browser would tell it. */
function standAtTheMicrophone() {
  const own = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices);
  const hands = globalThis as unknown as { refuse: string | null; pull(): void };
  hands.refuse = null;
  let track: MediaStreamTrack | undefined;
  hands.pull = () => {
    track?.stop();
    track?.dispatchEvent(new Event('ended'));
  };
  navigator.mediaDevices.getUserMedia = async (wish) => {
    if (hands.refuse !== null) throw new DOMException('as the browser words it', hands.refuse);
    const stream = await own(wish);
    [track] = stream.getAudioTracks();
    return stream;
  };
}
const refuse = (page: Page, name: string | null) =>
  page.evaluate((wanted) => {
    (globalThis as unknown as { refuse: string | null }).refuse = wanted;
  }, name);
const pull = (page: Page) => page.evaluate(() => (globalThis as unknown as { pull(): void }).pull());

tell('a microphone that is refused, missing or held by another program is said to be', async () => {
  const { page } = window;
  await page.goto(`${studio.address}/student/${small.student}`);
  const take = createTakePage(page);
  await page.getByRole('heading', { name: words.takes.title }).waitFor();
  await refuse(page, 'NotAllowedError');
  await take.open();
  await take.giveConsent('Ida Quell', 'mother');
  await take.sheet.getByText(words.takes.setUp.refused).waitFor();
  await picture('refused');
  expect(await findWithAxe(page)).toEqual([]);
  for (const [name, sentence] of [
    ['NotFoundError', words.takes.setUp.missing],
    ['NotReadableError', words.takes.setUp.inUse],
  ] as const) {
    await refuse(page, name);
    await take.sheet.getByRole('button', { name: words.takes.setUp.check }).click();
    await take.sheet.getByText(sentence).waitFor();
  }
  await refuse(page, null);
  await take.sheet.getByRole('button', { name: words.takes.setUp.check }).click();
  await take.sheet.getByText(words.takes.setUp.levelRight).waitFor();
  expect(await take.sheet.getByText(words.takes.setUp.inUse).count()).toBe(0);
});

tell('one that is pulled out before the take can be put in again', async () => {
  const { page } = window;
  const take = createTakePage(page);
  await pull(page);
  await take.sheet.getByText(words.takes.setUp.gone).waitFor();
  await take.soundCheck();
});

tell('one that is pulled out in the middle leaves what was played until then, with its sound', async () => {
  const { page } = window;
  const take = createTakePage(page);
  await take.tempo.fill('96');
  await take.begin(8);
  await take.sheet.getByText(words.takes.setUp.level).waitFor();
  await picture('recording');
  await pull(page);
  await take.sheet.getByText(words.takes.recording.goneMidway).waitFor();
  await take.heard();
  expect(await take.sheet.locator('.roll-note').count()).toBeGreaterThan(5);
  await take.sheet.getByText(words.takes.result.keepSound).waitFor();
  await picture('pulled-out');
  expect(await findWithAxe(page)).toEqual([]);
});

tell('a slip that would throw it away is asked about, once', async () => {
  const { page } = window;
  const take = createTakePage(page);
  await page.keyboard.press('Escape');
  await take.sheet.getByText(words.takes.recording.leaveTitle).waitFor();
  expect(await findWithAxe(page)).toEqual([]);
  await take.sheet.getByRole('button', { name: words.takes.recording.stay }).click();
  await take.sheet.getByRole('button', { name: words.takes.result.hear, exact: true }).waitFor();
});

tell(
  'a server that dies while the take is kept: it waits, though its page is closed, and is kept once, with its level',
  async () => {
    const { page } = window;
    const take = createTakePage(page);
    await take.title.fill('Through a power cut');
    const skill = present(
      await take.sheet.getByRole('radiogroup').first().getAttribute('aria-label'),
      'a skill',
    );
    await take.level(skill, 2);
    await studio.kill();
    await take.press();
    await take.sheet.waitFor({ state: 'hidden' });
    await page.getByText(words.takes.result.held).waitFor();
    await page.getByText(words.frame.waiting(2)).first().waitFor();
    await picture('waiting');
    expect(window.faults(/Failed to load resource|net::ERR/)).toEqual([]);
    const address = page.url();
    await page.close();
    studio = await startAgain(studio);
    window = await openWindow(window.context);
    await window.page.goto(address);
    const { takes } = await untilView(
      readTakes,
      (view) => view.takes[0]?.proves.length === 1,
      'the take is kept, and proves its level',
    );
    expect(takes).toMatchObject([
      { title: 'Through a power cut', soundBytes: expect.any(Number), proves: [{ level: 2 }] },
    ]);
    await window.page.locator('.take-list').getByText('Through a power cut').waitFor();
  },
);

tell('an empty sheet closes without a question', async () => {
  const { page } = window;
  const take = createTakePage(page);
  await take.open();
  await take.soundCheck();
  await page.keyboard.press('Escape');
  await take.sheet.waitFor({ state: 'hidden' });
  expect(window.faults(/Failed to load resource|net::ERR/)).toEqual([]);
});
