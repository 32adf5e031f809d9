// The SQL of the few things a store does, built by Kysely once for each shape and kept as text: a replan writes the
// same shapes over and over, and building them costs more than running them.

import { type Compilable, CompiledQuery, type Kysely, type SelectQueryBuilder } from 'kysely';
import { assert, present } from '#core';
import type { TableName } from '#studio';
import type { NamedRow, SqlValue } from '../row/row-mapping.ts';
import type { Column, TableDescription } from '../schema/column.ts';

/** Tables and columns are described in `schema/`; to Kysely they are names. */
export interface StudioDatabase {
  readonly [table: string]: { readonly [column: string]: SqlValue };
}

/** Runs one statement on the connection in hand. */
export type Run = (sql: string, parameters?: readonly SqlValue[]) => Promise<readonly NamedRow[]>;

/** `Run` on a Kysely connection. */
export const createRun =
  (connection: Kysely<StudioDatabase>): Run =>
  async (sql, parameters = []) =>
    (await connection.executeQuery<NamedRow>(CompiledQuery.raw(sql, [...parameters]))).rows;

/** The shape of a list: which columns are compared with a value or with null, ranged, ordered. Values come apart. */
export interface ListShape {
  readonly equal: readonly Column[];
  readonly none: readonly Column[];
  readonly from: Column | null;
  readonly to: Column | null;
  readonly orderBy: readonly Column[];
}

export interface Statements {
  /** `count` ids. */
  selectByIds(table: TableDescription<TableName>, count: number): string;
  /** The values of `equal`, then `from`, then `to`. */
  list(table: TableDescription<TableName>, shape: ListShape): string;
  count(table: string): string;
  /** `count` rows one after the other; a row whose id is there replaces what is there. */
  upsert(table: TableDescription<TableName>, count: number): string;
  removeByIds(table: TableDescription<TableName>, count: number): string;
  /** `count` rows with these columns. */
  insert(table: string, columns: readonly string[], count: number): string;
  /** The most wanted. */
  readonly newestChanges: string;
  /** In the order in which they were made. */
  readonly oldestChanges: string;
  /** The change's id. */
  readonly changeById: string;
  /** The change's id. */
  readonly changedRows: string;
  /** Changes with a number above one, in the order in which they were made; the most wanted. */
  readonly changesAbove: string;
  /** The touched rows of `count` changes, change by change. */
  rowsOfChanges(count: number): string;
  /** An instant: the number of the first change made then or later, as `number`. */
  readonly firstChangeFrom: string;
  /** A number: the touched rows of the changes below it, and then those changes. */
  readonly forgetRowsBelow: string;
  readonly forgetChangesBelow: string;
  /** Label, type, reply, undone by, then the change's id. */
  readonly rewriteChange: string;
  /** The change's id. */
  readonly removeRowsOfChange: string;
  /** Every touched row of the journal, change by change. */
  readonly allChangedRows: string;
  /** Id, at, label, type, reply, undone by. */
  readonly insertChange: string;
  /** The change that undid, then the change undone. */
  readonly markUndone: string;
}

