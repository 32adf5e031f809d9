// Every screen in both themes and at four widths: axe finds nothing, nothing scrolls sideways, nothing is refused by the
// content security policy. Pictures for people to look at are left in e2e/output.

import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import type { CourseView, DayView, LessonView, StudentsView } from '#contract';
import { addDays, type PlainDate, present } from '#core';
import { words } from '../../src/web/words/index.ts';
import { lessonsOf, readStudio, readView } from '../harness/api.ts';
import { findWithAxe } from '../harness/axe.ts';
import { launchBrowser, openPage, type WatchedPage } from '../harness/browser.ts';
import { addStudent } from '../harness/open-course.ts';
import { settle } from '../harness/settle.ts';
import { outputFolder } from '../harness/story.ts';
import { createDataFolder, type StudioProcess, startStudio } from '../harness/studio-process.ts';
import { createFrame } from '../page-models/frame.ts';
import { createImportPage } from '../page-models/import-page.ts';
import { createLessonPage } from '../page-models/lesson-page.ts';
import { createStudentPage } from '../page-models/student-page.ts';
import { createWelcomePage } from '../page-models/welcome-page.ts';

const folders = [createDataFolder(), createDataFolder()] as const;
let browser: Browser;
let empty: StudioProcess;
let demo: StudioProcess;
let emptyPage: WatchedPage;
let demoPage: WatchedPage;

/** What there is to look at in the demo studio. */
interface Sights {
  readonly today: PlainDate;
  readonly emptyDay: PlainDate;
  readonly student: string;
  readonly course: CourseView;
  readonly planned: LessonView;
  readonly taught: string;
  readonly off: string;
  readonly later: string;
  readonly unit: string;
}
let sights: Sights;

beforeAll(async () => {
  mkdirSync(outputFolder, { recursive: true });
  browser = await launchBrowser();
  const still = { reducedMotion: 'reduce' } as const;
  [empty, demo] = await Promise.all([startStudio(folders[0].path), startStudio(folders[1].path)]);
  [emptyPage, demoPage] = [await openPage(browser, still), await openPage(browser, still)];
  await createWelcomePage(emptyPage.page).open(empty.link);
  await createWelcomePage(demoPage.page).open(demo.link);
  await createWelcomePage(demoPage.page).lookRound();
  sights = await findSights(demoPage.page);
});
afterAll(async () => {
  await browser?.close();
  await Promise.all([empty?.stop(), demo?.stop()]);
  for (const folder of folders) folder.remove();
});
afterEach(() => {
  for (const watched of [emptyPage, demoPage]) expect(watched?.faults() ?? []).toEqual([]);
});

async function findSights(page: Page): Promise<Sights> {
  const { today } = await readStudio(page);
  const day = await readView<DayView>(page, `/api/days/${today}`);
  const { students } = await readView<StudentsView>(page, '/api/students');
  const courses: CourseView[] = [];
  for (const { courses: ids } of students)
    for (const id of ids) courses.push(await readView<CourseView>(page, `/api/courses/${id}`));
  const bars = courses.flatMap(lessonsOf);
  const one = (found: { readonly lesson: string } | undefined, what: string) =>
    present(found ?? null, what).lesson;
  const planned = present(
    day.lessons.find((l) => l.status === 'planned' && l.segments.some((s) => s.kind === 'work')) ?? null,
    'a planned lesson today',
  );
  const busiest = present(
    courses.toSorted((a, b) => b.moves.length + b.notReady.length - a.moves.length - a.notReady.length)[0],
    'a course',
  );
  let emptyDay = addDays(today, 1);
  while ((await readView<DayView>(page, `/api/days/${emptyDay}`)).lessons.length > 0)
    emptyDay = addDays(emptyDay, 1);
  return {
    today,
    emptyDay,
    student: present(
      busiest.learner.student ?? students.find((s) => s.courses.includes(busiest.id))?.id ?? null,
      'a student',
    ),
    course: busiest,
    planned: await readView<LessonView>(page, `/api/lessons/${planned.id}`),
    taught: one(
      bars.findLast((bar) => bar.status === 'taught'),
      'a taught lesson',
    ),
    off: one(
      bars.find((bar) => bar.status === 'cancelled' || bar.status === 'missed'),
      'a lesson off',
    ),
    later: one(
      bars.find((bar) => bar.status === 'planned' && bar.date > today),
      'a lesson to come',
    ),
    unit: 'unit:five-good-notes',
  };
}

