// How long a teacher waits for the sheet while shaping it: from the change of a field to the new page on the glass, in a real
// browser on the built application; and what bare Verovio takes for the same MusicXML in the same worker, turn about.

import { readdirSync } from 'node:fs';
import { loadavg } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page, Worker } from 'playwright-core';
import { present } from '#core';
import { createSheet, findInstrument, parseMaterialSpec, scoreToMusicXml } from '#music';
import { launchBrowser, openPage } from '../e2e/harness/browser.ts';
import { createDataFolder, startStudio } from '../e2e/harness/studio-process.ts';
import { draftToSpec, queryToDraft } from '../src/web/screens/materials/material-draft.ts';
import { materialFields, materials } from '../src/web/words/materials.ts';
import { barePage } from './bare-page.ts';
import { quantile } from './quantile.ts';

/** What the design asks for, in milliseconds. */
const wanted = 150;

/** A sheet takes no longer; then the change made no other one. */
const longestMs = 5000;

interface Change {
  readonly kind: 'scale' | 'rhythm' | 'reading' | 'line';
  readonly field: string;
  readonly value: string;
}

const scales: readonly (readonly [string, string])[] = [
  ['octaves', '2'],
  ['pattern', 'thirds'],
  ['start', 'D'],
  ['value', 'crotchet'],
  ['scale', 'natural_minor'],
  ['keys', '3'],
  ['direction', 'down_up'],
  ['start', 'Eb'],
];
const rhythms: readonly (readonly [string, string])[] = [
  ['metre', '3/4'],
  ['lines', '4'],
  ['grade', '5'],
  ['bars', '8'],
  ['lines', '6'],
  ['syncopation', 'some'],
  ['metre', '6/8'],
];
const readings: readonly (readonly [string, string])[] = [
  ['key', 'G'],
  ['mode', 'minor'],
  ['grade', '4'],
  ['lines', '4'],
  ['metre', '3/4'],
  ['key', 'Bb'],
  ['grade', '6'],
  ['marks', 'none'],
];
const lines: readonly (readonly [string, string])[] = [
  ['content', 'guide_tones'],
  ['choruses', '4'],
  ['content', 'approach_notes'],
  ['choruses', '3'],
  ['chart', '| Cm7 | F7 | Bbmaj7 | Ebmaj7 | Am7b5 | D7 | Gm6 | % |'],
  ['content', 'motif'],
  ['choruses', '2'],
];
const changesByKind = { scale: scales, rhythm: rhythms, reading: readings, line: lines } as const;
const changes: readonly Change[] = (['scale', 'rhythm', 'reading', 'line'] as const).flatMap((kind) =>
  changesByKind[kind].map(([field, value]) => ({ kind, field, value })),
);

