import { expect, test } from 'vitest';
import type { Id } from '#core';
import { ok } from '#core';
import { createMemoryStore } from '#storage';
import type { StudentRecord } from '../record/records.ts';
import {
  ana,
  ben,
  day,
  id,
  newStudent,
  openStudio,
  type TestStudio,
} from '../testing/open-studio.contract.ts';
import { viewStudent } from '../view/view-student.ts';
import { viewStudents } from '../view/view-students.ts';

const cleo = id('student', 'cleo');
const family = id('family', 'reis');
const mother = { name: 'Maria Reis', relation: 'mother', phone: '0123', email: '' };
const teacher = { name: 'Jon Berg', relation: 'class teacher', phone: '0456', email: '' };

async function openFamily(): Promise<TestStudio> {
  const studio = await openStudio();
  await studio.done({
    type: 'student.change',
    seen: 1,
    student: { ...newStudent(ana, 'Ana', 2017), contacts: [mother, teacher] },
  });
  const add = (student: Id<'student'>, name: string, year: number) =>
    studio.done({
      type: 'student.add',
      student: { ...newStudent(student, name, year), contacts: [mother] },
    });
  await add(ben, 'Ben', 2014);
  await add(cleo, 'Cleo', 2012);
  return studio;
}
const join = (...students: Id<'student'>[]) => ({ type: 'family.join' as const, family, students });
const student = (studio: TestStudio, which: Id<'student'>) =>
  studio.store.read(async (r) => (await r.get('student', which)) as StudentRecord);
const families = (studio: TestStudio) => studio.store.read((r) => r.list('family'));
const siblings = async (studio: TestStudio, which: Id<'student'>) =>
  (await studio.store.read((r) => viewStudent(r, which, studio.outside())))?.family?.siblings.map(
    ({ name }) => name,
  ) ?? [];
const leaveFamily = async (studio: TestStudio, which: Id<'student'>) => {
  const { left, revision, ...now } = await student(studio, which);
  return studio.done({
    type: 'student.change',
    seen: revision,
    student: { ...now, family: null, instruments: [...now.instruments], contacts: [...now.contacts] },
  });
};

test('[R-FAMILY-1] siblings are one family, and who is a sibling of one is a sibling of all', async () => {
  const studio = await openFamily();
  const reply = await studio.done(join(ana, ben));
  expect(reply.label).toBe('Made Ana and Ben siblings');
  expect(await siblings(studio, ana)).toEqual(['Ben']);
  await studio.done({ ...join(cleo, ben), family: id('family', 'other') });
  expect(await families(studio)).toHaveLength(1);
  expect(await siblings(studio, ana)).toEqual(['Ben', 'Cleo']);
  const rows = (await studio.store.read((r) => viewStudents(r, studio.outside()))).students;
  expect(rows.map((row) => row.siblings.map(({ name }) => name))).toEqual([
    ['Ben', 'Cleo'],
    ['Ana', 'Cleo'],
    ['Ana', 'Ben'],
  ]);
});

test('[R-FAMILY-1] nobody is their own sibling, nor one of nobody', async () => {
  const studio = await openFamily();
  expect((await studio.refused(join(ana, ana))).kind).toBe('Invalid');
  expect((await studio.refused(join(ana, id('student', 'gone')))).kind).toBe('NotFound');
  expect(await families(studio)).toEqual([]);
});

test('[R-FAMILY-2] what two of them have alike becomes shared and stands once; the rest stays their own', async () => {
  const studio = await openFamily();
  await studio.done(join(ana, ben));
  expect((await families(studio))[0]?.contacts).toEqual([mother]);
  expect((await student(studio, ana)).contacts).toEqual([teacher]);
  expect((await student(studio, ben)).contacts).toEqual([]);
  const moved = { ...mother, phone: '0999' };
  await studio.done({ type: 'family.change', seen: 1, family, contacts: [moved] });
  for (const one of [ana, ben])
    expect((await studio.store.read((r) => viewStudent(r, one, studio.outside())))?.family?.contacts).toEqual(
      [moved],
    );
  // Another window had the old telephone on screen.
  const refused = await studio.refused({ type: 'family.change', seen: 1, family, contacts: [mother] });
  expect(refused.kind).toBe('ChangedElsewhere');
  expect(refused.message).toContain('Changed the contacts of Ana and Ben');
});

