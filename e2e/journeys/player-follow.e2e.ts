// A chart read on a saxophone: shown as it is written for it, followed bar by bar on the chart and on the lead sheet, bars
// chosen there by mouse, finger and keys; parts muted and alone; a chart tapped, mended and printed.

import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import type { LessonView } from '#contract';
import { present } from '#core';
import type { UnitId } from '#planning';
import { words } from '../../src/web/words/index.ts';
import { lessonsOf, readCourseOf, readStudio, readView } from '../harness/api.ts';
import { findWithAxe } from '../harness/axe.ts';
import { launchBrowser, openPage, patience, type WatchedPage } from '../harness/browser.ts';
import { type Captured, captureSound, takeCaptured } from '../harness/capture-sound.ts';
import { giveUnit, openCourse } from '../harness/open-course.ts';
import { foundSmallStudio } from '../harness/small-studio.ts';
import { createStory, outputFolder } from '../harness/story.ts';
import { createDataFolder, type StudioProcess, startStudio } from '../harness/studio-process.ts';
import { createLessonPage } from '../page-models/lesson-page.ts';

const folder = createDataFolder();
let studio: StudioProcess;
let browser: Browser;
let watched: WatchedPage;
const says = words.player;

beforeAll(async () => {
  mkdirSync(outputFolder, { recursive: true });
  [studio, browser] = await Promise.all([
    startStudio(folder.path),
    launchBrowser(['--autoplay-policy=no-user-gesture-required']),
  ]);
  watched = await openPage(browser, { hasTouch: true });
  await watched.page.goto(studio.link);
  await foundSmallStudio(watched.page);
});
afterAll(async () => {
  await browser?.close();
  await studio?.stop();
  folder.remove();
});

const tell = createStory(() => [watched.page]);

const given = { kind: 'backing', chart: '| Dm7 | G7 | Cmaj7 | A7 | Fmaj7 | Em7 | Dm7 | G7 |', tempo: 240 };
const address = (more: Readonly<Record<string, string>>, spec: unknown = given) =>
  `${studio.address}/band?${new URLSearchParams({ spec: JSON.stringify(spec), seed: '5', ...more })}`;
const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const sheetBar = (page: Page, bar: number) => button(page, says.sheetBar(bar));
const ready = (page: Page) =>
  expect.poll(() => page.getByText(says.loading).count(), { timeout: patience }).toBe(0);
const chordsShown = (page: Page) =>
  page
    .getByRole('list', { name: says.chart })
    .getByRole('button')
    .allTextContents()
    .then((texts) => texts.map((text) => text.replace(/^Bar \d+:\s*/, '').trim()));
const middle = async (page: Page, bar: number) => {
  const box = present(await sheetBar(page, bar).boundingBox(), 'the bar on the sheet');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
};

tell('the chart stands as the saxophone reads it, and the sounding key is said once', async () => {
  const { page } = watched;
  await page.goto(address({ for: 'alto_sax' }));
  await button(page, says.play).waitFor();
  // Common practice, no source: an alto saxophone in E flat reads a major sixth above what sounds.
  expect(await chordsShown(page)).toEqual(['Bm7', 'E7', 'Amaj7', 'F♯7', 'Dmaj7', 'C♯m7', 'Bm7', 'E7']);
  const said = page.getByText('they sound in C major');
  expect(await said.count()).toBe(1);
  await page.goto(address({ for: 'flute' }));
  await button(page, says.play).waitFor();
  expect((await chordsShown(page))[0]).toBe('Dm7');
  expect(await said.count()).toBe(0);
});

tell('the bar that sounds is lit on the chart and on the sheet, the same one', async () => {
  const { page } = watched;
  await page.goto(address({ for: 'alto_sax' }));
  await button(page, says.band.showLeadSheet).click();
  await sheetBar(page, 8).waitFor({ timeout: patience });
  expect(await findWithAxe(page)).toEqual([]);
  await ready(page);
  await button(page, says.play).click();
  const pairs = new Set<string>();
  for (let nth = 0; nth < 60 && pairs.size < 4; nth++) {
    const lit = await page.evaluate(() => {
      const on = (selector: string) => document.querySelector(selector)?.getAttribute('data-choose') ?? '';
      return [on('.bar-now [data-choose]'), on('.followed-bar-now')];
    });
    if (lit.every((one) => one !== '')) pairs.add(lit.join(' '));
    await page.waitForTimeout(100);
  }
  await button(page, says.stop).click();
  expect(pairs.size).toBeGreaterThanOrEqual(4);
  for (const pair of pairs) expect(pair).toMatch(/^(\d+) \1$/);
});