/** Prints the figures; whether the page's processor time, which no load of the machine stretches, keeps the bound. */
export async function runPreviewBench(): Promise<boolean> {
  const folder = createDataFolder();
  const studio = await startStudio(folder.path);
  const browser = await launchBrowser();
  try {
    const { page } = await openPage(browser);
    await page.goto(studio.link);
    const founded = await page.context().request.post(`${studio.address}/api/commands`, {
      headers: { origin: studio.address },
      data: {
        id: 'change:bench',
        command: {
          type: 'studio.found',
          name: 'Bench',
          teacher: '',
          timeZone: 'UTC',
          locale: 'en-GB',
          starterUnits: false,
        },
      },
    });
    if (!founded.ok()) throw new Error(await founded.text());
    const cpuSeconds = await watchProcessor(browser);
    const ours: number[] = [];
    const bare: number[] = [];
    const cpu = { ours: 0, bare: 0 };
    const rows: string[] = [];
    let openKind = '';
    for (const change of changes) {
      if (openKind === '') await open(page, studio.address, change.kind);
      else if (change.kind !== openKind) await turnTo(page, change.kind);
      openKind = change.kind;
      const before = await cpuSeconds();
      const took = await changeField(page, change);
      const between = await cpuSeconds();
      if (took === null) throw new Error(`${change.kind} ${change.field} → ${change.value} changes nothing`);
      const worker = present(page.workers()[0], 'the engraver at work');
      const [alone, cpuAlone] = await drawBare(worker, musicXmlOf(page), cpuSeconds);
      ours.push(took);
      bare.push(alone);
      cpu.ours += between - before;
      cpu.bare += cpuAlone;
      rows.push(
        `  ${change.kind.padEnd(8)} ${`${change.field} → ${change.value}`.slice(0, 34).padEnd(34)} ${took.toFixed(0).padStart(5)} ms, bare Verovio ${alone.toFixed(0).padStart(4)} ms`,
      );
    }
    const ms = (all: readonly number[], q: number) => quantile(all, q).toFixed(0);
    const mean = (seconds: number) => ((seconds * 1000) / ours.length).toFixed(0);
    const ratios = ours.map((one, i) => one / (bare[i] ?? Number.NaN));
    console.log(`
The preview: from the change of a field to the new page painted (${ours.length} changes, built application, Chromium;
load of the machine ${loadavg()
      .slice(0, 2)
      .map((one) => one.toFixed(1))
      .join(' and ')} over 1 and 5 minutes)
${rows.join('\n')}
  change → painted              median ${ms(ours, 0.5)} ms, p95 ${ms(ours, 0.95)} ms, worst ${ms(ours, 1)} ms (wanted: ${wanted} ms)
  bare Verovio, same worker     median ${ms(bare, 0.5)} ms, p95 ${ms(bare, 0.95)} ms
  ratio                         median ${quantile(ratios, 0.5).toFixed(2)}, p95 ${quantile(ratios, 0.95).toFixed(2)}
  processor time of the page    mean ${mean(cpu.ours)} ms a change, bare Verovio ${mean(cpu.bare)} ms: ratio ${(cpu.ours / cpu.bare).toFixed(2)}`);
    return (cpu.ours * 1000) / ours.length <= wanted;
  } finally {
    await browser.close();
    await studio.stop();
    folder.remove();
  }
}

/** The screen with a sheet of the first kind; the engraver is loaded once, as in an hour's work. */
async function open(page: Page, address: string, kind: string): Promise<void> {
  const query = new URLSearchParams({ spec: JSON.stringify({ kind }), instrument: 'violin', seed: '1' });
  await page.goto(`${address}/materials?${query}`);
  await settle(page);
}

async function turnTo(page: Page, kind: keyof typeof materials.kinds): Promise<void> {
  await page.locator('label.kind', { hasText: materials.kinds[kind] }).click();
  await page.waitForFunction((wanted) => location.search.includes(wanted), encodeURIComponent(`"${kind}"`));
  await settle(page);
}

async function settle(page: Page): Promise<void> {
  await page.locator('.sheet-view[aria-busy="false"] svg[role="img"]').first().waitFor();
  await page.waitForTimeout(300);
  await page.evaluate(() => document.querySelector('details')?.setAttribute('open', ''));
}

/**
 * Milliseconds from the event that changes the field to the frame after which the new drawing is on the glass; null where the
 * drawing stays as it was.
 */
