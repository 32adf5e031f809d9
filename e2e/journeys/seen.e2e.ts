// A teacher who sees little, and paper: text spaced out, colours forced by the system, more contrast asked for, and what a
// printer makes of a screen. Each test names its success criterion of WCAG 2.2 (W3C Recommendation, 12 December 2024).

import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import type { DayView } from '#contract';
import { present } from '#core';
import { words } from '../../src/web/words/index.ts';
import { readStudio, readView } from '../harness/api.ts';
import { launchBrowser, openPage } from '../harness/browser.ts';
import { settle } from '../harness/settle.ts';
import { createDataFolder, type StudioProcess, startStudio } from '../harness/studio-process.ts';
import { createWelcomePage } from '../page-models/welcome-page.ts';

const folder = createDataFolder();
let studio: StudioProcess;
let browser: Browser;
let page: Page;
let lesson: string;

beforeAll(async () => {
  [studio, browser] = await Promise.all([startStudio(folder.path), launchBrowser()]);
  // A style of the reader's own stands outside of the page's policy, as a browser's extension does.
  page = (await openPage(browser, { reducedMotion: 'reduce', bypassCSP: true })).page;
  await createWelcomePage(page).open(studio.link);
  await createWelcomePage(page).lookRound();
  const { today } = await readStudio(page);
  const { lessons } = await readView<DayView>(page, `/api/days/${today}`);
  const planned = lessons.find(
    (one) => one.status === 'planned' && one.segments.some((s) => s.kind === 'work'),
  );
  lesson = present(planned ?? null, 'a lesson').id;
});
afterEach(async () => {
  await page.emulateMedia({ media: 'screen', forcedColors: 'none', contrast: 'no-preference' });
  await page.setViewportSize({ width: 1440, height: 900 });
});
afterAll(async () => {
  await browser?.close();
  await studio?.stop();
  folder.remove();
});

const go = async (path: string) => {
  await page.goto(new URL(path, page.url()).href);
  await page.getByRole('main').getByRole('heading', { level: 1 }).waitFor();
  await page.getByText(words.frame.loading, { exact: true }).waitFor({ state: 'detached' });
  await settle(page);
};
/** The text spacing of success criterion 1.4.12. */
const spacing = `* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important; }
  p { margin-bottom: 2em !important; }`;

test('text may be spaced out at the width of a telephone (1.4.12)', async () => {
  await page.setViewportSize({ width: 390, height: 844 });
  // no date is longer than a Wednesday in September
  for (const path of [
    '/',
    '/day/2026-09-30',
    '/students',
    '/units',
    '/term',
    `/lesson/${lesson}`,
    `/lesson/${lesson}/close`,
  ]) {
    await go(path);
    await page.addStyleTag({ content: spacing });
    await settle(page);
    const [needed, given] = await page.evaluate(() => {
      const { scrollWidth, clientWidth } = document.documentElement;
      return [scrollWidth, clientWidth];
    });
    expect(`${path} ${needed}`).toBe(`${path} ${given}`);
  }
});

test('what is spaced out is not cut off (1.4.12)', async () => {
  const cut = () =>
    page.evaluate(() =>
      ['.lesson-ongoing', '.head-studio'].flatMap((name) =>
        [...document.querySelectorAll(name)]
          .filter((one) => one.checkVisibility())
          .filter((one) => one.scrollHeight > one.clientHeight + 2 || one.scrollWidth > one.clientWidth + 1)
          .map((one) => `${name}: ${one.textContent}`),
      ),
    );
  for (const path of ['/', `/lesson/${lesson}`]) {
    await go(path);
    await page.setViewportSize({ width: 760, height: 900 });
    await page.addStyleTag({ content: spacing });
    await settle(page);
    expect(await cut()).toEqual([]);
  }
});

/** What a control's ground comes out as on the screen: a pixel inside its edge, away from its words. */
async function groundOf(control: Locator): Promise<string> {
  const picture = (await control.screenshot()).toString('base64');
  return page.evaluate(async (png) => {
    const image = await createImageBitmap(await (await fetch(`data:image/png;base64,${png}`)).blob());
    const canvas = new OffscreenCanvas(image.width, image.height);
    const context = canvas.getContext('2d');
    context?.drawImage(image, 0, 0);
    return [...(context?.getImageData(6, 6, 1, 1).data ?? [])].join(' ');
  }, picture);
}

test('forced colours tell what is chosen (1.4.1, 1.4.11)', async () => {
  await page.emulateMedia({ forcedColors: 'active', colorScheme: 'dark' });
  const differ = async (chosen: Locator, other: Locator) =>
    expect(await groundOf(chosen.first())).not.toBe(await groundOf(other.first()));
  await go(`/lesson/${lesson}/close`);
  await differ(
    page.locator('.close-choice[data-selected]'),
    page.locator('.close-choice:not([data-selected])'),
  );
  await go(`/lesson/${lesson}`);
  await differ(
    page.locator('.strip-button[aria-current="step"]'),
    page.locator('.strip-button:not([aria-current="step"])'),
  );
  await go('/materials');
  await differ(page.locator('.kind[data-selected]'), page.locator('.kind:not([data-selected])'));
});

test('who asks for more contrast gets no faint ink', async () => {
  const ink = (of: string) =>
    page.evaluate((name) => {
      const probe = document.body.appendChild(document.createElement('i'));
      probe.style.color = `var(${name})`;
      const { color } = getComputedStyle(probe);
      probe.remove();
      return color;
    }, of);
  await go('/');
  expect(await ink('--ink-faint')).not.toBe(await ink('--ink'));
  await page.emulateMedia({ contrast: 'more' });
  expect(await ink('--ink-faint')).toBe(await ink('--ink'));
});

test('a lesson to close is printed with what was chosen, and nothing is cut', async () => {
  await go(`/lesson/${lesson}/close`);
  await page.getByLabel(words.lesson.lessonNote).fill('One line of a note.\n'.repeat(30));
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: 794, height: 1123 });
  await settle(page);
  const shown = await page.evaluate(() => ({
    colours: [...document.querySelectorAll('.close-choice')]
      .filter((one) => one.checkVisibility())
      .map((one) => [one.hasAttribute('data-selected'), getComputedStyle(one).color]),
    cut: [...document.querySelectorAll('textarea')].filter(
      (one) => one.checkVisibility() && one.scrollHeight > one.clientHeight + 2,
    ).length,
  }));
  expect(shown.colours.length).toBeGreaterThan(0);
  for (const one of shown.colours) expect(one).toEqual([true, 'rgb(0, 0, 0)']);
  expect(shown.cut).toBe(0);
});
