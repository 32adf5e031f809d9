// Siblings as the student's form holds them: whose they are, what they share, and the step from there to commands.

import { type ContactView, isSamePerson, type Step, type StudentRow, type StudentView } from '#contract';
import type { Id } from '#core';

export interface ContactDraft extends ContactView {
  /** Of the siblings too, where there are any. */
  readonly shared: boolean;
}

export interface SiblingParts {
  readonly name: string;
  readonly siblings: StudentRow['siblings'];
  /** Where the shared contacts go; null where there are no siblings, or none of them has a family yet. */
  readonly family: Pick<NonNullable<StudentView['family']>, 'id' | 'revision' | 'contacts'> | null;
  readonly contacts: readonly ContactDraft[];
}
const fields = ['name', 'relation', 'phone', 'email'] as const;

/** The contacts of a draft that are filled in: those shared with the siblings, or all others. */
export function listContacts({ siblings, contacts }: SiblingParts, shared: boolean): ContactView[] {
  return contacts
    .filter((one) => (siblings.length > 0 && one.shared) === shared)
    .filter((one) => fields.some((field) => one[field].trim() !== ''))
    .map(({ name, relation, phone, email }) => ({ name, relation, phone, email }));
}

/** A contact about to be written; among siblings a new one is mostly a parent of all. */
export const newContact = ({ siblings }: SiblingParts): ContactDraft => ({
  name: '',
  relation: '',
  phone: '',
  email: '',
  shared: siblings.length > 0,
});

/**
 * The draft with one more sibling, and theirs. Their contacts come along, shared; one that stands here already is filled
 * up from theirs. How the sibling is reached themselves stays theirs alone.
 */
export function addSibling<D extends SiblingParts>(
  draft: D,
  own: Id<'student'> | null,
  chosen: StudentView,
): D {
  const { id, name, left } = chosen;
  const known = new Set<string>([own ?? '', ...draft.siblings.map((one) => one.id)]);
  const coming = [{ id, name, left }, ...(chosen.family?.siblings ?? [])].filter((one) => !known.has(one.id));
  const theirs = [
    ...(chosen.family?.contacts ?? []),
    ...chosen.contacts.filter((one) => !isThemselves(one, name)),
  ];
  const kept = draft.contacts.map((one): ContactDraft => {
    const same = theirs.find((other) => isSamePerson(one, other));
    if (same === undefined) return one;
    const filled = fields.map((field) => [field, one[field].trim() === '' ? same[field] : one[field]]);
    return { ...one, ...Object.fromEntries(filled), shared: true };
  });
  const added = theirs.filter((other) => !draft.contacts.some((one) => isSamePerson(one, other)));
  return {
    ...draft,
    siblings: [...draft.siblings, ...coming],
    family: draft.family ?? chosen.family,
    contacts: [...kept, ...added.map((one) => ({ ...one, shared: true }))],
  };
}

const isThemselves = (contact: ContactView, name: string): boolean =>
  contact.relation.trim().toLowerCase() === 'self' || contact.name.trim() === name;

/** The draft of one who is nobody's sibling; what was shared is kept. */
export const dropSiblings = <D extends SiblingParts>(draft: D): D => ({
  ...draft,
  siblings: [],
  family: null,
  contacts: draft.contacts.map((one) => ({ ...one, shared: false })),
});

/** What the siblings of a draft ask for, after the student is added or changed. */
export function siblingCommands(
  draft: SiblingParts,
  student: Id<'student'>,
  known: StudentView | null,
  mintFamily: () => Id<'family'>,
): readonly Step[] {
  const { siblings, family } = draft;
  if (siblings.length === 0) return [];
  const contacts = listContacts(draft, true);
  const before = known?.family?.siblings.map(({ id }) => id) ?? [];
  const added = siblings.filter(({ id }) => !before.includes(id)).map(({ id }) => id);
  const id = family?.id ?? mintFamily();
  const steps: Step[] = [];
  if (family !== null && !isSameContacts(contacts, family.contacts))
    steps.push({ type: 'family.change', seen: family.revision, family: id, contacts });
  if (added.length > 0)
    steps.push({
      type: 'family.join',
      family: id,
      students: [student, ...added],
      ...(family === null ? { contacts } : {}),
    });
  return steps;
}

const isSameContacts = (a: readonly ContactView[], b: readonly ContactView[]): boolean =>
  a.length === b.length && a.every((one, n) => fields.every((field) => one[field] === b[n]?.[field]));

/** Students to choose a sibling from, those of the same surname first. */
export function siblingChoices(
  students: readonly StudentRow[],
  own: Id<'student'> | null,
  { name, siblings }: Pick<SiblingParts, 'name' | 'siblings'>,
): { readonly alike: readonly StudentRow[]; readonly others: readonly StudentRow[] } {
  const open = students.filter((one) => one.id !== own && !siblings.some(({ id }) => id === one.id));
  const surname = surnameOf(name);
  const alike = open.filter((one) => surname !== '' && surnameOf(one.name) === surname);
  return { alike, others: open.filter((one) => !alike.includes(one)) };
}

/** The last word of a name of several. */
function surnameOf(name: string): string {
  const parts = name.trim().toLowerCase().split(/\s+/);
  return parts.length < 2 ? '' : (parts.at(-1) ?? '');
}