async function changeField(page: Page, { field, value }: Change): Promise<number | null> {
  const control = page
    .locator('form')
    .getByLabel(materialFields[field] ?? field, { exact: true })
    .first();
  return control.evaluate(
    async (element, [next, longest]) => {
      const input = element as HTMLSelectElement | HTMLTextAreaElement | HTMLInputElement; // what a label names
      const view = document.querySelector('.sheet-view');
      if (view === null) throw new Error('there is no sheet to look at');
      if (input.value === next) throw new Error(`the field is ${next} already`);
      if (input instanceof HTMLSelectElement && ![...input.options].some((one) => one.value === next))
        throw new Error(`${next} is none of ${[...input.options].map((one) => one.value).join(', ')}`);
      const prototype = Object.getPrototypeOf(input);
      const set = Object.getOwnPropertyDescriptor(prototype, 'value')?.set;
      const drawn = new Promise<void>((done) => {
        const watcher = new MutationObserver((found) => {
          const isNew = found.some((one) => [...one.addedNodes].some((node) => node.nodeName === 'svg'));
          if (!isNew) return;
          watcher.disconnect();
          done();
        });
        watcher.observe(view, { childList: true, subtree: true });
      });
      const from = performance.now();
      set?.call(input, next);
      input.dispatchEvent(
        new Event(input instanceof HTMLSelectElement ? 'change' : 'input', { bubbles: true }),
      );
      const isDrawn = await Promise.race([
        drawn.then(() => true),
        new Promise<false>((late) => setTimeout(() => late(false), longest)),
      ]);
      if (!isDrawn) return null;
      // A frame is painted after its callbacks; the task after them comes when that is done.
      await new Promise<void>((done) => requestAnimationFrame(() => setTimeout(done)));
      return performance.now() - from;
    },
    [value, longestMs] as const,
  );
}

/** The sheet of the page's address. */
function musicXmlOf(page: Page): string {
  const draft = queryToDraft(new URL(page.url()).search.slice(1));
  const spec = parseMaterialSpec(draftToSpec(draft));
  if (!spec.ok) throw new Error(spec.error.message);
  const { stage, age, seed } = draft;
  const instrument = present(findInstrument(draft.instrument), 'the instrument of the address');
  const sheet = createSheet(spec.value, { instrument, stage, age, seed });
  if (!sheet.ok) throw new Error(sheet.error.message);
  return scoreToMusicXml(sheet.value.score);
}

const assets = join(import.meta.dirname, '../dist/app/assets');
const asset = (name: RegExp) =>
  `/assets/${present(
    readdirSync(assets).find((file) => name.test(file)),
    `a built file like ${name}`,
  )}`;

/** Seconds of processor time that the browser's pages have used so far. */
async function watchProcessor(browser: Browser): Promise<() => Promise<number>> {
  const devtools = await browser.newBrowserCDPSession();
  return async () => {
    const { processInfo } = await devtools.send('SystemInfo.getProcessInfo');
    return processInfo
      .filter(({ type }) => type === 'renderer')
      .reduce((sum, { cpuTime }) => sum + cpuTime, 0);
  };
}

/** Makes a second engraver in the worker that draws for the screen, with our page and breaks, once. */
async function loadBare(worker: Worker): Promise<void> {
  await worker.evaluate(
    async ({ module, toolkit, page }) => {
      const scope = self as unknown as Record<string, unknown>; // keeps the second engraver from one turn to the next
      if (scope['bareVerovio'] === undefined) {
        const [{ default: load }, { VerovioToolkit }] = await Promise.all([import(module), import(toolkit)]);
        const bare = new VerovioToolkit(await load());
        bare.setOptions(page);
        scope['bareVerovio'] = bare;
      }
    },
    {
      module: asset(/^verovio-module-.*\.js$/),
      toolkit: asset(/^verovio-(?!module).*\.js$/),
      page: barePage,
    },
  );
}

/** Milliseconds that Verovio alone takes for a sheet, and seconds of processor time. */
async function drawBare(
  worker: Worker,
  musicXml: string,
  cpuSeconds: () => Promise<number>,
): Promise<readonly [number, number]> {
  await loadBare(worker);
  const before = await cpuSeconds();
  const took = await worker.evaluate((text) => {
    const bare = (self as unknown as Record<string, unknown>)['bareVerovio'] as {
      loadData(text: string): boolean;
      getPageCount(): number;
      renderToSVG(page: number): string;
    };
    const from = performance.now();
    bare.loadData(text);
    for (let page = 1; page <= bare.getPageCount(); page++) bare.renderToSVG(page);
    return performance.now() - from;
  }, musicXml);
  return [took, (await cpuSeconds()) - before];
}