test('[R-FAMILY-2] contacts that are said to be shared are, and nothing of another family is lost', async () => {
  const studio = await openFamily();
  await studio.done({ ...join(ana, ben), contacts: [teacher] });
  expect((await families(studio))[0]?.contacts).toEqual([teacher]);
  expect((await student(studio, ana)).contacts).toEqual([mother]);
  const aunt = { ...mother, name: 'Eva Reis', relation: 'aunt' };
  const dag = id('student', 'dag');
  await studio.done({ type: 'student.add', student: newStudent(dag, 'Dag', 2010) });
  await studio.done({ ...join(cleo, dag), family: id('family', 'two'), contacts: [aunt] });
  await studio.done({ ...join(ben, dag), contacts: [] });
  expect((await families(studio)).map(({ contacts }) => contacts)).toEqual([[teacher, aunt]]);
});

test('[R-FAMILY-3] one who goes out leaves the others right; who is left alone keeps the contacts', async () => {
  const studio = await openFamily();
  await studio.done(join(ana, ben, cleo));
  await leaveFamily(studio, cleo);
  expect(await siblings(studio, cleo)).toEqual([]);
  expect(await siblings(studio, ana)).toEqual(['Ben']);
  await studio.done({ type: 'student.remove', seen: (await student(studio, ben)).revision, student: ben });
  expect(await families(studio)).toEqual([]);
  expect((await student(studio, ana)).family).toBeNull();
  expect((await student(studio, ana)).contacts).toEqual([mother, teacher]);
});

test('[R-FAMILY-3] leaving the studio leaves the siblings siblings', async () => {
  const studio = await openFamily();
  await studio.done(join(ana, ben));
  const { revision } = await student(studio, ben);
  await studio.done({ type: 'student.leave', seen: revision, student: ben, on: day('2026-10-01') });
  const view = await studio.store.read((r) => viewStudent(r, ana, studio.outside()));
  expect(view?.family?.siblings).toEqual([{ id: ben, name: 'Ben', left: '2026-10-01' }]);
});

test('[R-UNDO-1] joining, sharing and going out are taken back', async () => {
  const studio = await openFamily();
  const rows = async () =>
    studio.store.read(async (r) => {
      const plain = (list: readonly object[]) => list.map((row) => ({ ...row, revision: 0 }));
      return [plain(await r.list('student', { orderBy: ['name'] })), plain(await r.list('family'))];
    });
  const undo = async (command: Parameters<TestStudio['done']>[0]) => {
    const before = await rows();
    const { change } = await studio.done(command);
    const after = await rows();
    const undone = await studio.done({ type: 'undo', change });
    expect(await rows()).toEqual(before);
    await studio.done({ type: 'undo', change: undone.change });
    expect(await rows()).toEqual(after);
  };
  await undo(join(ana, ben));
  await undo({
    type: 'family.change',
    seen: (await families(studio))[0]?.revision ?? 0,
    family,
    contacts: [],
  });
  const { left, revision, ...now } = await student(studio, ben);
  await undo({
    type: 'student.change',
    seen: revision,
    student: { ...now, family: null, instruments: [...now.instruments], contacts: [...now.contacts] },
  });
});

test('[R-UNDO-3] nobody comes back into a family that is gone: what took it away goes first', async () => {
  const studio = await openFamily();
  await studio.done(join(ana, ben, cleo));
  const cleoOut = await leaveFamily(studio, cleo);
  const benOut = await leaveFamily(studio, ben);
  expect(await families(studio)).toEqual([]);
  const refused = await studio.refused({ type: 'undo', change: cleoOut.change });
  expect(refused.takeBack).toEqual([benOut.change, cleoOut.change]);
  for (const change of refused.takeBack ?? []) await studio.done({ type: 'undo', change });
  expect(await siblings(studio, cleo)).toEqual(['Ana', 'Ben']);
});

test('an export keeps siblings and what they share', async () => {
  const studio = await openFamily();
  await studio.done(join(ana, ben));
  const other = await createMemoryStore(studio.outside().clock);
  expect(await other.load(JSON.parse(JSON.stringify(await studio.store.dump())))).toEqual(ok(null));
  const view = await other.read((r) => viewStudent(r, ben, studio.outside()));
  expect(view?.family).toMatchObject({ contacts: [mother], siblings: [{ id: ana, name: 'Ana' }] });
  await other.close();
});
