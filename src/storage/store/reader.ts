// Reading inside one transaction.

import { assert } from '#core';
import type { ChangedRow, ChangeRecord, Query, Reader, TableName, Tables } from '#studio';
import { namedToRow, type Row, rowToRecord, type SqlValue, valueToSql } from '../row/row-mapping.ts';
import type { Column, TableDescription } from '../schema/column.ts';
import { tables } from '../schema/tables.ts';
import { changedRowOf, changeRecordOf, walkJournal } from './journal.ts';
import { comparableColumn, type ListShape, type Run, type Statements } from './statements.ts';

/** The table's description with its own type narrowed away, for code that works on any table. */
export const describe = (table: TableName): TableDescription<TableName> =>
  tables[table] as unknown as TableDescription<TableName>;

export function createReader(run: Run, statements: Statements): Reader {
  return {
    async get<T extends TableName>(table: T, id: Tables[T]['id']): Promise<Tables[T] | null> {
      const [row] = await selectRowsById(run, statements, table, [id]);
      return row === undefined ? null : rowToRecord<T>(tables[table], row);
    },
    async list<T extends TableName>(table: T, query: Query<T> = {}): Promise<readonly Tables[T][]> {
      const rows = await selectRows(run, statements, table, query);
      return rows.map((row) => rowToRecord<T>(tables[table], row));
    },
    async listChanges(most: number): Promise<readonly ChangeRecord[]> {
      assert(
        Number.isSafeInteger(most) && most >= 0,
        'the number of changes wanted is whole and not negative',
      );
      return (await run(statements.newestChanges, [most])).map(changeRecordOf);
    },
    async getChange(id) {
      const [found] = await run(statements.changeById, [id]);
      return found === undefined ? null : changeRecordOf(found);
    },
    async listChangedRows(id): Promise<readonly ChangedRow[]> {
      return (await run(statements.changedRows, [id])).map(changedRowOf);
    },
    eachChange: (visit) => walkJournal(run, statements, visit),
  };
}

/** The rows with these ids, in no particular order; at most 64 ids, each once. */
export async function selectRowsById(
  run: Run,
  statements: Statements,
  table: TableName,
  ids: readonly string[],
): Promise<readonly Row[]> {
  const described = describe(table);
  const found = await run(statements.selectByIds(described, ids.length), ids);
  return found.map((row) => namedToRow(described, row));
}

/** The rows that a query asks for, in its order. */
export async function selectRows<T extends TableName>(
  run: Run,
  statements: Statements,
  table: T,
  query: Query<T>,
): Promise<readonly Row[]> {
  const described = describe(table);
  const equal: Column[] = [];
  const none: Column[] = [];
  const parameters: SqlValue[] = [];
  for (const [field, value] of Object.entries<unknown>(query.where ?? {})) {
    const column = comparableColumn(described, field);
    if (value === null) none.push(column);
    else {
      equal.push(column);
      parameters.push(valueToSql(described.table, column, value));
    }
  }
  const range = query.range;
  const ranged = range === undefined ? null : comparableColumn(described, range.column);
  assert(ranged === null || ranged.kind === 'text', 'a range is over a text column');
  for (const end of [range?.from, range?.to])
    if (ranged !== null && end !== undefined) parameters.push(valueToSql(described.table, ranged, end));
  const shape: ListShape = {
    equal,
    none,
    from: range?.from === undefined ? null : ranged,
    to: range?.to === undefined ? null : ranged,
    orderBy: (query.orderBy ?? []).map((field) => comparableColumn(described, field)),
  };
  const found = await run(statements.list(described, shape), parameters);
  return found.map((row) => namedToRow(described, row));
}
