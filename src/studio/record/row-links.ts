// Which rows point to which: what a row needs to make sense, and so what cannot be taken away or put back alone.

import type { TableName, Tables } from './records.ts';
import type { Reader } from './store.ts';

export interface RowLink {
  readonly from: TableName;
  readonly column: string;
  readonly to: TableName;
}

/** Single ids; the members of a group, and who was not there in a lesson of it, are looked after in `listMissing` and `listPointing`. */
export const rowLinks: readonly RowLink[] = [
  { from: 'student', column: 'family', to: 'family' },
  { from: 'course', column: 'student', to: 'student' },
  { from: 'course', column: 'group', to: 'group' },
  { from: 'courseUnit', column: 'course', to: 'course' },
  { from: 'courseUnit', column: 'unit', to: 'unit' },
  { from: 'unitVersion', column: 'unit', to: 'unit' },
  { from: 'slot', column: 'course', to: 'course' },
  { from: 'event', column: 'course', to: 'course' },
  { from: 'lesson', column: 'course', to: 'course' },
  { from: 'lesson', column: 'slot', to: 'slot' },
  { from: 'segment', column: 'lesson', to: 'lesson' },
  { from: 'segment', column: 'course', to: 'course' },
  { from: 'segment', column: 'courseUnit', to: 'courseUnit' },
  { from: 'segment', column: 'skill', to: 'skill' },
  { from: 'lessonMaterial', column: 'lesson', to: 'lesson' },
  { from: 'lessonMaterial', column: 'course', to: 'course' },
  { from: 'observation', column: 'course', to: 'course' },
  { from: 'observation', column: 'student', to: 'student' },
  { from: 'observation', column: 'lesson', to: 'lesson' },
  { from: 'observation', column: 'skill', to: 'skill' },
  { from: 'observation', column: 'take', to: 'take' },
  { from: 'consent', column: 'student', to: 'student' },
  { from: 'take', column: 'student', to: 'student' },
  { from: 'take', column: 'sound', to: 'sound' },
  { from: 'soundData', column: 'sound', to: 'sound' },
  { from: 'setAside', column: 'course', to: 'course' },
  { from: 'setAside', column: 'courseUnit', to: 'courseUnit' },
];

/** A link whose end does not exist. */
export interface BrokenLink extends RowLink {
  readonly fromId: string;
  readonly toId: string;
}

interface Pointer {
  readonly column: string;
  readonly to: TableName;
  readonly toId: string;
}

/** Everything a row hangs on. */
export function listPointedTo(table: TableName, row: unknown): readonly Pointer[] {
  const fields = row as Readonly<Record<string, unknown>>; // any row read as its columns
  const single = rowLinks.flatMap(({ from, column, to }): Pointer[] => {
    const toId = fields[column];
    return from === table && typeof toId === 'string' ? [{ column, to, toId }] : [];
  });
  const many = (column: string, to: TableName, ids: readonly string[]) =>
    ids.map((toId): Pointer => ({ column, to, toId }));
  if (table === 'group') return [...single, ...many('members', 'student', (row as Tables['group']).members)];
  if (table === 'lesson')
    return [...single, ...many('absent', 'student', (row as Tables['lesson']).absent ?? [])];
  if (table === 'skill') return [...single, ...many('restsOn', 'skill', (row as Tables['skill']).restsOn)];
  return single;
}

/** The links of a row that lead nowhere. */
export async function listMissing(
  reader: Reader,
  table: TableName,
  row: unknown,
): Promise<readonly BrokenLink[]> {
  const { id: fromId } = row as { readonly id: string }; // every row has one
  const missing: BrokenLink[] = [];
  for (const { column, to, toId } of listPointedTo(table, row))
    if ((await reader.get(to, toId as Tables[typeof to]['id'])) === null)
      missing.push({ from: table, column, to, fromId, toId });
  return missing;
}

/** All rows that point to one about to go. */
export async function listPointing(
  reader: Reader,
  table: TableName,
  id: string,
): Promise<readonly BrokenLink[]> {
  const pointing: BrokenLink[] = [];
  const add = (from: TableName, column: string, rows: readonly { readonly id: string }[]) => {
    for (const row of rows) pointing.push({ from, column, to: table, fromId: row.id, toId: id });
  };
  for (const { from, column, to } of rowLinks)
    if (to === table) add(from, column, await reader.list(from, { where: { [column]: id } }));
  if (table === 'student') {
    const groups = await reader.list('group');
    add(
      'group',
      'members',
      groups.filter((g) => g.members.some((m) => m === id)),
    );
    const lessons = await reader.list('lesson');
    add(
      'lesson',
      'absent',
      lessons.filter((l) => l.absent?.some((s) => s === id)),
    );
  }
  if (table === 'skill') {
    const skills = await reader.list('skill');
    add(
      'skill',
      'restsOn',
      skills.filter((s) => s.restsOn.some((r) => r === id)),
    );
    // Units name their skills inside their documents.
    for (const from of ['unit', 'courseUnit'] as const) {
      const units = await reader.list(from);
      add(
        from,
        'document',
        units.filter((u) => u.document.skills.some((s) => s === id)),
      );
    }
  }
  return pointing;
}
