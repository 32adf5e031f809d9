// A tablet in the studio's network: it signs in by the link that is printed for it, over plain http, where a browser gives a page
// less than on the machine itself; and the network goes away without a word.

import { networkInterfaces } from 'node:os';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect } from 'vitest';
import type { LessonView } from '#contract';
import { type Id, present } from '#core';
import { words } from '../../src/web/words/index.ts';
import { lessonsOf, readCourseOf, readView, sendCommand, untilView } from '../harness/api.ts';
import { launchBrowser, openPage, patience, type WatchedPage } from '../harness/browser.ts';
import { createLine, type Line } from '../harness/line.ts';
import { foundSmallStudio, type SmallStudio } from '../harness/small-studio.ts';
import { createStory } from '../harness/story.ts';
import { createDataFolder, type StudioProcess, startStudio } from '../harness/studio-process.ts';
import { createDayPage } from '../page-models/day-page.ts';
import { createFrame } from '../page-models/frame.ts';
import { createLessonPage } from '../page-models/lesson-page.ts';
import { createTakePage } from '../page-models/take-page.ts';

const folder = createDataFolder();
let studio: StudioProcess;
let browser: Browser;
let laptop: WatchedPage;
let tablet: WatchedPage;
let line: Line | null = null;
let small: SmallStudio;
let lesson: Id<'lesson'>;

// A machine without a network has no address for another device.
const hasNetwork = Object.values(networkInterfaces()).some((all) =>
  all?.some(({ internal, family }) => !internal && family === 'IPv4'),
);

describe.runIf(hasNetwork)('on a tablet', () => {
  beforeAll(async () => {
    [studio, browser] = await Promise.all([
      startStudio(folder.path, 0, ['--host', '0.0.0.0']),
      launchBrowser(),
    ]);
    laptop = await openPage(browser);
    await laptop.page.goto(studio.link);
    small = await foundSmallStudio(laptop.page);
    ({ lesson } = present(lessonsOf(await readCourseOf(laptop.page, small.name))[0], 'a lesson'));
  });
  afterAll(async () => {
    await browser?.close();
    line?.close();
    await studio?.stop();
    folder.remove();
  });

  /** Another device writes the lesson's note. */
  const write = (base: string, text: string) =>
    sendCommand(laptop.page, { type: 'lesson.write', lesson, field: 'note', base, text });
  const tell = createStory(() => browser?.contexts().flatMap((context) => context.pages()) ?? []);
  const noteInStudio = async () => (await readView<LessonView>(laptop.page, `/api/lessons/${lesson}`)).note;

  tell('the link that is printed for other devices opens the day there', async () => {
    const link = present(studio.otherLinks[0], 'a link for other devices');
    const { hostname, port, pathname, search } = new URL(link);
    line = await createLine(hostname, Number(port));
    tablet = await openPage(browser, { viewport: { width: 820, height: 1180 }, hasTouch: true });
    await tablet.page.goto(`http://${hostname}:${line.port}${pathname}${search}`);
    expect(await tablet.page.evaluate(() => window.isSecureContext)).toBe(false);
    await createDayPage(tablet.page).teach(small.name);
    await createLessonPage(tablet.page).note.fill('Began well.');
    await createFrame(tablet.page).waitUntilSaved();
    expect(await noteInStudio()).toBe('Began well.');
  });

  tell(
    'a network that says nothing is told of; what is typed meanwhile arrives once, and the rest is heard',
    async () => {
      const { note } = createLessonPage(tablet.page);
      const network = present(line, 'the line');
      network.goDead();
      await note.press('Control+End');
      await tablet.page.keyboard.insertText(' Typed in the dark.');
      await tablet.page
        .getByRole('status')
        .filter({ hasText: words.frame.waiting(1) })
        .first()
        .waitFor();
      // Another device goes on meanwhile.
      await write('Began well.', 'Laptop: Began well.');
      network.mend();
      const both = 'Laptop: Began well. Typed in the dark.';
      await untilView(
        noteInStudio,
        (text) => text === both,
        'it arrived, once, beside what was written elsewhere',
      );
      await createFrame(tablet.page).waitUntilSaved();
      await note.press('Escape');
      await expect.poll(() => note.inputValue(), { timeout: patience }).toBe(both);
      // And what comes now is told.
      await write(both, `${both} Heard.`);
      await expect.poll(() => note.inputValue(), { timeout: patience }).toBe(`${both} Heard.`);
    },
  );

  tell('the recording sheet says why there is no microphone, and what to do', async () => {
    const take = createTakePage(tablet.page);
    await take.open();
    await take.giveConsent('Rita Quell', 'mother');
    await take.sheet.getByRole('button', { name: words.takes.setUp.check, exact: true }).click();
    await take.sheet.getByText(words.takes.setUp.insecure).waitFor();
  });
});
