// Sheets and backings for one student alone: kept on the week's practice sheet from Materials and from the band, named and
// played along with there, taken off and back on, printed, exported and read in again; and a sheet taken along as a PDF.

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import type { LessonView, StudentsView, UnitView } from '#contract';
import { addDays, createId, type PlainDate, present } from '#core';
import type { UnitId } from '#planning';
import { words } from '../../src/web/words/index.ts';
import { readView, sendCommand, untilView } from '../harness/api.ts';
import { findWithAxe } from '../harness/axe.ts';
import { launchBrowser, openPage, type WatchedPage } from '../harness/browser.ts';
import { foundStudio } from '../harness/found-studio.ts';
import { createKeyboard } from '../harness/keyboard.ts';
import { giveUnit, openCourse } from '../harness/open-course.ts';
import { readPdf } from '../harness/read-pdf.ts';
import { settle } from '../harness/settle.ts';
import { createStory } from '../harness/story.ts';
import { createDataFolder, type StudioProcess, startStudio } from '../harness/studio-process.ts';
import { createFrame } from '../page-models/frame.ts';
import { createMaterialsPage } from '../page-models/materials-page.ts';
import { createWelcomePage } from '../page-models/welcome-page.ts';

const { keeping } = words.materials;
const { practice } = words;
const { band } = words.player;
const unit = 'unit:five-good-notes' as UnitId;
/** As checks/instruments/data/instruments.json names it. */
const saxophone = 'Alto saxophone in E flat';

const folders = [createDataFolder(), createDataFolder()] as const;
let studio: StudioProcess;
let browser: Browser;
let watched: WatchedPage;
let today: PlainDate;
/** Ada's lesson of today. */
let lesson: string;

beforeAll(async () => {
  [studio, browser] = await Promise.all([startStudio(folders[0].path), launchBrowser()]);
  watched = await openPage(browser, { acceptDownloads: true, reducedMotion: 'reduce' });
  const { page } = watched;
  await createWelcomePage(page).open(studio.link);
  today = await foundStudio(page, 'Weir House');
  for (const [name, instrument, age, time] of [
    ['Ada Wren', 'alto_sax', 12, '15:00'],
    ['Ben Hollis', 'guitar', 34, '15:30'],
  ] as const) {
    const wish = { name, instrument, age, time, stage: 'elementary' as const, from: today };
    const { course, strands } = await openCourse(page, { ...wish, strands: ['Technique'] });
    await giveUnit(page, name, course, unit, present(strands[0], 'the strand'));
  }
  const { courses } = await readView<StudentsView>(page, '/api/students');
  const ada = present(
    courses.find(({ learner }) => learner === 'Ada Wren'),
    'her course',
  );
  expect(ada.sheets.map(({ date }) => date)).toEqual([today, addDays(today, 7)]);
  lesson = String(ada.sheets[0]?.lesson);
});
afterAll(async () => {
  await browser?.close();
  await studio?.stop();
  for (const folder of folders) folder.remove();
});

const tell = createStory(() => watched?.context.pages() ?? []);
const address = (path: string) => new URL(path, studio.address).href;
const keptNow = async (page: Page) => (await readView<LessonView>(page, `/api/lessons/${lesson}`)).kept;
const untilKept = (page: Page, titles: readonly string[]) =>
  untilView(
    () => keptNow(page),
    (kept) => JSON.stringify(kept.map(({ title }) => title)) === JSON.stringify(titles),
    `kept on the sheet: ${titles.join(', ')}`,
  );

async function openWaltz(page: Page): Promise<void> {
  const query = new URLSearchParams({
    spec: JSON.stringify({ kind: 'rhythm', metre: '3/4', title: 'Waltz steps' }),
  });
  await page.goto(address(`/materials?${query}`));
  await createMaterialsPage(page).choosePlayer('Ada Wren', saxophone);
  await createMaterialsPage(page).drawn();
}

