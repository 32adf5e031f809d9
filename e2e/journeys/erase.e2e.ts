// A family asks that nothing is kept: a student is erased for good on their own page, by hand, while other windows have them
// open and one has something to send.

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Download, Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import type { ChangesView, CourseView, StudentsView, TermView } from '#contract';
import { addDays, createId, present } from '#core';
import { words } from '../../src/web/words/index.ts';
import { lessonsOf, readStudio, readView, sendCommand } from '../harness/api.ts';
import { findWithAxe } from '../harness/axe.ts';
import { launchBrowser, openPage, openWindow, type WatchedPage } from '../harness/browser.ts';
import { openCourse } from '../harness/open-course.ts';
import { foundSmallStudio, type SmallStudio } from '../harness/small-studio.ts';
import { createStory } from '../harness/story.ts';
import { createDataFolder, type StudioProcess, startStudio } from '../harness/studio-process.ts';
import { createFrame } from '../page-models/frame.ts';
import { createLessonPage } from '../page-models/lesson-page.ts';

const folder = createDataFolder();
const say = words.erase;
let studio: StudioProcess;
let browser: Browser;
let one: WatchedPage;
/** Shows the student's page, and hears of what happens. */
let looking: WatchedPage;
/** Another browser: shows a lesson of theirs, without a network. */
let away: WatchedPage;
let small: SmallStudio;
const friend = 'Ada Brook';
const typedAway = 'Played the whole tune by heart.';

beforeAll(async () => {
  [studio, browser] = await Promise.all([startStudio(folder.path), launchBrowser()]);
  one = await openPage(browser);
  await one.page.goto(studio.link);
  small = await foundSmallStudio(one.page);
  const { today } = await readStudio(one.page);
  await openCourse(one.page, {
    name: friend,
    instrument: 'flute',
    stage: 'beginner',
    age: 12,
    from: addDays(today, 1),
    time: '16:00',
    strands: ['Technique'],
  });
  const { lesson } = present(lessonsOf(await courseOf(friend))[0], 'a lesson of the friend');
  for (const text of ['Plays with Nora on Friday.', 'Norita shall bring the music.'])
    await sendCommand(one.page, {
      type: 'lesson.write',
      lesson,
      field: text.startsWith('P') ? 'note' : 'practice',
      base: '',
      text,
    });
  await sendCommand(one.page, {
    type: 'holiday.putMany',
    holidays: [
      {
        id: createId('holiday', { next: Math.random }),
        name: 'Nora Quell memorial day',
        starts: addDays(today, 40),
        ends: addDays(today, 40),
        source: '',
      },
    ],
  });
  // Closed and opened again, so that there is a backup.
  await one.page.goto('about:blank');
  await studio.stop();
  studio = await startStudio(folder.path);
  await one.page.goto(studio.link);
});
afterAll(async () => {
  await browser?.close();
  await studio?.stop();
  folder.remove();
});

const tell = createStory(() => browser?.contexts().flatMap((context) => context.pages()) ?? []);
const studentsNow = () => readView<StudentsView>(one.page, '/api/students');
async function courseOf(name: string): Promise<CourseView> {
  const { students } = await studentsNow();
  const course = present(students.find((student) => student.name === name)?.courses[0], `${name}’s course`);
  return readView<CourseView>(one.page, `/api/courses/${course}`);
}
const backups = () => join(folder.path, 'backups');
/** Files of the studio, its WAL and its backups that hold the name. */
const filesWith = (name: string) =>
  [
    ...readdirSync(folder.path).map((file) => join(folder.path, file)),
    ...readdirSync(backups()).map((file) => join(backups(), file)),
  ].filter((file) => file.includes('.sqlite') && readFileSync(file).includes(name));

async function openErasing(page: Page): Promise<void> {
  await page.goto(`${studio.address}/student/${small.student}`);
  await page.getByRole('button', { name: words.student.change, exact: true }).first().click();
  await page.getByRole('link', { name: words.students.form.erase, exact: true }).click();
  await page.getByRole('heading', { level: 1, name: say.titleOf(small.name) }).waitFor();
}

