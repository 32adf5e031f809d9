// Who in a spreadsheet may be siblings of whom: by a column that says so, or by the same surname with the same contact.
// That is common practice, no source, and no proof: what is found is offered to the teacher, never taken by itself.

import { isSamePerson, isSameReach, type SiblingsFound, type StudentImportPreview } from '#contract';
import type { Contact, StudentRecord } from '../record/records.ts';
import { toPlainWords } from './plain-words.ts';

/** A student here already; `contacts` are all they are reached by. */
export type KnownStudent = Pick<StudentRecord, 'id' | 'name' | 'family' | 'contacts'>;

interface Person {
  readonly name: string;
  readonly contacts: readonly Contact[];
  /** What the file's column says of the family, in plain words; '' where it says nothing. */
  readonly said: string;
  readonly line: number | null;
  readonly known: KnownStudent | null;
}

/** Cells that answer yes or no, and name no family. */
const namesNobody = new Set('yes y no n none n/a na - 0 x ja nein oui non sim nao si'.split(' '));

/**
 * Sets of two or more people with at least one row of the file among them. A row whose student is here already (its twin)
 * counts as that student. `said` is each row's cell of the family column.
 */
export function findSiblings(
  rows: StudentImportPreview['rows'],
  said: readonly string[],
  existing: readonly KnownStudent[],
): readonly SiblingsFound[] {
  const people = listPeople(rows, said, existing);
  return [
    ...collect(people, linkByColumn(people), 'column'),
    ...collect(people, linkByContact(people), 'contact'),
  ];
}

function listPeople(
  rows: StudentImportPreview['rows'],
  said: readonly string[],
  existing: readonly KnownStudent[],
): readonly Person[] {
  const saidOfTwin = new Map<string, string>();
  const fresh: Person[] = [];
  rows.forEach(({ line, student, twin }, at) => {
    if (student === null) return;
    const text = toPlainWords(said[at] ?? '');
    const family = namesNobody.has(text) ? '' : text;
    if (twin !== null) saidOfTwin.set(twin, family);
    else fresh.push({ name: student.name, contacts: student.contacts, said: family, line, known: null });
  });
  const known = existing.map(
    (one): Person => ({
      name: one.name,
      contacts: one.contacts,
      said: saidOfTwin.get(one.id) ?? '',
      line: null,
      known: one,
    }),
  );
  return [...fresh, ...known];
}

type Link = readonly [number, number];

/** A cell names a family, alike in all its rows, or the siblings themselves. */
function linkByColumn(people: readonly Person[]): readonly Link[] {
  const byName = new Map(people.map(({ name }, at) => [toPlainWords(name), at]));
  const byLabel = new Map<string, number>();
  const links: Link[] = [];
  people.forEach(({ said }, at) => {
    if (said === '') return;
    const named = [said, ...said.split(/\s*[,;&/]\s*/)].flatMap((part) => byName.get(part) ?? []);
    for (const other of named) if (other !== at) links.push([at, other]);
    const label = byLabel.get(said);
    if (label === undefined) byLabel.set(said, at);
    else links.push([at, label]);
  });
  return links;
}

/** The same last word of the name, and a contact in common. Of whom the file speaks itself, nothing is guessed. */
function linkByContact(people: readonly Person[]): readonly Link[] {
  const bySurname = new Map<string, number[]>();
  people.forEach(({ name, said, contacts }, at) => {
    const words = toPlainWords(name).split(' ');
    const surname = words.length < 2 ? '' : (words.at(-1) ?? '');
    if (surname === '' || said !== '' || contacts.length === 0) return;
    bySurname.set(surname, [...(bySurname.get(surname) ?? []), at]);
  });
  const links: Link[] = [];
  for (const alike of bySurname.values())
    for (const [n, at] of alike.entries())
      for (const other of alike.slice(n + 1)) {
        const [a, b] = [people[at], people[other]];
        if (a && b && a.contacts.some((one) => b.contacts.some((two) => isSameContact(one, two))))
          links.push([at, other]);
      }
  return links;
}

/** Two mothers of one name with different telephones are two. */
const isSameContact = (a: Contact, b: Contact): boolean =>
  isSameReach(a, b) ||
  (isSamePerson(a, b) && (a.phone === '' || b.phone === '') && (a.email === '' || b.email === ''));

/** The people that links join, set by set, in the order of the file. */
function collect(
  people: readonly Person[],
  links: readonly Link[],
  why: SiblingsFound['why'],
): readonly SiblingsFound[] {
  const setOf = people.map((_, at) => at);
  for (const [a, b] of links) {
    const [from, to] = [setOf[a], setOf[b]];
    if (from === to || to === undefined) continue;
    setOf.forEach((set, at) => {
      if (set === from) setOf[at] = to;
    });
  }
  const sets = new Map<number, Person[]>();
  people.forEach((person, at) => {
    const set = setOf[at] ?? at;
    sets.set(set, [...(sets.get(set) ?? []), person]);
  });
  return [...sets.values()].flatMap((set): SiblingsFound[] => {
    const lines = set.flatMap(({ line }) => line ?? []);
    const here = set.flatMap(({ known }) => known ?? []);
    if (set.length < 2 || lines.length === 0) return [];
    return [
      {
        lines,
        here: here.map(({ id, name }) => ({ id, name })),
        family: here.find(({ family }) => family !== null)?.family ?? null,
        why,
      },
    ];
  });
}