const widths = [
  ['desktop', { width: 1440, height: 900 }],
  ['tablet', { width: 820, height: 1180 }],
  ['telephone', { width: 390, height: 844 }],
  ['narrow', { width: 320, height: 640 }],
] as const;

/** Looks at what the page shows now, from all sides; the findings, one a line. */
async function look(page: Page, name: string): Promise<readonly string[]> {
  const findings: string[] = [];
  const picture = (how: string, fullPage = false) =>
    page.screenshot({ path: join(outputFolder, `${name}-${how}.png`), fullPage });
  for (const theme of ['paper', 'hall'] as const) {
    await createFrame(page).setTheme(theme);
    await settle(page);
    findings.push(...(await findWithAxe(page)).map((found) => `${theme}: ${found}`));
    await picture(`desktop-${theme}`);
  }
  await createFrame(page).setTheme('paper');
  await settle(page);
  for (const [width, viewport] of widths) {
    await page.setViewportSize(viewport);
    await settle(page);
    const [needed, given] = await page.evaluate(() => [
      document.documentElement.scrollWidth,
      document.documentElement.clientWidth,
    ]);
    if ((needed ?? 0) > (given ?? 0)) findings.push(`${width}: ${needed} px needed, ${given} px given`);
    if (width === 'tablet' || width === 'telephone') await picture(width);
    if (width === 'telephone')
      findings.push(...(await findWithAxe(page)).map((found) => `telephone: ${found}`));
  }
  await page.setViewportSize(widths[0][1]);
  return findings;
}

async function lookAtPrint(page: Page, name: string, isTitled: boolean): Promise<void> {
  await page.setViewportSize({ width: 794, height: 1123 });
  await page.emulateMedia({ media: 'print' });
  // Every screen's styles are there by now: none of another may take it away.
  if (isTitled) expect(await page.getByRole('heading', { level: 1 }).isVisible()).toBe(true);
  await page.screenshot({ path: join(outputFolder, `${name}-print.png`), fullPage: true });
  await page.pdf({ path: join(outputFolder, `${name}.pdf`), format: 'A4', preferCSSPageSize: true });
  await page.emulateMedia({ media: 'screen' });
  await page.setViewportSize(widths[0][1]);
}

interface Look {
  readonly name: string;
  readonly show: () => Promise<void>;
  /** Printed too; `titled` when its page's title must stand on the paper. */
  readonly prints?: true | 'titled';
}

function lookAtAll(of: () => WatchedPage, looks: readonly Look[]): void {
  for (const { name, show, prints } of looks)
    test(name, async () => {
      const { page } = of();
      await show();
      await page.getByRole('heading').first().waitFor();
      const findings = await look(page, name);
      if (prints) await lookAtPrint(page, name, prints === 'titled');
      expect(findings).toEqual([]);
    });
}

const go = async (watched: WatchedPage, path: string, there: string | RegExp) => {
  await watched.page.goto(new URL(path, watched.page.url()).href);
  await watched.page.getByRole('heading', { name: there }).first().waitFor();
};