export function createStatements(database: Kysely<StudioDatabase>): Statements {
  const textByShape = new Map<string, string>();
  const kept = (shape: string, build: () => Compilable): string => {
    const known = textByShape.get(shape);
    if (known !== undefined) return known;
    const text = build().compile().sql;
    textByShape.set(shape, text);
    return text;
  };
  // Values only mark the places of parameters here.
  const places = (count: number): string[] => new Array<string>(count).fill('');
  const placeRows = (columns: readonly string[], count: number): Record<string, string>[] =>
    places(count).map(() => Object.fromEntries(columns.map((name) => [name, ''])));
  const changes = database.selectFrom('change').selectAll();
  const changedRows = database.selectFrom('changed_row').selectAll();

  return {
    selectByIds: (table, count) =>
      kept(`ids ${table.name} ${count}`, () =>
        database.selectFrom(table.name).selectAll().where('id', 'in', places(count)),
      ),
    list: (table, shape) => kept(listKey(table, shape), () => buildList(database, table, shape)),
    count: (table) =>
      kept(`count ${table}`, () => database.selectFrom(table).select((e) => e.fn.countAll().as('rows'))),
    upsert: (table, count) =>
      kept(`upsert ${table.name} ${count}`, () => {
        const names = table.columns.map((column) => column.name);
        const others = names.filter((name) => name !== 'id');
        return database
          .insertInto(table.name)
          .values(placeRows(names, count))
          .onConflict((conflict) =>
            conflict
              .column('id')
              .doUpdateSet((e) =>
                Object.fromEntries(others.map((name) => [name, e.ref(`excluded.${name}`)])),
              ),
          );
      }),
    removeByIds: (table, count) =>
      kept(`remove ${table.name} ${count}`, () =>
        database.deleteFrom(table.name).where('id', 'in', places(count)),
      ),
    insert: (table, columns, count) =>
      kept(`insert ${table} ${columns.join()} ${count}`, () =>
        database.insertInto(table).values(placeRows(columns, count)),
      ),
    newestChanges: changes.orderBy('number', 'desc').limit(1).compile().sql,
    oldestChanges: changes.orderBy('number').compile().sql,
    changeById: changes.where('id', '=', '').compile().sql,
    changedRows: changedRows.where('change', '=', '').orderBy('position').compile().sql,
    changesAbove: changes.where('number', '>', '').orderBy('number').limit(1).compile().sql,
    rowsOfChanges: (count) =>
      kept(`rows of changes ${count}`, () =>
        changedRows.where('change', 'in', places(count)).orderBy('change').orderBy('position'),
      ),
    firstChangeFrom: database
      .selectFrom('change')
      .select((e) => e.fn.min('number').as('number'))
      .where('at', '>=', '')
      .compile().sql,
    forgetRowsBelow: database
      .deleteFrom('changed_row')
      .where('change', 'in', (e) => e.selectFrom('change').select('id').where('number', '<', ''))
      .compile().sql,
    forgetChangesBelow: database.deleteFrom('change').where('number', '<', '').compile().sql,
    rewriteChange: database
      .updateTable('change')
      .set({ label: '', type: '', reply: '', undone_by: '' })
      .where('id', '=', '')
      .compile().sql,
    removeRowsOfChange: database.deleteFrom('changed_row').where('change', '=', '').compile().sql,
    allChangedRows: changedRows.orderBy('change').orderBy('position').compile().sql,
    insertChange: database
      .insertInto('change')
      .values((e) => ({
        id: '',
        at: '',
        label: '',
        type: '',
        reply: '',
        undone_by: '',
        // Changes follow one another (`beginChange`), so the next number is free.
        number: e
          .selectFrom('change')
          .select((f) => f(f.fn.coalesce(f.fn.max('number'), f.lit(0)), '+', f.lit(1)).as('next')),
      }))
      .compile().sql,
    markUndone: database.updateTable('change').set({ undone_by: '' }).where('id', '=', '').compile().sql,
  };
}

// Larger than any studio's usual change, small enough for the parameters that a statement may have.
const mostAtOnce = 64;

/** Cuts a list into pieces whose lengths are powers of two up to 64, so that few shapes of statement are needed. */
export function cutIntoBatches<T>(items: readonly T[]): readonly (readonly T[])[] {
  const batches: (readonly T[])[] = [];
  for (let at = 0; at < items.length; ) {
    const left = items.length - at;
    const size = left >= mostAtOnce ? mostAtOnce : 2 ** Math.floor(Math.log2(left));
    batches.push(items.slice(at, at + size));
    at += size;
  }
  return batches;
}

function listKey(table: TableDescription<TableName>, shape: ListShape): string {
  const names = (columns: readonly (Column | null)[]) => columns.map((column) => column?.name ?? '').join();
  return [
    'list',
    table.name,
    names(shape.equal),
    names(shape.none),
    names([shape.from, shape.to]),
    names(shape.orderBy),
  ].join(' ');
}

function buildList(
  database: Kysely<StudioDatabase>,
  table: TableDescription<TableName>,
  shape: ListShape,
): SelectQueryBuilder<StudioDatabase, string, object> {
  let query = database.selectFrom(table.name).selectAll();
  for (const column of shape.equal) query = query.where(column.name, '=', '');
  for (const column of shape.none) query = query.where(column.name, 'is', null);
  if (shape.from) query = query.where(shape.from.name, '>=', '');
  if (shape.to) query = query.where(shape.to.name, '<=', '');
  for (const column of shape.orderBy)
    query = query.orderBy(column.name, (order) => (column.nullable ? order.asc().nullsFirst() : order.asc()));
  return query.orderBy(present(table.columnByField.get('id'), `${table.table}.id`).name);
}

/** The named column of a table. Throws when there is none, or when JSON is asked to be compared. */
export function comparableColumn(table: TableDescription<TableName>, field: string): Column {
  const column = present(table.columnByField.get(field), `the field ${table.table}.${field}`);
  assert(column.kind !== 'json', `${table.table}.${field} can be compared`);
  return column;
}
