import { expect, test } from 'vitest';
import { type StudentView, sendSchema } from '#contract';
import { createId, createSeededRandom, type Id, type PlainDate } from '#core';
import { addSibling, dropSiblings, newContact, siblingChoices } from './sibling-draft.ts';
import { draftOfStudent, draftToCommands, newStudentDraft, type StudentDraft } from './student-draft.ts';

const today = '2026-11-25' as PlainDate;
const random = createSeededRandom(11);
const mint = <P extends string>(prefix: P) => createId(prefix, random);
const bea = { name: 'Bea Sund', relation: 'mother', phone: '0123', email: 'bea@example.net' };
const mo = { name: 'Mo Sund', relation: 'father', phone: '0456', email: '' };

const view = (name: string, more: Partial<StudentView> = {}): StudentView => ({
  id: `student:${name.split(' ')[0]?.toLowerCase()}` as Id<'student'>,
  revision: 3,
  name,
  born: null,
  birthYear: 2014,
  age: 12,
  instruments: [{ instrument: 'flute', stage: 'beginner' }],
  family: null,
  contacts: [],
  note: '',
  since: today,
  left: null,
  courses: [],
  ...more,
});
const kit = view('Kit Sund', { contacts: [bea, { name: 'Kit', relation: 'self', phone: '9', email: '' }] });
const ida: StudentDraft = {
  ...newStudentDraft(today),
  name: 'Ida Sund',
  course: { ...newStudentDraft(today).course, open: false },
};
const steps = (draft: StudentDraft, known: StudentView | null = null) => {
  const commands = draftToCommands(draft, known, today, mint);
  for (const command of commands)
    expect(sendSchema.safeParse({ id: mint('change'), command }).error?.issues).toBeUndefined();
  return commands;
};

test('the contacts of a sibling come along, filled up and shared, but for how the sibling is reached', () => {
  const typed = { name: 'bea sund', relation: '', phone: '', email: '', shared: false };
  const draft = addSibling({ ...ida, contacts: [typed] }, null, kit);
  expect(draft.siblings.map(({ name }) => name)).toEqual(['Kit Sund']);
  expect(draft.contacts).toEqual([{ ...bea, name: 'bea sund', shared: true }]);
  expect(addSibling(ida, null, kit).contacts).toEqual([{ ...bea, shared: true }]);
});

test('a new student joins a sibling in one step; the shared contacts are no one’s own', () => {
  const draft = addSibling(ida, null, kit);
  const own = { ...mo, shared: false };
  const [add, join, ...more] = steps({ ...draft, contacts: [...draft.contacts, own] });
  expect(more).toEqual([]);
  expect(add).toMatchObject({ type: 'student.add', student: { family: null, contacts: [mo] } });
  const student = add?.type === 'student.add' ? add.student.id : null;
  expect(join).toMatchObject({ type: 'family.join', students: [student, kit.id], contacts: [bea] });
});

const nell = { id: 'student:nell' as Id<'student'>, name: 'Nell Sund', left: null };
const family = { id: 'family:sund' as Id<'family'>, revision: 7, contacts: [bea] };
const kitOfFamily = view('Kit Sund', { family: { ...family, siblings: [nell] } });

test('who becomes a sibling of one is a sibling of all, and nothing is sent that did not change', () => {
  const draft = addSibling(ida, null, kitOfFamily);
  expect(draft.siblings.map(({ name }) => name)).toEqual(['Kit Sund', 'Nell Sund']);
  expect(addSibling(draft, null, kitOfFamily).siblings).toHaveLength(2);
  expect(steps(draft).map(({ type }) => type)).toEqual(['student.add', 'family.join']);
  expect(steps(draft)[1]).toMatchObject({ family: family.id });
  const unchanged = draftOfStudent(kitOfFamily, today);
  expect(unchanged.contacts).toEqual([{ ...bea, shared: true }]);
  expect(steps(unchanged, kitOfFamily)).toMatchObject([
    { type: 'student.change', seen: 3, student: { family: family.id, contacts: [] } },
  ]);
});

test('a shared contact is changed for all, on top of what was seen of it', () => {
  const draft = draftOfStudent(kitOfFamily, today);
  const moved = { ...draft, contacts: [{ ...bea, phone: '0999', shared: true }] };
  expect(steps(moved, kitOfFamily)[1]).toMatchObject({
    type: 'family.change',
    seen: 7,
    family: family.id,
    contacts: [{ ...bea, phone: '0999' }],
  });
  const ownNow = { ...draft, contacts: [{ ...bea, shared: false }] };
  expect(steps(ownNow, kitOfFamily)).toMatchObject([
    { type: 'student.change', student: { contacts: [bea] } },
    { type: 'family.change', contacts: [] },
  ]);
  expect([newContact(draft).shared, newContact(ida).shared]).toEqual([true, false]);
});

test('taken out again, a student keeps the contacts and leaves the family', () => {
  const draft = dropSiblings(draftOfStudent(kitOfFamily, today));
  expect(steps(draft, kitOfFamily)).toMatchObject([
    { type: 'student.change', student: { family: null, contacts: [bea] } },
  ]);
});

test('those of the same surname are offered first; nobody twice, nor the student themselves', () => {
  const row = (name: string) => ({
    ...view(name),
    siblings: [],
    instruments: [],
    courses: [],
    next: null,
    here: true,
    pacePercent: null,
  });
  const rows = ['Ida Sund', 'Jon Berg', 'Kit Sund', 'Prince'].map(row);
  const { alike, others } = siblingChoices(rows, 'student:ida' as Id<'student'>, ida);
  expect(alike.map(({ name }) => name)).toEqual(['Kit Sund']);
  expect(others.map(({ name }) => name)).toEqual(['Jon Berg', 'Prince']);
  const siblings = [{ id: kit.id, name: kit.name, left: null }];
  expect(siblingChoices(rows, null, { name: 'Prince', siblings }).alike).toEqual([]);
});
