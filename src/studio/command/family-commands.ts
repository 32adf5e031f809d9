// Siblings: students of one family, and the contacts they share.

import { joinContacts, withoutShared } from '#contract';
import { ok } from '#core';
import type { Contact, FamilyId, StudentRecord } from '../record/records.ts';
import type { Transactor } from '../record/store.ts';
import { formatList } from '../sentence/amounts.ts';
import type { Handler } from './desk.ts';
import { changedElsewhere, invalid, notFound } from './fault.ts';

const mostContacts = 12;
const mostSiblings = 40;

export const joinFamily: Handler<'family.join'> = async ({ tx }, { family: id, students, contacts }) => {
  const named: StudentRecord[] = [];
  for (const student of new Set(students)) {
    const found = await tx.get('student', student);
    if (found === null) return notFound('student');
    named.push(found);
  }
  if (named.length < 2) return invalid('students', 'Choose a second student: nobody is their own sibling.');
  const old = new Set(named.flatMap(({ family }) => family ?? []));
  const present = await tx.get('family', id);
  if (present !== null) old.add(id);
  // A sibling of one is a sibling of all: whoever is in one of these families comes along.
  const members = new Map(named.map((student) => [student.id, student]));
  const held: Contact[] = [];
  for (const family of old) {
    for (const member of await tx.list('student', { where: { family } })) members.set(member.id, member);
    held.push(...((await tx.get('family', family))?.contacts ?? []));
  }
  if (members.size > mostSiblings)
    return invalid('students', `A family holds at most ${mostSiblings} students.`);
  const shared = joinContacts(
    [...(contacts ?? []), ...held],
    contacts === undefined ? [...members.values()].map((member) => member.contacts) : [],
  );
  if (shared.length > mostContacts)
    return invalid('contacts', `A family shares at most ${mostContacts} contacts.`);
  await tx.put('family', {
    id,
    revision: (present?.revision ?? 0) + 1,
    name: present?.name ?? '',
    contacts: shared,
    note: present?.note ?? '',
  });
  for (const member of members.values()) {
    const own = withoutShared(member.contacts, shared);
    if (member.family === id && own.length === member.contacts.length) continue;
    await tx.put('student', { ...member, family: id, contacts: own, revision: member.revision + 1 });
  }
  for (const family of old) if (family !== id) await tx.remove('family', family);
  const names = [...members.values()].map(({ name }) => name);
  return ok(`Made ${formatList(names)} siblings`);
};

export const changeFamily: Handler<'family.change'> = async (desk, { seen, family: id, contacts }) => {
  const family = await desk.tx.get('family', id);
  if (family === null) return notFound('family');
  const members = await desk.tx.list('student', { where: { family: id }, orderBy: ['name'] });
  const names = formatList(members.map(({ name }) => name));
  if (!desk.imagining && family.revision !== seen)
    return changedElsewhere(desk.tx, 'family', id, `What ${names} share`);
  await desk.tx.put('family', { ...family, contacts, revision: family.revision + 1 });
  return ok(`Changed the contacts of ${names}`);
};

/**
 * After a student went out of a family: one who is left alone is nobody's sibling and keeps what was shared; a family
 * of nobody goes, with the contacts it held.
 */
export async function settleFamily(tx: Transactor, id: FamilyId | null): Promise<void> {
  const family = id === null ? null : await tx.get('family', id);
  if (family === null) return;
  const members = await tx.list('student', { where: { family: family.id } });
  if (members.length > 1) return;
  for (const member of members)
    await tx.put('student', {
      ...member,
      family: null,
      contacts: [...family.contacts, ...withoutShared(member.contacts, family.contacts)],
      revision: member.revision + 1,
    });
  await tx.remove('family', family.id);
}
