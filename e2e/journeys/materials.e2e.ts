// One unit, four students: an alto saxophonist of nine, a guitarist, a violinist and a trombonist who reads the bass clef each
// get the sheet of the same activity in their own key, clef, range and transposition, on screen, as MusicXML and on their
// practice sheet.
// Source of clefs, transpositions, ranges and first keys: checks/instruments/data/instruments.json (see its README).

import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import type { CourseUnitCompareView, LessonView, UnitView } from '#contract';
import { type PlainDate, present } from '#core';
import type { Stage, UnitId } from '#planning';
import { words } from '../../src/web/words/index.ts';
import { materialFields } from '../../src/web/words/materials.ts';
import { lessonsOf, readCourseOf, readView, sendCommand } from '../harness/api.ts';
import { findWithAxe } from '../harness/axe.ts';
import { launchBrowser, openPage, patience, type WatchedPage } from '../harness/browser.ts';
import { foundStudio } from '../harness/found-studio.ts';
import { giveUnit, openCourse } from '../harness/open-course.ts';
import { pitchNumber, readSheetFacts, type SheetFacts } from '../harness/read-notes.ts';
import { readPdf } from '../harness/read-pdf.ts';
import { createStory, outputFolder } from '../harness/story.ts';
import { createDataFolder, type StudioProcess, startStudio } from '../harness/studio-process.ts';
import { createMaterialsPage } from '../page-models/materials-page.ts';
import { createWelcomePage } from '../page-models/welcome-page.ts';

const unit = 'unit:five-good-notes' as UnitId;
const activity = 'the-ladder';

interface Player {
  readonly name: string;
  readonly instrument: 'alto_sax' | 'guitar' | 'violin' | 'trombone';
  readonly stage: Stage;
  readonly age: number;
  readonly time: string;
  /** Sign and line of the clef they read. */
  readonly clef: string;
}
const players: readonly Player[] = [
  { name: 'Ada Wren', instrument: 'alto_sax', stage: 'beginner', age: 9, time: '15:00', clef: 'G2' },
  { name: 'Ben Hollis', instrument: 'guitar', stage: 'elementary', age: 34, time: '15:30', clef: 'G2' },
  { name: 'Cleo Marsh', instrument: 'violin', stage: 'elementary', age: 12, time: '16:00', clef: 'G2' },
  { name: 'Dov Pike', instrument: 'trombone', stage: 'beginner', age: 13, time: '16:30', clef: 'F4' },
];

interface ReferenceInstrument {
  readonly id: string;
  readonly name: string;
  readonly semitones_written_to_sounding: number;
  readonly comfortable_written: Readonly<Record<string, readonly [string, string]>>;
  readonly first_keys_written: readonly string[];
  readonly musicxml_sound: string;
}
const reference: readonly ReferenceInstrument[] = JSON.parse(
  readFileSync(join(import.meta.dirname, '../../checks/instruments/data/instruments.json'), 'utf8'),
).instruments;
const referenceOf = (player: Player) =>
  present(
    reference.find(({ id }) => id === player.instrument),
    'the instrument in the reference',
  );

const folder = createDataFolder();
let studio: StudioProcess;
let browser: Browser;
let watched: WatchedPage;
let today: PlainDate;
const factsByName = new Map<string, SheetFacts>();

beforeAll(async () => {
  mkdirSync(outputFolder, { recursive: true });
  [studio, browser] = await Promise.all([startStudio(folder.path), launchBrowser()]);
  watched = await openPage(browser, { acceptDownloads: true });
  await createWelcomePage(watched.page).open(studio.link);
  await foundWeirHouse(watched.page);
});
afterAll(async () => {
  await browser?.close();
  await studio?.stop();
  folder.remove();
});

const tell = createStory(() => watched?.context.pages() ?? []);
const address = (path: string) => new URL(path, studio.address).href;

async function foundWeirHouse(page: Page): Promise<void> {
  today = await foundStudio(page, 'Weir House');
  for (const player of players) await addPlayer(page, player);
}

/** The student, a weekly lesson from today on, and the unit. */
async function addPlayer(page: Page, { name, instrument, stage, age, time }: Player): Promise<void> {
  const wish = { name, instrument, stage, age, from: today, time, strands: ['Technique'] };
  const { course, strands } = await openCourse(page, wish);
  await giveUnit(page, name, course, unit, present(strands[0], 'the strand'));
}

