// What stands in the way of taking a change back: rows that were changed since, rows made since that hang on its own, and
// rows gone since that its own hang on.

import type { ChangeId, TableName, Tables } from '../record/records.ts';
import { listMissing, listPointedTo, listPointing } from '../record/row-links.ts';
import { isSameRow } from '../record/same-row.ts';
import type { ChangedRow, ChangeRecord, Reader } from '../record/store.ts';
import { isOwnChange, withoutCounters } from '../record/without-counters.ts';

export interface InTheWay {
  readonly why: 'changed' | 'hanging' | 'gone';
  readonly table: TableName;
  readonly rowId: string;
}

const nameOf = ({ table, rowId }: Pick<ChangedRow, 'table' | 'rowId'>) => `${table} ${rowId}`;

/** A closing may learn the studio's pace anew: only that goes back then, whatever else was changed there since. */
export const isPaceAlone = (row: ChangedRow): boolean => row.table === 'studio' && !isOwnChange(row);

/** The first row that stands in the way of putting these back, or null. */
export async function findInTheWay(reader: Reader, rows: readonly ChangedRow[]): Promise<InTheWay | null> {
  for (const row of rows) {
    const { table, rowId, after } = row;
    if (isPaceAlone(row)) continue;
    const now = await reader.get(table, rowId as Tables[typeof table]['id']);
    if (!isSameRow(withoutCounters(table, now), withoutCounters(table, after)))
      return { why: 'changed', table, rowId };
  }
  const own = new Set(rows.map(nameOf));
  for (const { table, rowId, before, after } of rows) {
    if (before === null)
      for (const { from, fromId } of await listPointing(reader, table, rowId))
        if (!own.has(`${from} ${fromId}`)) return { why: 'hanging', table: from, rowId: fromId };
    if (before === null || (after !== null && pointsAlike(table, before, after))) continue;
    // A take comes back without a sound that is deleted meanwhile.
    for (const { to, toId } of await listMissing(reader, table, before))
      if (to !== 'sound' && !own.has(`${to} ${toId}`)) return { why: 'gone', table: to, rowId: toId };
  }
  return null;
}

/** Whether a row hangs on the same things before and after: then they are there. */
const pointsAlike = (table: TableName, before: unknown, after: unknown): boolean =>
  JSON.stringify(listPointedTo(table, before)) === JSON.stringify(listPointedTo(table, after));

const changesSearched = 500;

export interface Journal {
  /** The newest change after this one that touched a row, and still stands; null where none is found. */
  newestOn(row: Pick<ChangedRow, 'table' | 'rowId'>, after: ChangeId): Promise<ChangeRecord | null>;
  /** From here on a change counts as taken back. */
  takeBack(change: ChangeId): void;
}

/** The journal as it is now, in which changes can be taken back in thought. */
export async function openJournal(reader: Reader): Promise<Journal> {
  const newestFirst = await reader.listChanges(changesSearched);
  const place = new Map(newestFirst.map(({ id }, at) => [id, at]));
  const undoes = new Map(
    newestFirst.flatMap(({ id, undoneBy }) => (undoneBy === null ? [] : [[undoneBy, id]])),
  );
  const rowsById = new Map<ChangeId, ReadonlySet<string>>();
  const taken = new Set<ChangeId>();

  const rowsOf = async (id: ChangeId) => {
    const known =
      rowsById.get(id) ?? new Set((await reader.listChangedRows(id)).filter(isOwnChange).map(nameOf));
    rowsById.set(id, known);
    return known;
  };
  const isTaken = (id: ChangeId): boolean => {
    const undoneBy = newestFirst[place.get(id) ?? -1]?.undoneBy ?? null;
    return undoneBy === null ? taken.has(id) : !isTaken(undoneBy);
  };
  return {
    async newestOn(row, after) {
      const name = nameOf(row);
      const end = place.get(after) ?? newestFirst.length;
      for (const change of newestFirst.slice(0, end)) {
        const undone = undoes.get(change.id);
        // What was done and taken back since did nothing; nor did the taking back.
        if (isTaken(change.id) || (undone !== undefined && (place.get(undone) ?? end) < end)) continue;
        if ((await rowsOf(change.id)).has(name)) return change;
      }
      return null;
    },
    takeBack: (id) => void taken.add(id),
  };
}

/** Whether a change is taken back as things stand: an undo that was itself undone does not count. */
export async function isUndone(reader: Reader, change: ChangeRecord): Promise<boolean> {
  let undone = false;
  let at: ChangeRecord | null = change;
  while (at !== null && at.undoneBy !== null) {
    undone = !undone;
    at = await reader.getChange(at.undoneBy);
  }
  return undone;
}
