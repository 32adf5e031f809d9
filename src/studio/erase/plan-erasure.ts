// What an erasure comes to, as plain data: rows that go, rows of others that stay without a word or an id of the student, and
// how each change of the journal is to read from then on.

import { isFields } from '#core';
import type { StudentId, TableName, Tables } from '../record/records.ts';
import { isSameRow } from '../record/same-row.ts';
import type { ChangedRow, JournalledChange, Reader, Transactor } from '../record/store.ts';
import { isOwnChange } from '../record/without-counters.ts';
import { createNameFinder, eraseFound, type NameFound, type NameWord, nameWords } from './erase-names.ts';
import { findTraces, isTheirs, type Traces, withoutIds } from './find-traces.ts';
import { mapRowTexts, mapTexts } from './map-texts.ts';

/** The type of a change of which nothing is left but its id, by which it still counts once. */
export const erasedType = 'erased';

export interface ErasureWish {
  readonly student: StudentId;
  /** Other names by which notes call the student. */
  readonly called: readonly string[];
  /** Places (see `placeOf`) in which a name is somebody else’s, or a word: they stay as they are. */
  readonly keep: readonly string[];
}

export interface Erasure {
  readonly traces: Traces;
  readonly words: readonly NameWord[];
  readonly removes: readonly { readonly table: TableName; readonly id: string }[];
  /** Rows of others that are written anew. */
  readonly puts: readonly { readonly table: TableName; readonly row: { readonly id: string } }[];
  readonly mentions: readonly Mention[];
  rewrite(change: JournalledChange): JournalledChange;
}

/** A text of somebody else’s, or of the studio’s, that names the student. */
export interface Mention {
  readonly place: string;
  readonly table: TableName;
  readonly row: { readonly id: string };
  readonly text: string;
  readonly found: readonly NameFound[];
}

/** What is made of other text by the plan: it follows what it was made of. */
const planned: ReadonlySet<string> = new Set([
  'course moved',
  'course plan',
  'segment title',
  'segment reasons',
]);

/** Where a text stands, for the teacher to say whether it is left: copies of a unit stand and fall with it. */
const placeOf = (table: TableName, row: { readonly id: string }): string =>
  (table === 'unitVersion' || table === 'courseUnit') && 'unit' in row ? String(row.unit) : row.id;

/** Every table by what goes first; a table that is not here does not compile. */
const order: { readonly [T in TableName]: number } = {
  segment: 0,
  lessonMaterial: 1,
  observation: 2,
  setAside: 3,
  take: 4,
  consent: 5,
  soundData: 6,
  sound: 7,
  lesson: 8,
  event: 9,
  slot: 10,
  courseUnit: 11,
  course: 12,
  group: 13,
  student: 14,
  family: 15,
  unitVersion: 16,
  unit: 17,
  skill: 18,
  term: 19,
  holiday: 20,
  studio: 21,
};
const tablesInOrder = (Object.keys(order) as TableName[]).sort((a, b) => order[a] - order[b]); // its keys are the tables

/** Works out an erasure, or null where the studio holds no trace of the student. */
export async function planErasure(reader: Reader, wish: ErasureWish): Promise<Erasure | null> {
  const traces = await findTraces(reader, wish.student);
  if (traces === null) return null;
  const others = (await reader.list('student')).filter(({ id }) => id !== wish.student);
  const studio = await reader.list('studio');
  const families = (await reader.list('family')).filter(({ id }) => !traces.families.has(id));
  // A parent or a sibling who stays on record has the family name too.
  const words = nameWords(traces.names, wish.called, [
    ...others.map(({ name }) => name),
    ...[...others, ...families].flatMap(({ contacts }) => contacts.map(({ name }) => name)),
    ...studio.map(({ teacher }) => teacher),
  ]);
  const find = createNameFinder(words);

  const removes: { table: TableName; id: string }[] = [];
  const staying: { table: TableName; row: { readonly id: string } }[] = [];
  for (const table of tablesInOrder) {
    // Sounds are long: only the student's are looked at.
    const rows =
      table === 'soundData'
        ? await listSoundData(reader, traces)
        : ((await reader.list(table)) as readonly { readonly id: string }[]);
    for (const row of rows)
      if (isTheirs(traces, table, row.id, row)) removes.push({ table, id: row.id });
      else staying.push({ table, row });
  }

  const keep = new Set(wish.keep);
  const kept = new Set<string>();
  const mentions: Mention[] = [];
  for (const { table, row } of staying) {
    const place = placeOf(table, row);
    mapRowTexts(table, row, (text, field) => {
      const found = find(text);
      if (found.length === 0) return text;
      if (keep.has(place)) kept.add(text);
      if (!planned.has(`${table} ${field}`)) mentions.push({ place, table, row, text, found });
      return text;
    });
  }
  const eraseText = (text: string): string => {
    if (kept.has(text)) return text;
    const found = find(text);
    return found.length === 0 ? text : eraseFound(text, found);
  };
  const clean = <Row>(table: TableName, id: string, row: Row): Row => {
    const without = withoutIds(traces, table, row);
    const isPlanned = (field: string) => planned.has(`${table} ${field}`);
    const isKept = row !== null && keep.has(placeOf(table, { ...row, id }));
    return mapRowTexts(table, without, (text, field) =>
      isKept && !isPlanned(field) ? text : eraseText(text),
    );
  };
  const puts = staying.flatMap(({ table, row }) => {
    const cleaned = clean(table, row.id, row);
    return cleaned === row ? [] : [{ table, row: cleaned }];
  });
  return {
    traces,
    words,
    removes,
    puts,
    mentions,
    rewrite: createRewrite({ traces, find, clean, eraseText }),
  };
}