const backing = { kind: 'backing', chart: '| Bb6 | Eb7 | F7 | Bb6 |', tempo: 92, rest: 2, countIn: 1 };
async function openBand(page: Page): Promise<void> {
  await page.goto(address(`/band?${new URLSearchParams({ spec: JSON.stringify(backing), seed: '5' })}`));
  await page.getByRole('button', { name: band.keep, exact: true }).waitFor();
}

const openSheet = async (page: Page) => {
  await page.goto(address(`/practice/lesson/${lesson}`));
  await page.getByRole('article', { name: `${practice.title}: Ada Wren` }).waitFor();
};

tell(
  'a sheet made for a student is kept on their sheet of the week with three keys, and taken back',
  async () => {
    const { page } = watched;
    await openWaltz(page);
    const keys = createKeyboard(page);
    await keys.act(page.getByRole('button', { name: words.materials.keep, exact: true }));
    const dialog = page.getByRole('dialog', { name: keeping.title });
    const place = dialog.getByLabel(keeping.place, { exact: true });
    await expect.poll(() => place.inputValue()).toMatch(/^practice course:/);
    expect(await findWithAxe(page)).toEqual([]);
    await keys.tabTo(dialog.getByLabel(keeping.name, { exact: true }));
    await keys.press('Enter');
    await dialog.waitFor({ state: 'detached' });
    await untilKept(page, ['Waltz steps']);
    await createFrame(page).undoFromMessage();
    await untilKept(page, []);
  },
);

tell('it stands on the sheet with its notation, and is taken off and back on there by keyboard', async () => {
  const { page } = watched;
  await openWaltz(page);
  await createMaterialsPage(page).keepOnSheet(null);
  await untilKept(page, ['Waltz steps']);
  await openSheet(page);
  const keys = createKeyboard(page);
  const shown = page.getByRole('heading', { name: 'Waltz steps', exact: true });
  await shown.waitFor();
  await page
    .getByRole('img', { name: /Waltz steps/ })
    .first()
    .waitFor();
  await keys.act(page.getByRole('button', { name: practice.takeOffNamed('Waltz steps') }));
  await shown.waitFor({ state: 'detached' });
  await untilKept(page, []);
  await createFrame(page).undoFromMessage();
  await shown.waitFor();
});

tell('a backing is kept from the band, on the sheet and on an activity, in one dialog', async () => {
  const { page } = watched;
  await openBand(page);
  const ada = keeping.sheetOf('Ada Wren');
  await page.getByRole('button', { name: words.player.slower, exact: true }).click();
  await page.getByRole('group', { name: words.player.tempo }).getByText('88', { exact: true }).waitFor();
  await createMaterialsPage(page).keepOnSheet(ada, {
    title: keeping.backingTitle,
    name: 'Three chords',
  });
  await untilKept(page, ['Waltz steps', 'Three chords']);
  expect((await keptNow(page))[1]).toMatchObject({ spec: { ...backing, tempo: 88 }, seed: 5 });
  await openBand(page);
  await createMaterialsPage(page).keep('The beat in your feet', 'Rhythm parade', keeping.backingTitle);
  const { document } = await readView<UnitView>(page, '/api/units/unit:the-beat-in-your-feet');
  expect(document.activities.find(({ title }) => title === 'Rhythm parade')?.materials.at(-1)).toMatchObject({
    title: band.usualTitle(band.feels.swing),
    spec: backing,
  });
});

