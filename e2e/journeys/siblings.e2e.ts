// A family comes to the studio: offered as siblings from a spreadsheet, with lessons one after the other; a third child is
// added in the form; one telephone is changed for all; and it can be taken back.

import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect } from 'vitest';
import type { StudentsView, StudentView, TermView } from '#contract';
import { present } from '#core';
import { words } from '../../src/web/words/index.ts';
import { readView, sendCommand, untilView } from '../harness/api.ts';
import { findWithAxe } from '../harness/axe.ts';
import { launchBrowser, openPage } from '../harness/browser.ts';
import { foundStudio } from '../harness/found-studio.ts';
import { createStory } from '../harness/story.ts';
import { createDataFolder, type StudioProcess, startStudio } from '../harness/studio-process.ts';
import { createFrame, touch } from '../page-models/frame.ts';
import { createImportPage } from '../page-models/import-page.ts';
import { createStudentsPage } from '../page-models/students-page.ts';

const folder = createDataFolder();
let studio: StudioProcess;
let browser: Browser;
let page: Page;
let faults: (allow?: RegExp) => readonly string[];
const { siblings, beside, form, first } = words.students;

beforeAll(async () => {
  [studio, browser] = await Promise.all([startStudio(folder.path), launchBrowser()]);
  const opened = await openPage(browser);
  page = opened.page;
  faults = opened.faults;
  await page.goto(studio.link);
  await foundStudio(page, 'Family Studio');
});
afterAll(async () => {
  await browser?.close();
  await studio?.stop();
  folder.remove();
});

const tell = createStory(() => [page]);
const read = () => readView<StudentsView>(page, '/api/students');
const siblingsOf = async (name: string) =>
  (await read()).students.find((one) => one.name === name)?.siblings.map((one) => one.name) ?? [];
const viewOf = async (name: string) => {
  const row = present(
    (await read()).students.find((one) => one.name === name),
    name,
  );
  return readView<StudentView>(page, `/api/students/${row.id}`);
};
const dialog = () => page.getByRole('dialog');
const change = async (name: string) => {
  await createFrame(page).goTo('students');
  await page.getByRole('button', { name: words.students.changeNamed(name) }).click();
  await dialog().getByRole('button', { name: form.save, exact: true }).waitFor();
};

const family = `Name,Born,Instrument,Parent,Telephone
Ana Reis,2016,Violin,Maria Reis,0123 456
Bo Dahl,2012,Flute,Eva Dahl,0999
Cleo Reis,2013,Cello,Maria Reis,0123 456
`;

tell('a spreadsheet offers siblings, and makes none unasked', async () => {
  await page.goto(`${studio.address}/students/import`);
  const importing = createImportPage(page);
  await importing.choose({ name: 'family.csv', text: family });
  const offered = page.getByRole('group', { name: words.studentsImport.siblings });
  const tick = offered.getByRole('checkbox', { name: /Ana Reis and Cleo Reis/ });
  await tick.waitFor();
  expect(await tick.isChecked()).toBe(false);
  expect(await offered.getByRole('checkbox').count()).toBe(1);
  expect(await findWithAxe(page)).toEqual([]);
  await touch(tick);
  await importing.importRows(3);
  expect(await siblingsOf('Ana Reis')).toEqual(['Cleo Reis']);
  expect(await siblingsOf('Bo Dahl')).toEqual([]);
});

tell('their first lessons are offered one after the other', async () => {
  const row = (name: string) => page.getByRole('group', { name, exact: true });
  await row('Ana Reis').getByRole('combobox', { name: first.day, exact: true }).selectOption('2');
  await row('Ana Reis').getByLabel(first.time, { exact: true }).fill('16:00');
  // Bo stands where the place before Ana would be.
  await row('Bo Dahl').getByRole('combobox', { name: first.day, exact: true }).selectOption('2');
  await row('Bo Dahl').getByLabel(first.time, { exact: true }).fill('15:45');
  await row('Bo Dahl').getByLabel(first.time, { exact: true }).fill('15:30');
  await row('Cleo Reis')
    .getByRole('button', { name: beside.after('Ana Reis', 'Tuesday', '16:30') })
    .click();
  await row('Cleo Reis').getByText(beside.isBeside('Ana Reis')).waitFor();
  expect(await findWithAxe(page)).toEqual([]);
  await page.getByRole('button', { name: first.action(3), exact: true }).click();
  const term = await untilView(
    () => readView<TermView>(page, '/api/term'),
    ({ week }) => week.length === 3,
    'three lessons in the week',
  );
  expect(term.week.map((slot) => [slot.learner, slot.weekday, slot.time])).toEqual([
    ['Bo Dahl', 2, '15:30'],
    ['Ana Reis', 2, '16:00'],
    ['Cleo Reis', 2, '16:30'],
  ]);
});