describe('an empty studio', () => {
  const at = (path: string, there: string | RegExp) => async () => go(emptyPage, path, there);
  lookAtAll(
    () => emptyPage,
    [
      { name: 'welcome', show: at('/', words.welcome.found.title) },
      {
        name: 'start',
        async show() {
          await createWelcomePage(emptyPage.page).found('Quay Lane Studio', 'Mara Lindqvist');
        },
      },
      { name: 'day-of-an-empty-studio', show: at('/', /\d/) },
      { name: 'students-none', show: at('/students', words.students.title) },
      { name: 'term-none', show: at('/term', words.term.title) },
      {
        name: 'import-preview',
        async show() {
          await go(emptyPage, '/students/import', words.studentsImport.title);
          await createImportPage(emptyPage.page).choose({
            name: 'students.csv',
            text: 'Name;Age;Instrument;Day;Time;Minutes\nNora Quell;9;clarinet;Monday;15:00;30\nRui Ferro;ten;sax;Monday;25:00;30\n',
          });
        },
      },
      {
        name: 'first-lessons',
        async show() {
          const { today } = await readStudio(emptyPage.page);
          for (const [name, birthYear, instrument] of [
            ['Ida Brook', 2017, 'recorder_descant'],
            ['Tom Field', 1968, null],
          ] as const)
            await addStudent(emptyPage.page, name, {
              birthYear,
              instruments: instrument === null ? [] : [{ instrument, stage: 'beginner' }],
              since: today,
            });
          await go(emptyPage, '/students/first', words.students.first.title);
          const day = emptyPage.page.getByRole('combobox', { name: words.students.first.day });
          await day.first().selectOption('1');
        },
      },
      { name: 'changes-few', show: at('/changes', words.changes.title) },
      { name: 'nothing-here', show: at('/no-such-page', words.frame.notFound.title) },
    ],
  );
});