const noteNumber = (name: string): number => {
  const [, step = '', sign = '', octave = ''] = /^([A-G])([#b]?)(\d)$/.exec(name) ?? [];
  return pitchNumber(step, sign === '#' ? 1 : sign === 'b' ? -1 : 0, Number(octave));
};
/** Major keys by fifths. */
const fifthsByKey: Readonly<Record<string, number>> = {
  C: 0,
  G: 1,
  D: 2,
  A: 3,
  E: 4,
  F: -1,
  Bb: -2,
  Eb: -3,
  Ab: -4,
};

tell(
  'each of the four gets the activity’s sheet in their own key, clef, range and transposition',
  async () => {
    const { page } = watched;
    await page.goto(address(`/unit/${unit}`));
    const { document } = await readView<UnitView>(page, `/api/units/${unit}`);
    const material = document.activities.find(({ key }) => key === activity)?.materials[0];
    await page
      .getByRole('link', { name: present(material, 'a material on the activity').title, exact: true })
      .click();
    const materials = createMaterialsPage(page);
    for (const player of players) {
      const known = referenceOf(player);
      await materials.choosePlayer(player.name, known.name);
      await materials.drawn();
      await materials.sheet.getByRole('img').filter({ hasText: known.name }).first().waitFor();
      const facts = readSheetFacts(await materials.take('musicxml'));
      factsByName.set(player.name, facts);
      expect(facts.clef, player.name).toBe(player.clef);
      expect(facts.transposition, player.name).toBe(known.semitones_written_to_sounding);
      expect(facts.instrumentSound).toBe(known.musicxml_sound);
      const firstFifths = known.first_keys_written.map((key) => fifthsByKey[key]);
      expect(firstFifths, player.name).toContain(facts.fifths);
      const [low = '', high = ''] = known.comfortable_written['beginner'] ?? [];
      expect(Math.min(...facts.notes), player.name).toBeGreaterThanOrEqual(noteNumber(low));
      expect(Math.max(...facts.notes), player.name).toBeLessThanOrEqual(noteNumber(high));
      // Five notes of a major scale: steps of 2, 2, 1 and 2 semitones.
      const rising = [...new Set(facts.notes)].sort((a, b) => a - b);
      expect(
        rising.slice(1).map((midi, i) => midi - (rising[i] ?? Number.NaN)),
        player.name,
      ).toEqual([2, 2, 1, 2]);
    }
    expect(
      new Set(
        [...factsByName.values()].map(
          ({ fifths, clef, transposition }) => `${fifths} ${clef} ${transposition}`,
        ),
      ).size,
    ).toBe(4);
  },
);

tell('the screen stands up to axe in both themes, and Another one makes another', async () => {
  const { page } = watched;
  const reading = new URLSearchParams({
    spec: JSON.stringify({ kind: 'reading' }),
    instrument: 'violin',
    stage: 'elementary',
    seed: '1',
  });
  await page.goto(address(`/materials?${reading}`));
  const materials = createMaterialsPage(page);
  await materials.drawn();
  const first = await materials.take('musicxml');
  await materials.another();
  await expect.poll(() => new URL(page.url()).searchParams.get('seed')).toBe('2');
  await materials.drawn();
  expect(readSheetFacts(await materials.take('musicxml')).notes).not.toEqual(readSheetFacts(first).notes);
  for (const theme of ['paper', 'hall']) {
    await page.evaluate((chosen) => document.documentElement.setAttribute('data-theme', chosen), theme);
    expect(await findWithAxe(page), theme).toEqual([]);
  }
  await page.evaluate(() => document.documentElement.setAttribute('data-theme', 'paper'));
});

tell(
  'a chart that cannot be read is told at its field, with the nearest chord, and made once it is mended',
  async () => {
    const { page } = watched;
    const typed = new URLSearchParams({ spec: JSON.stringify({ kind: 'chart', chart: '| Dm7 | Hm7 |' }) });
    await page.goto(address(`/materials?${typed}`));
    const chords = page.getByLabel(materialFields['chart'] ?? '', { exact: true });
    await page.getByText(/^Bar 2: “Hm7” .* Cm7\.$/).waitFor();
    expect(await chords.getAttribute('data-invalid')).toBe('true');
    await chords.fill('| Dm7 | G7 |');
    await createMaterialsPage(page).drawn();
  },
);

tell('a sheet is kept on an activity of the library', async () => {
  const { page } = watched;
  const spec = new URLSearchParams({
    spec: JSON.stringify({ kind: 'rhythm', metre: '3/4', title: 'Waltz steps' }),
  });
  await page.goto(address(`/materials?${spec}`));
  const materials = createMaterialsPage(page);
  await materials.drawn();
  await materials.keep('The beat in your feet', 'Rhythm parade');
  const { document } = await readView<UnitView>(page, '/api/units/unit:the-beat-in-your-feet');
  const kept = document.activities.find(({ title }) => title === 'Rhythm parade')?.materials.at(-1);
  expect(kept).toMatchObject({
    key: 'waltz-steps',
    title: 'Waltz steps',
    spec: { kind: 'rhythm', metre: '3/4' },
  });
});

/** Puts the sheet on the first activity of the student's own copy, and teaches that activity in today's lesson. */
async function teach(page: Page, name: string): Promise<void> {
  const course = await readCourseOf(page, name);
  const { lesson } = present(lessonsOf(course)[0], 'a lesson today');
  const { id } = present(course.units[0], 'the unit');
  const { document, courseRevision } = await readView<CourseUnitCompareView>(page, `/api/course-units/${id}`);
  const sheet = present(document.activities.find(({ key }) => key === activity)?.materials[0], 'the sheet');
  const [first, ...others] = document.activities;
  const begun = { ...present(first, 'a first activity'), materials: [sheet] };
  await sendCommand(page, {
    type: 'courseUnit.change',
    seen: courseRevision,
    courseUnit: id,
    document: { ...document, activities: [begun, ...others] },
  });
  const { segments } = await readView<LessonView>(page, `/api/lessons/${lesson}`);
  const segment = present(
    segments.find((one) => one.activity === begun.key),
    'its segment today',
  ).id;
  await sendCommand(page, { type: 'segment.log', segment, seconds: 480, outcome: 'finished', share: null });
  await sendCommand(page, { type: 'lesson.close', lesson, minutes: null });
}

tell('the day’s practice sheets hold each student’s own notation, and print alike each time', async () => {
  const { page } = watched;
  for (const { name } of players) await teach(page, name);
  const pictures: Buffer[][] = [];
  for (let turn = 0; turn < 2; turn++) {
    await page.goto(address(`/practice/day/${today}`));
    await page.getByRole('status').filter({ hasText: words.practice.ready }).waitFor();
    await page.emulateMedia({ media: 'print' });
    await page.evaluate(() => document.fonts.ready.then(() => undefined));
    const sheets = page.getByRole('article');
    expect(await sheets.count()).toBe(players.length);
    const taken: Buffer[] = [];
    for (const [at, { name }] of players.entries()) {
      const sheet = page.getByRole('article', { name: `${words.practice.title}: ${name}` });
      await sheet.getByRole('img', { name: /.+/ }).first().waitFor({ timeout: patience });
      expect(await sheet.locator('.practice-box').count()).toBeGreaterThan(0);
      await sheet.getByText(words.practice.care).waitFor();
      const path = join(outputFolder, `practice-${at + 1}.png`);
      taken.push(await sheet.screenshot(turn === 0 ? { path } : {}));
    }
    pictures.push(taken);
    await page.emulateMedia({ media: 'screen' });
  }
  const [first = [], second = []] = pictures;
  for (const [at, { name }] of players.entries())
    expect(first[at]?.equals(second[at] ?? Buffer.alloc(0)), `${name}: printed alike twice`).toBe(true);
  expect(new Set(first.map((picture) => picture.toString('base64'))).size).toBe(players.length);
  expect(await findWithAxe(page)).toEqual([]);
  await page.emulateMedia({ media: 'print' });
  const pdf = await page.pdf({ preferCSSPageSize: true });
  const pages = pdf.toString('latin1').match(/\/Type ?\/Page\b/g) ?? [];
  expect(pages.length).toBeGreaterThanOrEqual(players.length);
  expect(pdf.toString('latin1')).not.toMatch(/\/Subtype ?\/Image/); // vector

  // Loose pages get mixed: a sheet that runs over its page says on each whose it is.
  await page.locator('.practice-tasks').evaluateAll((tables) => {
    for (const table of tables) table.style.height = '225mm';
  });
  const { pages: longer, text } = readPdf(await page.pdf({ preferCSSPageSize: true }));
  expect(longer).toBeGreaterThanOrEqual(2 * players.length);
  if (text !== null)
    for (const printed of text.split('\f').filter((one) => one.trim() !== ''))
      expect(
        players.filter(({ name }) => printed.includes(name)),
        printed,
      ).toHaveLength(1);
  await page.emulateMedia({ media: 'screen' });
});

tell('minutes a day are changed on the sheet and stand in the lesson', async () => {
  const { page } = watched;
  const [ada] = players;
  const course = await readCourseOf(page, present(ada, 'a player').name);
  const { lesson } = present(lessonsOf(course)[0], 'a lesson');
  await page.goto(address(`/practice/lesson/${lesson}`));
  const minutes = page.getByLabel(words.practice.minutes, { exact: true });
  expect(await minutes.inputValue()).toBe('15'); // a beginner of nine (common practice, no source)
  await minutes.fill('25');
  await page.getByText(words.practice.aDay(25), { exact: true }).waitFor();
  await expect
    .poll(async () => (await readView<LessonView>(page, `/api/lessons/${lesson}`)).practice, {
      timeout: patience,
    })
    .toContain('25 minutes a day');
  expect(watched.faults()).toEqual([]);
});