tell('bars are chosen on the notation by mouse, by finger and by keys', async () => {
  const { page } = watched;
  const round = (first: number, last: number) => page.getByText(says.round(first, last)).waitFor();
  await sheetBar(page, 8).scrollIntoViewIfNeeded();
  const [second, fourth] = [await middle(page, 2), await middle(page, 4)];
  await page.mouse.move(second.x, second.y);
  await page.mouse.down();
  await page.mouse.move(fourth.x, fourth.y, { steps: 5 });
  await page.mouse.up();
  await round(2, 4);

  const finger = await page.context().newCDPSession(page);
  const [fifth, seventh] = [await middle(page, 5), await middle(page, 7)];
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', at?: { x: number; y: number }) =>
    finger.send('Input.dispatchTouchEvent', { type, touchPoints: at === undefined ? [] : [at] });
  await touch('touchStart', fifth);
  for (const share of [0.25, 0.5, 0.75, 1])
    await touch('touchMove', { x: fifth.x + share * (seventh.x - fifth.x), y: fifth.y });
  await touch('touchEnd');
  await round(5, 7);

  await sheetBar(page, 1).focus();
  await page.keyboard.press('Home');
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('Shift+ArrowRight');
  await round(2, 4);
  await ready(page);
  await button(page, says.play).click();
  const lit = new Set<string>();
  for (let nth = 0; nth < 80 && lit.size < 3; nth++) {
    lit.add((await page.locator('.followed-bar-now').getAttribute('data-choose', { timeout: 10_000 })) ?? '');
    await page.waitForTimeout(100);
  }
  expect([...lit].sort()).toEqual(['2', '3', '4']);
  await button(page, says.stop).click();
  await sheetBar(page, 4).focus();
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('Escape');
  await page.getByText(/^Going round/).waitFor({ state: 'detached' });
});

tell('a part is muted, or plays alone', async () => {
  const { page, faults } = await openPage(browser, {
    bypassCSP: true, // for the recorder
    storageState: await watched.context.storageState(),
  });
  await captureSound(page);
  await page.goto(address({}, { ...given, countIn: 0, choruses: 16 }));
  await ready(page);
  await page.getByText(says.levels).click();
  const part = (name: keyof typeof says.parts) => page.getByRole('group', { name: says.parts[name] });
  const mute = (name: keyof typeof says.parts) => part(name).getByRole('button', { name: says.mute }).click();
  await button(page, says.play).click();
  await page.locator('.bar-now').waitFor();
  const loudness = async () => {
    await page.waitForTimeout(600); // what was on its way
    await takeCaptured(page);
    await page.waitForTimeout(2500);
    return powerOf(await takeCaptured(page));
  };
  const all = await loudness();
  await part('bass').getByRole('button', { name: says.solo }).click();
  const alone = await loudness();
  await mute('bass');
  const none = await loudness();
  await mute('bass');
  await part('bass').getByRole('button', { name: says.solo }).click();
  const again = await loudness();
  expect(all).toBeGreaterThan(1e-5);
  expect(alone).toBeGreaterThan(1e-6);
  expect(alone).toBeLessThan(all * 0.9);
  expect(none).toBeLessThan(1e-9);
  expect(again).toBeGreaterThan(all / 2);
  expect(faults()).toEqual([]);
});

tell('a chart is tapped and mended at once, in the reader’s key, and printed as a lead sheet', async () => {
  const { page } = watched;
  await page.goto(
    address({ for: 'trumpet_bb', typed: 'written' }, { kind: 'backing', chart: '', tempo: 120 }),
  );
  const chart = page.getByRole('textbox', { name: says.band.chart });
  await page.getByText(says.band.tap).click();
  const bar = says.band.signNames['|'] ?? '';
  for (const name of ['E', 'm7', 'A', '7', bar, 'D', 'maj7', bar]) await button(page, name).tap();
  expect(await chart.inputValue()).toBe('| Em7 A7 | Dmaj7 | ');
  expect(await chordsShown(page)).toEqual(
    ['Em7   A7', 'Dmaj7'].map((text) => expect.stringMatching(new RegExp(text.replace(/ +/, '\\s+')))),
  );
  await page.getByText('they sound in C major').waitFor();

  // Another reader: the text follows, what sounds stays.
  await page.getByLabel(says.band.reader).selectOption('alto_sax');
  expect(await chart.inputValue()).toBe('| Bm7 E7 | Amaj7 |');
  await page.getByLabel(says.band.typedAs, { exact: true }).selectOption('concert');
  expect(await chart.inputValue()).toBe('| Dm7 G7 | Cmaj7 |');
  await page.getByText('they sound in C major').waitFor();

  await chart.fill('| Em7 Ax7 | Dmaj7 |');
  await page.getByText(/Bar 1: “Ax7”/).waitFor();
  await button(page, says.band.take('A7')).click();
  await page.getByText(/Bar 1: “Ax7”/).waitFor({ state: 'detached' });

  await page.evaluate(() => {
    window.print = () => document.body.setAttribute('data-printed', 'yes');
  });
  await button(page, says.band.printLeadSheet).click();
  await page.locator('body[data-printed=yes]').waitFor({ timeout: patience });
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('.lead-sheet .notation').isVisible()).toBe(true);
  expect(await page.locator('.band-player').isVisible()).toBe(false);
  expect(await page.locator('.followed-bar').first().isVisible()).toBe(false);
  await page.emulateMedia({ media: 'screen' });
  expect(watched.faults()).toEqual([]);
});