describe('the demo studio', () => {
  const at = (path: () => string, there: string | RegExp) => async () => go(demoPage, path(), there);
  const student = async () => go(demoPage, `/student/${sights.student}`, /./);
  const model = () => createStudentPage(demoPage.page);
  const lesson = async (id: string) => go(demoPage, `/lesson/${id}`, /./);
  const workTitle = () =>
    present(sights.planned.segments.find((s) => s.kind === 'work' && s.skills.length > 0) ?? null, 'work')
      .title;
  const working = async () => {
    await lesson(sights.planned.id);
    await createLessonPage(demoPage.page).show(workTitle());
  };
  const press = (name: string) => demoPage.page.getByRole('button', { name, exact: true }).first().click();
  lookAtAll(
    () => demoPage,
    [
      { name: 'day', show: at(() => '/', /\d/), prints: true },
      { name: 'day-without-lessons', show: at(() => `/day/${sights.emptyDay}`, /\d/) },
      {
        name: 'day-cancel',
        async show() {
          await go(demoPage, '/', /\d/);
          await press(words.day.changeOf(sights.planned.learner.name));
          await demoPage.page.getByRole('menuitem', { name: words.day.cancel }).click();
          await demoPage.page.getByRole('dialog').waitFor();
        },
      },
      { name: 'lesson-begin', show: async () => lesson(sights.planned.id) },
      { name: 'lesson-work', show: working },
      {
        name: 'lesson-levels-on-a-telephone',
        async show() {
          await working();
          await demoPage.page.setViewportSize({ width: 390, height: 844 });
          await press(words.lesson.faces.judge);
          // Within reach without scrolling.
          await expect
            .poll(() => demoPage.page.getByRole('radiogroup').first().boundingBox())
            .toMatchObject({ y: expect.toSatisfy((y: number) => y > 0 && y < 600) });
          await demoPage.page.setViewportSize(widths[0][1]);
        },
      },
      {
        name: 'lesson-share',
        async show() {
          await working();
          await createLessonPage(demoPage.page).judge('carryOn');
          await demoPage.page.getByRole('button', { name: words.lesson.byClock }).waitFor();
        },
      },
      {
        name: 'lesson-keys',
        async show() {
          await working();
          await press(words.lesson.keys);
          await demoPage.page.getByRole('dialog').waitFor();
        },
      },
      {
        name: 'lesson-take-up',
        async show() {
          await working();
          await press(words.lesson.takeUp);
          await demoPage.page.getByRole('dialog').waitFor();
        },
      },
      {
        name: 'lesson-why',
        async show() {
          await working();
          await press(words.lesson.whyNow);
        },
      },
      { name: 'lesson-off', show: async () => lesson(sights.off) },
      { name: 'lesson-taught', show: async () => lesson(sights.taught) },
      { name: 'lesson-later', show: async () => lesson(sights.later) },
      { name: 'close', show: at(() => `/lesson/${sights.planned.id}/close`, words.lesson.closing.review) },
      { name: 'close-too-soon', show: at(() => `/lesson/${sights.later}/close`, /./) },
      { name: 'close-done', show: at(() => `/lesson/${sights.taught}/close`, words.lesson.closing.moved) },
      {
        name: 'student',
        async show() {
          await student();
          await model().score.waitFor();
          // What moved does not push the score away: two systems end above the fold.
          const second = demoPage.page.locator('.score-system').nth(1);
          await expect
            .poll(async () => {
              const box = await second.boundingBox();
              return box === null ? Number.POSITIVE_INFINITY : box.y + box.height;
            })
            .toBeLessThan(widths[0][1].height);
        },
        prints: 'titled',
      },
      {
        name: 'student-table',
        async show() {
          await student();
          await model().showTable();
        },
        prints: 'titled',
      },
      {
        name: 'student-what-if',
        async show() {
          await student();
          await model().openWhatIf();
          await model().imagineAway(addDays(sights.today, 1), addDays(sights.today, 14));
        },
      },
      {
        name: 'student-give-unit',
        async show() {
          await student();
          await press(words.student.units.give);
          await demoPage.page.getByRole('dialog').waitFor();
        },
      },
      {
        name: 'student-plan',
        async show() {
          await student();
          await demoPage.page.getByRole('heading', { name: words.student.plan.title }).click();
        },
      },
      { name: 'students', show: at(() => '/students', words.students.title), prints: true },
      {
        name: 'student-dialog',
        async show() {
          await go(demoPage, `/students?change=${sights.student}`, words.students.title);
          await demoPage.page.getByRole('dialog').getByLabel(words.students.form.name).first().waitFor();
        },
      },
      { name: 'units', show: at(() => '/units', words.units.title), prints: true },
      { name: 'unit', show: at(() => `/unit/${sights.unit}`, /Five good notes/), prints: true },
      {
        name: 'unit-editor',
        async show() {
          await go(demoPage, `/unit/${sights.unit}`, /Five good notes/);
          await demoPage.page.getByRole('link', { name: words.units.unit.change, exact: true }).click();
          await demoPage.page.getByLabel(words.units.editor.title).first().waitFor();
        },
      },
      { name: 'skills', show: at(() => '/skills', words.units.skills.title) },
      {
        name: 'materials',
        show: async () => {
          await go(demoPage, '/materials', words.materials.title);
          await demoPage.page.locator('.sheet-view[aria-busy="false"] svg').first().waitFor();
        },
        prints: true,
      },
      {
        name: 'materials-keep',
        async show() {
          await go(demoPage, '/materials', words.materials.title);
          await demoPage.page.locator('.sheet-view[aria-busy="false"] svg').first().waitFor();
          await press(words.materials.keep);
          await demoPage.page.getByRole('dialog').waitFor();
        },
      },
      {
        name: 'band-keep',
        async show() {
          await go(demoPage, '/band', words.player.band.title);
          await press(words.player.band.keep);
          await demoPage.page.getByRole('dialog').waitFor();
        },
      },
      {
        name: 'practice-week',
        async show() {
          await go(demoPage, `/practice/week/${sights.today}`, words.practice.weekTitle);
          await demoPage.page.getByRole('status').filter({ hasText: words.practice.ready }).waitFor();
        },
        prints: true,
      },
      {
        name: 'practice-sheet',
        show: at(() => `/practice/lesson/${sights.taught}`, words.practice.title),
        prints: true,
      },
      { name: 'term', show: at(() => '/term', words.term.title), prints: true },
      { name: 'settings', show: at(() => '/settings', words.settings.title) },
      { name: 'changes', show: at(() => '/changes', words.changes.title) },
    ],
  );
});