tell('the way there is where leaving is, and the page says what goes', async () => {
  const { page } = one;
  const lesson = present(lessonsOf(await courseOf(small.name))[0], 'a lesson').lesson;
  looking = await openWindow(one.context);
  await looking.page.goto(`${studio.address}/student/${small.student}`);
  await looking.page.getByRole('heading', { level: 1, name: small.name }).waitFor();
  away = await openPage(browser);
  await away.context.addCookies(await one.context.cookies());
  await away.page.goto(`${studio.address}/lesson/${lesson}`);
  await createLessonPage(away.page).note.waitFor();
  await away.context.setOffline(true);
  await createLessonPage(away.page).note.fill(typedAway);

  await openErasing(page);
  const main = page.getByRole('main');
  await main.getByText(say.goes.changes).waitFor();
  await main.getByText(say.goes.money).waitFor();
  // A note of somebody else's lesson is surely about her; the name of days off may be another's.
  const place = (where: RegExp) => main.getByRole('listitem').filter({ hasText: where });
  expect(
    await place(/Ada Brook’s lesson/)
      .getByRole('checkbox')
      .isChecked(),
  ).toBe(true);
  await main.getByLabel(say.names.called).fill('Norita');
  await main.getByLabel(say.names.called).press('Enter');
  await main.getByText(/Looked for:.*Norita/).waitFor();
  expect(await findWithAxe(page)).toEqual([]);
});

tell('the student’s own file can be taken first', async () => {
  const [download] = await Promise.all([
    one.page.waitForEvent('download') as Promise<Download>,
    one.page.getByRole('link', { name: say.file.action }).click(),
  ]);
  const file = JSON.parse(readFileSync(await download.path(), 'utf8'));
  expect(file).toMatchObject({ format: 'levare-student/1', student: { name: small.name } });
  expect(JSON.stringify(file)).not.toContain(friend);
});

tell(
  'only the name typed by hand erases, and then nothing is left of her, in the backups neither',
  async () => {
    const { page } = one;
    expect(filesWith('Quell').length).toBeGreaterThan(1);
    const main = page.getByRole('main');
    const button = main.getByRole('button', { name: say.confirm.action });
    await main.getByLabel(say.confirm.name).fill('Nora');
    expect(await button.isDisabled()).toBe(true);
    await main.getByLabel(say.confirm.name).fill(small.name);
    // The days off are named after somebody else of this name, says the teacher.
    const holiday = main.getByRole('listitem').filter({ hasText: /memorial day/ });
    if (await holiday.getByRole('checkbox').isChecked()) await holiday.locator('label').click();
    await main.getByLabel(say.confirm.name).press('Enter');
    await page.waitForURL('**/students');
    const { messages } = createFrame(page);
    await messages.getByText(say.done).waitFor();
    expect(await messages.getByRole('button', { name: words.frame.undo }).count()).toBe(0);
    expect((await studentsNow()).students.map((student) => student.name)).toEqual([friend]);
    // What the teacher said is about another stays: it alone has the name.
    const { holidays } = await readView<TermView>(page, '/api/term');
    expect(holidays.map(({ name }) => name)).toContain('Nora Quell memorial day');
    await sendCommand(page, { type: 'holiday.remove', holiday: present(holidays[0], 'the day').id });
    const lesson = lessonsOf(await courseOf(friend))[0];
    const shown = await readView<{ note: string; practice: string }>(page, `/api/lessons/${lesson?.lesson}`);
    expect(shown).toMatchObject({
      note: 'Plays with [name erased] on Friday.',
      practice: '[name erased] shall bring the music.',
    });
  },
);

tell('a window that showed her says that she is not there any more', async () => {
  await looking.page.getByText(/There is no such student any more/).waitFor();
  expect(await looking.page.getByRole('main').innerText()).not.toContain('Nora');
  expect(await looking.page.title()).not.toContain('Nora');
});

tell(
  'what was typed in a browser without a network is given back in words when it comes, and brings nothing back',
  async () => {
    await away.context.setOffline(false);
    await away.page.evaluate(() => window.dispatchEvent(new Event('online')));
    const { messages } = createFrame(away.page);
    await messages.getByText(/erased with its student/).waitFor();
    expect(await messages.innerText()).toContain(typedAway);
    await createFrame(away.page).waitUntilSaved();
    await away.page.getByText(/There is no such lesson any more/).waitFor();
    expect((await studentsNow()).students.map((student) => student.name)).toEqual([friend]);
  },
);

tell('the list of changes names her nowhere, and offers no way back', async () => {
  const { page } = one;
  await page.goto(`${studio.address}/changes`);
  const row = page.getByRole('row').filter({ hasText: 'Erased a student for good' });
  await row.waitFor();
  expect(await row.getByRole('button').count()).toBe(0);
  const { changes } = await readView<ChangesView>(page, '/api/changes');
  expect(changes.some(({ label }) => label.includes('Nora') && !label.includes('memorial'))).toBe(false);
});

tell('no page showed a fault of its own', async () => {
  expect(one.faults()).toEqual([]);
  expect(looking.faults(/404/)).toEqual([]);
  expect(away.faults(/404|ERR_INTERNET_DISCONNECTED|Failed to load resource/)).toEqual([]);
});
