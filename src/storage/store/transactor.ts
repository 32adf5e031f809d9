// Writing inside one change. Rows are kept in hand until a list or the end of the change needs them in the database, so
// that a replan of eighty segments goes in a few statements, and so that each row has one first image and one last.

import { assert, present } from '#core';
import type { ChangedRow, ChangeId, JournalledChange, Query, TableName, Tables, Transactor } from '#studio';
import { isSameRow, type Row, recordToRow, rowToRecord } from '../row/row-mapping.ts';
import { tables, unjournalled } from '../schema/tables.ts';
import { rewriteChanges } from './journal.ts';
import { createReader, describe, selectRows, selectRowsById } from './reader.ts';
import { cutIntoBatches, type Run, type Statements } from './statements.ts';

/** One row as this change knows it; `null` where there is none. */
interface RowInHand {
  /** As the change found it; undefined until looked up. */
  before: Row | null | undefined;
  /** As it lies in the database now; undefined until looked up. */
  stored: Row | null | undefined;
  /** As the change wants it. */
  wanted: Row | null | undefined;
}

/** A transactor with its end: what was touched. */
export interface ChangeInHand {
  readonly transactor: Transactor;
  /** Writes what is still in hand and closes the transactor; the rows that differ from before, in order of touch. */
  finish(): Promise<readonly ChangedRow[]>;
  /** The change to be written into the journal, as the rewriting of the journal has it, if there was one. */
  toJournal(change: JournalledChange): JournalledChange;
  /** Closes the transactor as it is. */
  close(): void;
}