async function listSoundData(reader: Reader, traces: Traces): Promise<readonly { readonly id: string }[]> {
  const lists: (readonly { readonly id: string }[])[] = [];
  for (const sound of traces.sounds)
    lists.push(
      await reader.list('soundData', {
        where: { sound: sound as Tables['sound']['id'] }, // collected from rows of takes and sounds
      }),
    );
  return lists.flat();
}

/** Carries an erasure out. The rows that stay get a higher revision where they have one, so that no older copy is saved over them. */
export async function applyErasure(tx: Transactor, { removes, puts, rewrite }: Erasure): Promise<void> {
  for (const { table, id } of removes) await tx.remove(table, id as Tables[typeof table]['id']); // ids of rows just listed
  for (const { table, row } of puts) {
    const next =
      table !== 'course' && 'revision' in row && typeof row.revision === 'number'
        ? { ...row, revision: row.revision + 1 }
        : row;
    await tx.put(table, next as unknown as Tables[typeof table]); // the row just listed, with some texts and ids less
  }
  await tx.rewriteJournal(rewrite);
}

interface RewriteParts {
  readonly traces: Traces;
  readonly find: (text: string) => readonly NameFound[];
  readonly clean: <Row>(table: TableName, id: string, row: Row) => Row;
  readonly eraseText: (text: string) => string;
}

function createRewrite({ traces, find, clean, eraseText }: RewriteParts): Erasure['rewrite'] {
  const rewriteRow = (row: ChangedRow): readonly ChangedRow[] => {
    const { table, rowId } = row;
    if ([row.before, row.after].some((image) => isTheirs(traces, table, rowId, image))) return [];
    const before = clean(table, rowId, row.before);
    const after = clean(table, rowId, row.after);
    if (before === row.before && after === row.after) return [row];
    return isSameRow(before, after) ? [] : [{ ...row, before, after }];
  };
  /** A label names the student in full; a word of their name alone may be one of a title. */
  const eraseLabel = (label: string) => {
    const found = find(label).filter(({ word }) => word.isWhole && word.text.includes(' ') && !word.isShared);
    return eraseFound(label, found);
  };

  return (change) => {
    const rewritten = change.rows.flatMap(rewriteRow);
    const rowsChanged =
      rewritten.length < change.rows.length || rewritten.some((row, at) => row !== change.rows[at]);
    const names = find(change.label).some(({ word }) => word.isWhole);
    const concerns = rowsChanged || tellsOf(traces, change.reply) || (change.rows.length === 0 && names);
    // What is left where a course of others was only planned again is nothing that a person did.
    if (concerns && change.type !== 'student.erase' && !rewritten.some(isOwnChange)) return stubOf(change);
    const label = concerns ? eraseText(change.label) : eraseLabel(change.label);
    if (!concerns && label === change.label) return change;
    return {
      ...change,
      label,
      reply: withoutCourses(traces, mapTexts(change.reply, concerns ? eraseText : eraseLabel)),
      rows: rowsChanged ? rewritten : change.rows,
    };
  };
}

/** Only its id, its day and its place among the others are left: sent again, it still counts once. */
const stubOf = ({ id, at }: JournalledChange): JournalledChange => {
  const label = 'Erased for good';
  return {
    id,
    at,
    label,
    type: erasedType,
    reply: { change: id, label, courses: [], notices: [] },
    undoneBy: null,
    rows: [],
  };
};

const isTheirCourse = (traces: Traces, told: unknown): boolean =>
  isFields(told) && typeof told['course'] === 'string' && traces.courses.has(told['course']);
const toldCourses = (reply: unknown): readonly unknown[] =>
  isFields(reply) && Array.isArray(reply['courses']) ? reply['courses'] : [];

const tellsOf = (traces: Traces, reply: unknown): boolean =>
  toldCourses(reply).some((told) => isTheirCourse(traces, told));

function withoutCourses(traces: Traces, reply: unknown): unknown {
  if (!isFields(reply) || !tellsOf(traces, reply)) return reply;
  return { ...reply, courses: toldCourses(reply).filter((told) => !isTheirCourse(traces, told)) };
}