tell('in a lesson the sheet goes along with its band, which plays on while the teacher writes', async () => {
  const { page } = watched;
  const { today } = await readStudio(page);
  const { course, strands } = await openCourse(page, {
    name: 'Ada Wren',
    instrument: 'alto_sax',
    stage: 'intermediate',
    age: 15,
    from: today,
    time: '17:00',
    strands: ['Improvising'],
  });
  const unit = 'unit:through-the-changes' as UnitId;
  await giveUnit(page, 'Ada Wren', course, unit, present(strands[0], 'the strand'));
  for (const { lesson } of lessonsOf(await readCourseOf(page, 'Ada Wren'))) {
    const { segments } = await readView<LessonView>(page, `/api/lessons/${lesson}`);
    if (!segments.some((segment) => segment.activity === 'twelve-bars-in-the-bones')) continue;
    await page.goto(`${studio.address}/lesson/${lesson}`);
    break;
  }
  const desk = createLessonPage(page);
  await desk.show('Twelve bars in the bones');
  await sheetBar(page, 12).waitFor({ timeout: patience });
  await page.getByText(says.more, { exact: true }).click();
  expect(await chordsShown(page)).toHaveLength(12);
  await button(page, says.play).click();
  await page.locator('.followed-bar-now').waitFor({ timeout: patience });
  await desk.segmentNote.fill('Turned at five without being told.');
  const places = new Set<string>();
  for (let nth = 0; nth < 80 && places.size < 3; nth++) {
    const lit = await page.evaluate(() =>
      ['.bar-now [data-choose]', '.followed-bar-now'].map((selector) =>
        document.querySelector(selector)?.getAttribute('data-choose'),
      ),
    );
    if (lit[0] != null && lit[0] === lit[1]) places.add(lit[0]);
    await page.waitForTimeout(150);
  }
  expect(places.size).toBe(3);
  expect(await page.locator('.band-player').getAttribute('data-late')).toBe('0');
  await page.screenshot({ path: join(outputFolder, 'lesson-band.png'), fullPage: true });
  await button(page, says.stop).click();
  expect(await findWithAxe(page)).toEqual([]);
  expect(watched.faults()).toEqual([]);
});

tell(
  'the band plays a shaped sheet, and one on a practice sheet; on paper stands the sheet alone',
  async () => {
    const { page } = watched;
    const melody = 'G4:1 A4:1 B4:2 | A4:2 F#4:2 | G4:4 | G4:4';
    const spec = { kind: 'chart', chart: '| G | D7 | G | % |', melody, pitch: 'concert', tempo: 160 };
    const query = new URLSearchParams({ spec: JSON.stringify(spec), instrument: 'alto_sax', seed: '3' });
    const practice = page.url().replace('/lesson/', '/practice/lesson/');
    for (const [path, bars] of [
      [`${studio.address}/materials?${query}`, 4],
      [practice, 12],
    ] as const) {
      await page.goto(path);
      const open = page.getByRole('button', { name: new RegExp(`^${says.playSheet}: `) }).first();
      await open.click({ timeout: patience });
      await sheetBar(page, bars).waitFor({ timeout: patience });
      await button(page, says.play).waitFor({ timeout: patience });
      expect(await page.getByText(says.withTune).count()).toBe(bars === 4 ? 1 : 0); // slashes have no notes
      await ready(page);
      await button(page, says.play).click();
      const lit = new Set<string>();
      for (let nth = 0; nth < 80 && lit.size < 2; nth++) {
        const now = page.locator('.followed-bar-now');
        lit.add((await now.getAttribute('data-choose', { timeout: patience })) ?? '');
        await page.waitForTimeout(150);
      }
      expect(lit.size).toBe(2);
      expect(await findWithAxe(page)).toEqual([]);
      await button(page, says.stop).click();
      await page.emulateMedia({ media: 'print' });
      expect(await page.locator('.followed-sheet .notation').first().isVisible()).toBe(true);
      expect(await page.locator('.band-player').isVisible()).toBe(false);
      expect(await page.locator('.followed-bar').first().isVisible()).toBe(false);
      await page.emulateMedia({ media: 'screen' });
    }
    expect(watched.faults()).toEqual([]);
  },
);

function powerOf({ samples }: Captured): number {
  return samples.reduce((sum, sample) => sum + sample * sample, 0) / Math.max(1, samples.length);
}