/** Begins the writing of one change on a connection that has its transaction open; `id` is null for what-if. */
export function createTransactor(
  run: Run,
  statements: Statements,
  id: ChangeId | null,
  noteUncompacted: string | null,
): ChangeInHand {
  const reader = createReader(run, statements);
  const rowsByTable = new Map<TableName, Map<string, RowInHand>>();
  const touched: { readonly table: TableName; readonly rowId: string }[] = [];
  const unwritten = new Map<TableName, Set<string>>();
  const rewrites: ((change: JournalledChange) => JournalledChange)[] = [];
  let open = true;

  // Steps that reach the database run one after the other, also when the caller does not wait between them.
  let last: Promise<unknown> = Promise.resolve();
  const inOrder = async <R>(step: () => Promise<R>): Promise<R> => {
    assert(open, 'a transactor is used only inside its change');
    const result = last.then(step);
    last = result.catch(() => null); // the caller sees the failure; the next step goes on
    return await result;
  };

  const inHand = (table: TableName, rowId: string): RowInHand => {
    const rows = rowsByTable.get(table) ?? new Map<string, RowInHand>();
    rowsByTable.set(table, rows);
    const known = rows.get(rowId) ?? { before: undefined, stored: undefined, wanted: undefined };
    rows.set(rowId, known);
    return known;
  };

  const want = (table: TableName, rowId: string, row: Row | null): void => {
    assert(open, 'a transactor is used only inside its change');
    const hand = inHand(table, rowId);
    if (hand.wanted === undefined) touched.push({ table, rowId });
    hand.wanted = row;
    const ids = unwritten.get(table) ?? new Set<string>();
    unwritten.set(table, ids.add(rowId));
  };

  /** Learns what the database holds, where this change has not learnt it yet. */
  const lookUp = async (table: TableName, ids: readonly string[]): Promise<void> => {
    const unknown = ids.filter((rowId) => inHand(table, rowId).stored === undefined);
    for (const batch of cutIntoBatches(unknown)) {
      for (const row of await selectRowsById(run, statements, table, batch))
        learn(table, String(row[idPosition(table)]), row);
      for (const rowId of batch) learn(table, rowId, null);
    }
  };
  const learn = (table: TableName, rowId: string, row: Row | null): void => {
    const hand = inHand(table, rowId);
    if (hand.stored === undefined) hand.stored = row;
    if (hand.before === undefined) hand.before = row;
  };

  const writeOut = async (table: TableName): Promise<void> => {
    const ids = [...(unwritten.get(table) ?? [])];
    if (ids.length === 0) return;
    unwritten.delete(table);
    await lookUp(table, ids);
    const described = describe(table);
    const puts: Row[] = [];
    const removes: string[] = [];
    for (const rowId of ids) {
      const hand = inHand(table, rowId);
      const wanted = hand.wanted ?? null;
      const stored = hand.stored ?? null;
      if (wanted === null && stored !== null) removes.push(rowId);
      if (wanted !== null && (stored === null || !isSameRow(described, stored, wanted))) puts.push(wanted);
      hand.stored = wanted;
    }
    for (const batch of cutIntoBatches(removes))
      await run(statements.removeByIds(described, batch.length), batch);
    for (const batch of cutIntoBatches(puts))
      await run(statements.upsert(described, batch.length), batch.flat());
  };

  const transactor: Transactor = {
    async get<T extends TableName>(table: T, rowId: Tables[T]['id']): Promise<Tables[T] | null> {
      const hand = inHand(table, rowId);
      if (hand.wanted === undefined && hand.stored === undefined) await inOrder(() => lookUp(table, [rowId]));
      assert(open, 'a transactor is used only inside its change');
      const row = hand.wanted === undefined ? hand.stored : hand.wanted;
      return row === null || row === undefined ? null : rowToRecord<T>(tables[table], row);
    },
    list<T extends TableName>(table: T, query: Query<T> = {}): Promise<readonly Tables[T][]> {
      return inOrder(async () => {
        await writeOut(table);
        const rows = await selectRows(run, statements, table, query);
        for (const row of rows) learn(table, String(row[idPosition(table)]), row);
        return rows.map((row) => rowToRecord<T>(tables[table], row));
      });
    },
    listChanges: (most) => inOrder(() => reader.listChanges(most)),
    getChange: (change) => inOrder(() => reader.getChange(change)),
    listChangedRows: (change) => inOrder(() => reader.listChangedRows(change)),
    eachChange: (visit) => inOrder(() => reader.eachChange(visit)),
    rewriteJournal: (rewrite) =>
      inOrder(async () => {
        rewrites.push(rewrite);
        if (noteUncompacted !== null) await run(noteUncompacted);
        await rewriteChanges(run, statements, rewrite);
      }),
    async put<T extends TableName>(table: T, record: Tables[T]): Promise<void> {
      want(table, record.id, recordToRow<T>(tables[table], record));
    },
    async remove<T extends TableName>(table: T, rowId: Tables[T]['id']): Promise<void> {
      want(table, rowId, null);
    },
    markUndone: (change, by) =>
      inOrder(async () => {
        assert(id === null || by === id, 'a change is undone by the change in hand');
        const found = await reader.getChange(change);
        assert(found !== null, `the change ${change} to undo is in the journal`);
        await run(statements.markUndone, [by, change]);
      }),
  };

  return {
    transactor,
    close() {
      open = false;
    },
    toJournal: (change) => rewrites.reduce((written, rewrite) => rewrite(written), change),
    async finish() {
      await inOrder(async () => {
        for (const table of [...unwritten.keys()]) await writeOut(table);
      });
      open = false;
      return touched.flatMap(({ table, rowId }) => changedRow(table, rowId, inHand(table, rowId)) ?? []);
    },
  };
}

const idPosition = (table: TableName): number => {
  const columns = describe(table).columns;
  return columns.indexOf(present(describe(table).columnByField.get('id'), `${table}.id`));
};

function changedRow(table: TableName, rowId: string, hand: RowInHand): ChangedRow | null {
  if (unjournalled.has(table)) return null;
  const described = describe(table);
  const before = hand.before ?? null;
  const after = hand.wanted ?? null;
  if (before === null && after === null) return null;
  if (before !== null && after !== null && isSameRow(described, before, after)) return null;
  const image = (row: Row | null): unknown => (row === null ? null : rowToRecord(described, row));
  return { table, rowId, before: image(before), after: image(after) };
}
