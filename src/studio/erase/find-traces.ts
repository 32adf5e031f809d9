// Everything in a studio that is one student's: rows that are there now, and rows that only the journal still tells of.

import { isFields } from '#core';
import { courseTables } from '../record/course-tables.ts';
import type { CourseRecord, GroupId, GroupRecord, StudentId, TableName } from '../record/records.ts';
import type { Reader } from '../record/store.ts';

export interface Traces {
  readonly student: StudentId;
  /** Every name they went by. */
  readonly names: readonly string[];
  /** Their own courses, and those of groups that were theirs alone. */
  readonly courses: ReadonlySet<string>;
  /** Groups that nobody else was ever in. */
  readonly groups: ReadonlySet<string>;
  /** Families that nobody else belongs to. */
  readonly families: ReadonlySet<string>;
  readonly sounds: ReadonlySet<string>;
  /** Every row of theirs, by id. */
  readonly ids: ReadonlySet<string>;
  /** Groups that go on without them. */
  readonly shared: readonly GroupRecord[];
}

interface Seen {
  readonly names: Set<string>;
  readonly families: Set<string>;
  readonly own: Set<string>;
  readonly sounds: Set<string>;
  readonly courses: Set<string>;
  readonly membersByGroup: Map<string, Set<string>>;
  readonly groupByCourse: Map<string, string>;
  readonly idsByCourse: Map<string, Set<string>>;
  /** Sounds that takes of others hold, or held. */
  readonly othersSounds: Set<string>;
  readonly othersByCourse: Set<string>;
}

/** What is a student's, or null where there is no trace of them. */
export async function findTraces(reader: Reader, student: StudentId): Promise<Traces | null> {
  const seen: Seen = {
    names: new Set(),
    families: new Set(),
    own: new Set([student]),
    sounds: new Set(),
    courses: new Set(),
    membersByGroup: new Map(),
    groupByCourse: new Map(),
    idsByCourse: new Map(),
    othersSounds: new Set(),
    othersByCourse: new Set(),
  };
  const tables = ['student', 'group', 'course', 'consent', 'take', ...courseTables] as const;
  for (const table of tables)
    for (const row of await reader.list(table)) look(seen, student, table, row.id, row);
  await reader.eachChange(({ rows }) => {
    for (const { table, rowId, before, after } of rows)
      for (const image of [before, after]) look(seen, student, table, rowId, image);
  });
  if (seen.names.size === 0) return null;

  const groups = await reader.list('group');
  const alone = new Set(
    [...seen.membersByGroup].flatMap(([group, members]) =>
      members.size === 1 && members.has(student) ? [group] : [],
    ),
  );
  for (const [course, group] of seen.groupByCourse) if (seen.othersByCourse.has(course)) alone.delete(group);
  const courses = new Set([
    ...seen.courses,
    ...[...seen.groupByCourse].flatMap(([course, group]) => (alone.has(group) ? [course] : [])),
  ]);
  const ids = new Set([...seen.own, ...alone, ...courses]);
  for (const course of courses) for (const id of seen.idsByCourse.get(course) ?? []) ids.add(id);
  const others = (await reader.list('student')).filter(({ id }) => id !== student);
  const families = new Set(
    [...seen.families].filter((family) => !others.some((other) => other.family === family)),
  );
  for (const family of families) ids.add(family);
  const sounds = new Set([...seen.sounds].filter((sound) => !seen.othersSounds.has(sound)));
  // Nothing says whose a sound is that no take holds and no change tells of, and nothing can bring its take back.
  for (const { id } of await reader.list('sound'))
    if (!seen.sounds.has(id) && !seen.othersSounds.has(id)) sounds.add(id);
  for (const sound of sounds) ids.add(sound);
  return {
    student,
    names: [...seen.names],
    courses,
    groups: alone,
    families,
    sounds,
    ids,
    shared: groups.filter(({ id, members }) => members.includes(student) && !alone.has(id)),
  };
}

function look(seen: Seen, student: StudentId, table: TableName, id: string, image: unknown): void {
  if (!isFields(image)) return;
  const isTheirs = table === 'student' ? id === student : image['student'] === student;
  if (isTheirs) seen.own.add(id);
  if (typeof image['course'] === 'string') {
    const course = image['course'];
    seen.idsByCourse.set(course, (seen.idsByCourse.get(course) ?? new Set()).add(id));
    const absent: readonly unknown[] = Array.isArray(image['absent']) ? image['absent'] : [];
    const isOthers = table === 'observation' && !isTheirs && typeof image['student'] === 'string';
    if (isOthers || absent.some((one) => one !== student)) seen.othersByCourse.add(course);
  }
  switch (table) {
    case 'student':
      if (!isTheirs) return;
      seen.names.add(String(image['name']));
      if (typeof image['family'] === 'string') seen.families.add(image['family']);
      return;
    case 'course':
      if (isTheirs) seen.courses.add(id);
      if (typeof image['group'] === 'string') seen.groupByCourse.set(id, image['group']);
      return;
    case 'group': {
      const members: readonly unknown[] = Array.isArray(image['members']) ? image['members'] : [];
      const known = seen.membersByGroup.get(id) ?? new Set();
      for (const member of members) known.add(String(member));
      seen.membersByGroup.set(id, known);
      return;
    }
    case 'take':
      if (typeof image['sound'] === 'string')
        (isTheirs ? seen.sounds : seen.othersSounds).add(image['sound']);
      return;
    default:
  }
}

/** Whether a row, or an image of one, is theirs. */
export function isTheirs(traces: Traces, table: TableName, id: string, image: unknown): boolean {
  if (traces.ids.has(id)) return true;
  if (!isFields(image)) return false;
  const { student, course, sound } = image;
  if (student === traces.student && table !== 'student') return true;
  if (typeof course === 'string' && traces.courses.has(course)) return true;
  return table === 'soundData' && typeof sound === 'string' && traces.sounds.has(sound);
}

/** A row of somebody else, or of the studio, without the ids of theirs; the row itself where it has none. */
export function withoutIds<Row>(traces: Traces, table: TableName, row: Row): Row {
  if (!isFields(row)) return row;
  const { ids } = traces;
  const without: Record<string, unknown> = {};
  const isGone = (value: unknown) => typeof value === 'string' && ids.has(value);
  const drop = (field: string, list: unknown, empty: unknown) => {
    if (!Array.isArray(list) || !list.some(isGone)) return;
    const rest = list.filter((one) => !isGone(one));
    without[field] = rest.length === 0 ? empty : rest;
  };
  if (table === 'group') drop('members', row['members'], []);
  if (table === 'lesson') drop('absent', row['absent'], null);
  if (table === 'observation')
    for (const field of ['take', 'lesson']) if (isGone(row[field])) without[field] = null;
  if (table === 'student' && isGone(row['family'])) without['family'] = null;
  if (table === 'take') {
    for (const field of ['takenIn', 'practiceOf', 'sound']) if (isGone(row[field])) without[field] = null;
    const playedFor = row['playedFor'];
    if (isFields(playedFor) && isGone(playedFor['courseUnit'])) without['playedFor'] = null;
  }
  return Object.keys(without).length === 0 ? row : ({ ...row, ...without } as Row); // ids became null where null may stand
}

/** The courses now there that belong to these groups. */
export async function coursesOfGroups(
  reader: Reader,
  groups: readonly { readonly id: GroupId }[],
): Promise<readonly CourseRecord[]> {
  const lists = await Promise.all(groups.map(({ id }) => reader.list('course', { where: { group: id } })));
  return lists.flat();
}
