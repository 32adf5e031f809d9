// The journal: one row for each change, and for each row it touched what was there before and after, as JSON. Undo,
// once-only delivery and the change list read it.

import { deflateRawSync, inflateRawSync } from 'node:zlib';
import { isFields } from '#core';
import type { ChangedRow, ChangeId, ChangeRecord, JournalledChange, TableName } from '#studio';
import type { NamedRow, SqlValue } from '../row/row-mapping.ts';
import { cutIntoBatches, type Run, type Statements } from './statements.ts';

const changedRowColumns = ['change', 'position', 'table_name', 'row_id', 'before', 'after'];

/** Writes a change and its rows at the journal's end. */
export async function writeChange(
  run: Run,
  statements: Statements,
  change: ChangeRecord,
  rows: readonly ChangedRow[],
): Promise<void> {
  await run(statements.insertChange, [
    change.id,
    change.at,
    change.label,
    change.type,
    JSON.stringify(change.reply ?? null),
    change.undoneBy,
  ]);
  await writeRows(run, statements, change.id, rows);
}

async function writeRows(
  run: Run,
  statements: Statements,
  change: ChangeId,
  rows: readonly ChangedRow[],
): Promise<void> {
  let position = 0;
  for (const batch of cutIntoBatches(rows)) {
    const values: SqlValue[] = [];
    for (const row of batch)
      values.push(change, position++, row.table, row.rowId, imageToSql(row.before), afterToSql(row));
    await run(statements.insert('changed_row', changedRowColumns, batch.length), values);
  }
}

/** As many changes as are held at once while the journal is gone through, and looked at before others have their turn. */
const changesAtOnce = 16;

/** Goes through the journal, oldest change first, a few changes at a time; `visit` may write the ones it is given. */
export async function walkJournal(
  run: Run,
  statements: Statements,
  visit: (change: JournalledChange) => Promise<void> | void,
): Promise<void> {
  for (let above = 0; ; ) {
    const found = await run(statements.changesAbove, [above, changesAtOnce]);
    if (found.length === 0) return;
    above = Number(found.at(-1)?.['number']);
    const rowsByChange = new Map<string, ChangedRow[]>(found.map((row) => [String(row['id']), []]));
    for (const batch of cutIntoBatches([...rowsByChange.keys()]))
      for (const row of await run(statements.rowsOfChanges(batch.length), batch))
        rowsByChange.get(String(row['change']))?.push(changedRowOf(row));
    for (const row of found)
      await visit({ ...changeRecordOf(row), rows: rowsByChange.get(String(row['id'])) ?? [] });
  }
}

/** Writes each change of the journal as `rewrite` has it; what comes back as it was given is left alone. */
export async function rewriteChanges(
  run: Run,
  statements: Statements,
  rewrite: (change: JournalledChange) => JournalledChange,
): Promise<void> {
  await walkJournal(run, statements, async (change) => {
    const { rows, ...header } = rewrite(change);
    if (rows !== change.rows) {
      await run(statements.removeRowsOfChange, [change.id]);
      await writeRows(run, statements, change.id, rows);
    }
    const { label, type, reply, undoneBy } = header;
    if (JSON.stringify([label, type, reply, undoneBy]) === JSON.stringify(headerOf(change))) return;
    await run(statements.rewriteChange, [label, type, JSON.stringify(reply ?? null), undoneBy, change.id]);
  });
}

const headerOf = ({ label, type, reply, undoneBy }: ChangeRecord) => [label, type, reply, undoneBy];

/** Drops the changes made before the first one of this instant or later. */
export async function forgetChanges(run: Run, statements: Statements, before: string): Promise<number> {
  const [first] = await run(statements.firstChangeFrom, [before]);
  const number = first?.['number'] ?? null;
  // What undid a change has a higher number than it, so nothing that stays was undone by what goes.
  const below = number === null ? Number.MAX_SAFE_INTEGER : Number(number);
  const count = async () => Number((await run(statements.count('change')))[0]?.['rows']);
  const there = await count();
  await run(statements.forgetRowsBelow, [below]);
  await run(statements.forgetChangesBelow, [below]);
  return there - (await count());
}

/** The change that a row of the journal holds. */
export function changeRecordOf(row: NamedRow): ChangeRecord {
  return {
    id: String(row['id']) as ChangeId, // written by writeChange
    at: String(row['at']),
    label: String(row['label']),
    type: String(row['type']),
    reply: JSON.parse(String(row['reply'])),
    undoneBy: row['undone_by'] === null ? null : (String(row['undone_by']) as ChangeId), // written by markUndone
  };
}

/** The touched row that a row of the journal holds. */
export function changedRowOf(row: NamedRow): ChangedRow {
  const before = sqlToImage(row['before'] ?? null);
  return {
    table: String(row['table_name']) as TableName, // written by writeChange
    rowId: String(row['row_id']),
    before,
    after: sqlToAfter(row['after'] ?? null, before),
  };
}

const imageToSql = (image: unknown): SqlValue => (image === null ? null : pack(JSON.stringify(image)));
const sqlToImage = (value: SqlValue): unknown => (value === null ? null : JSON.parse(unpack(String(value))));

// A course's row is long (all that moved is in it) and is kept with each note in a lesson: packed, it takes a third.

const longestUnpacked = 1000;
/** Tells packed text; JSON never begins with it. */
const packedMark = 'z';

function pack(text: string): string {
  if (text.length <= longestUnpacked) return text;
  const packed = packedMark + deflateRawSync(text).toString('base64');
  return packed.length < text.length ? packed : text;
}

function unpack(text: string): string {
  if (!text.startsWith(packedMark)) return text;
  return inflateRawSync(Buffer.from(text.slice(packedMark.length), 'base64')).toString();
}

// Most changes touch one or two fields of a row, and some rows are long. So where a row was there before and has the same
// fields after, what is kept of the row after is the fields that differ, in a list of one to tell it from a whole row.

function afterToSql({ before, after }: ChangedRow): SqlValue {
  if (!isFields(before) || !isFields(after)) return imageToSql(after);
  const names = Object.keys(after);
  const sameFields =
    names.length === Object.keys(before).length && names.every((name) => Object.hasOwn(before, name));
  if (!sameFields) return imageToSql(after);
  const differing = names.filter((name) => JSON.stringify(before[name]) !== JSON.stringify(after[name]));
  return imageToSql([Object.fromEntries(differing.map((name) => [name, after[name]]))]);
}

function sqlToAfter(value: SqlValue, before: unknown): unknown {
  const kept = sqlToImage(value);
  return Array.isArray(kept) && isFields(before) ? { ...before, ...kept[0] } : kept;
}
