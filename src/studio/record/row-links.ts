// Which rows point to which: what a row needs to make sense, and so what cannot be taken away or put back alone.

import type { TableName, Tables } from './records.ts';
import type { Reader } from './store.ts';

export interface RowLink {
  readonly from: TableName;
  readonly column: string;
  readonly to: TableName;
}

/** Single ids; the members of a group, and who was not there in a lesson of it, are looked after in `findMissing` and `listPointing`. */
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

/** The first link of a row that leads nowhere, or null. */
export async function findMissing(
  reader: Reader,
  table: TableName,
  row: unknown,
): Promise<BrokenLink | null> {
  const fields = row as Readonly<Record<string, unknown>>; // any row read as its columns
  const { id: fromId } = row as { readonly id: string }; // every row has one
  for (const link of rowLinks) {
    const toId = fields[link.column];
    if (link.from !== table || typeof toId !== 'string') continue;
    if ((await reader.get(link.to, toId as Tables[typeof link.to]['id'])) === null)
      return { ...link, fromId, toId };
  }
  if (table === 'group')
    for (const member of (row as Tables['group']).members)
      if ((await reader.get('student', member)) === null)
        return { from: 'group', column: 'members', to: 'student', fromId, toId: member };
  if (table === 'lesson')
    for (const away of (row as Tables['lesson']).absent ?? [])
      if ((await reader.get('student', away)) === null)
        return { from: 'lesson', column: 'absent', to: 'student', fromId, toId: away };
  if (table === 'skill')
    for (const needed of (row as Tables['skill']).restsOn)
      if ((await reader.get('skill', needed)) === null)
        return { from: 'skill', column: 'restsOn', to: 'skill', fromId, toId: needed };
  return null;
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