tell(
  'the sheet names the backing as the student reads it, plays it on the screen, and prints its name',
  async () => {
    const { page } = watched;
    await openSheet(page);
    // Sounding B flat is read as G on an alto saxophone in E flat (checks/instruments/data/instruments.json).
    const says = practice.backing;
    const line = [
      says.written('G major'),
      says.tempo(88),
      says.choruses(3),
      says.countIn(1),
      says.gate(2, 2),
    ].join(' · ');
    await page.getByText(line, { exact: true }).waitFor();
    const keys = createKeyboard(page);
    await keys.act(page.getByRole('button', { name: says.playNamed('Three chords') }));
    const player = page.getByRole('region', { name: band.title });
    await player.getByRole('button', { name: words.player.play, exact: true }).waitFor();
    for (const theme of ['paper', 'hall'] as const) {
      await createFrame(page).setTheme(theme);
      await settle(page);
      expect(await findWithAxe(page), theme).toEqual([]);
    }
    await createFrame(page).setTheme('paper');
    await page.getByRole('status').filter({ hasText: practice.ready }).waitFor();
    await page.emulateMedia({ media: 'print' });
    expect(await player.isVisible()).toBe(false);
    expect(await page.getByText(line, { exact: true }).isVisible()).toBe(true);
    const printed = readPdf(await page.pdf({ preferCSSPageSize: true }));
    await page.emulateMedia({ media: null });
    expect(printed.pages).toBeGreaterThanOrEqual(1);
    if (printed.text !== null) {
      const text = printed.text.replace(/\s+/g, ' ');
      expect(text).toContain(says.named('Three chords'));
      expect(text).toContain(line);
      expect(text).toContain('| G6 | C7 | D7 | G6 |');
      expect(text).toContain('Waltz steps');
      expect(text).not.toContain(practice.takeOff);
    }
  },
);

tell('no page of a printed sheet holds a single line of music, or only what is said at its end', async () => {
  const { page } = watched;
  for (const lines of [3, 5, 7, 9]) {
    const material = { id: createId('material', { next: Math.random }), title: 'To read', seed: 3 };
    const spec = { kind: 'reading', bars: 4, lines };
    await sendCommand(page, {
      type: 'material.keep',
      lesson: lesson as LessonView['id'],
      material: { ...material, spec },
    });
    await openSheet(page);
    await page.getByRole('status').filter({ hasText: practice.ready }).waitFor();
    const { text } = readPdf(await page.pdf({ preferCSSPageSize: true }));
    await sendCommand(page, { type: 'material.remove', material: material.id });
    if (text === null) continue;
    const pages = text.split('\f').filter((one) => one.trim() !== '');
    expect(pages[0], `${lines} lines`).toContain('Next lesson');
    // Each line bears its own number, and from the second on that of its first bar.
    const numbers = pages.at(-1)?.match(/^\s*\d{1,2}\s*$/gm) ?? [];
    expect(numbers.length, `${lines} lines, last page`).toBeGreaterThan(2);
  }
});

tell('the day’s and the week’s sheets hold it, and tell how far the notation is', async () => {
  const { page } = watched;
  await page.goto(address(`/practice/day/${today}`));
  await page.getByRole('article', { name: `${practice.title}: Ada Wren` }).waitFor();
  // Ben’s lesson has nothing to print yet.
  expect(await page.getByRole('article').count()).toBe(1);
  await createKeyboard(page).act(page.getByRole('link', { name: practice.wholeWeek }));
  await page.getByRole('heading', { name: practice.weekTitle }).waitFor();
  await page.getByRole('progressbar').waitFor();
  await page.getByRole('status').filter({ hasText: practice.ready }).waitFor();
  await page.getByRole('heading', { name: 'Waltz steps', exact: true }).waitFor();
  expect(await findWithAxe(page)).toEqual([]);
});

tell('a sheet is taken along as a PDF that opens and bears its title', async () => {
  const { page } = watched;
  await openWaltz(page);
  const facts = readPdf(await createMaterialsPage(page).takeBytes('pdf'));
  expect(facts.title).toBe('Waltz steps');
  expect(facts.pages).toBe(1);
  if (facts.text !== null) expect(facts.text).toContain('Waltz steps');
});

tell('what is kept on sheets goes out with the studio and comes in again', async () => {
  const { page } = watched;
  const reply = await page.context().request.get(address('/api/export'));
  const other = await startStudio(folders[1].path);
  try {
    const second = await openPage(browser);
    await createWelcomePage(second.page).open(other.link);
    const origin = other.address;
    const read = await second.context.request.post(`${origin}/api/import`, {
      headers: { origin },
      data: await reply.text(),
    });
    expect(await read.json()).toEqual({ loaded: true });
    expect(await keptNow(second.page)).toEqual(await keptNow(page));
    await second.context.close();
  } finally {
    await other.stop();
  }
  expect(watched.faults()).toEqual([]);
});