tell('a third child is a sibling of both, and the mother is not typed again', async () => {
  await page.goto(`${studio.address}/students?add=`);
  await dialog().getByLabel(form.name, { exact: true }).first().fill('Dag Reis');
  const choose = dialog().getByRole('combobox', { name: siblings.of, exact: true });
  await choose.selectOption({ label: 'Ana Reis' });
  await dialog().getByText('Ana Reis, Cleo Reis').waitFor();
  expect(await dialog().getByLabel(form.phone, { exact: true }).inputValue()).toBe('0123 456');
  await touch(dialog().getByRole('checkbox', { name: form.course }));
  await dialog().getByRole('button', { name: form.addAction, exact: true }).click();
  await dialog().waitFor({ state: 'detached' });
  expect(await siblingsOf('Dag Reis')).toEqual(['Ana Reis', 'Cleo Reis']);
  const view = await viewOf('Dag Reis');
  expect(view.contacts).toEqual([]);
  expect(view.family?.contacts.map(({ name, phone }) => [name, phone])).toEqual([['Maria Reis', '0123 456']]);
});

tell('one telephone is changed for all of them, and taken back', async () => {
  await change('Cleo Reis');
  await dialog().getByLabel(form.phone, { exact: true }).fill('0777');
  await dialog().getByRole('button', { name: form.save, exact: true }).click();
  await dialog().waitFor({ state: 'detached' });
  await createStudentsPage(page).open('Dag Reis');
  await page.getByRole('link', { name: '0777' }).waitFor();
  await createFrame(page).undoFromMessage();
  await page.getByRole('link', { name: '0123 456' }).waitFor();
});

tell('the page of one leads to the others', async () => {
  const notes = page.getByRole('region', { name: words.student.family.title });
  await notes.getByRole('link', { name: 'Cleo Reis' }).click();
  await page.getByRole('heading', { level: 1, name: 'Cleo Reis' }).waitFor();
});

tell('a further weekly lesson is offered next to a sibling’s, as the first was', async () => {
  const { plan, family } = words.student;
  const notes = page.getByRole('region', { name: family.title });
  await notes.getByRole('link', { name: 'Ana Reis' }).click();
  await page.getByRole('heading', { level: 1, name: 'Ana Reis' }).waitFor();
  await page.getByText(plan.title, { exact: true }).click();
  await page.getByRole('button', { name: plan.addSlot, exact: true }).click();
  await dialog()
    .getByRole('button', { name: beside.after('Cleo Reis', 'Tuesday', '17:00') })
    .click();
  await dialog().getByText(beside.isBeside('Cleo Reis')).waitFor();
  expect(await dialog().getByLabel(plan.time, { exact: true }).inputValue()).toBe('17:00');
  await page.keyboard.press('Escape');
  await dialog().waitFor({ state: 'detached' });
});

tell('what another window changed while the form was open is not written over without a word', async () => {
  await change('Bo Dahl');
  const { family: _, courses, age, left, revision, ...now } = await viewOf('Bo Dahl');
  await sendCommand(page, {
    type: 'student.change',
    seen: revision,
    student: {
      ...now,
      name: 'Bo Dahlgren',
      family: null,
      instruments: [...now.instruments],
      contacts: [...now.contacts],
    },
  });
  await page.getByText('Bo Dahlgren').first().waitFor();
  await dialog().getByRole('button', { name: form.save, exact: true }).click();
  await createFrame(page)
    .messages.getByText(/changed in another window/)
    .waitFor();
  expect((await read()).students.map(({ name }) => name)).toContain('Bo Dahlgren');
  await page.keyboard.press('Escape');
  await dialog().waitFor({ state: 'detached' });
});

tell('taken out again, a child keeps the contacts and the others stay siblings', async () => {
  await change('Dag Reis');
  await dialog().getByRole('button', { name: siblings.not }).click();
  await dialog().getByRole('button', { name: form.save, exact: true }).click();
  await dialog().waitFor({ state: 'detached' });
  expect(await siblingsOf('Dag Reis')).toEqual([]);
  expect((await viewOf('Dag Reis')).contacts.map(({ name }) => name)).toEqual(['Maria Reis']);
  expect(await siblingsOf('Ana Reis')).toEqual(['Cleo Reis']);
  await createFrame(page).undoFromMessage();
  await untilView(
    () => viewOf('Dag Reis'),
    ({ family: own }) => own?.siblings.length === 2,
    'they are siblings again',
  );
  // The refusal of what another window changed is answered with this status.
  expect(faults(/409/)).toEqual([]);
});
