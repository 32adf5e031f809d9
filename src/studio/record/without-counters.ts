import type { TableName } from './records.ts';
import { isSameRow } from './same-row.ts';
import type { ChangedRow } from './store.ts';

/** A row without what the plan and the counters write into it by themselves: that makes no conflict. */
export function withoutCounters(table: TableName, row: unknown): unknown {
  if (row === null || typeof row !== 'object') return row;
  const { revision: _, ...rest } = row as Readonly<Record<string, unknown>>; // any row read as its columns
  const { moved: _moved, plan: _plan, pace: _pace, ...own } = rest;
  return table === 'course' || table === 'studio' ? own : rest;
}

/** Whether a change did more to a row than count on: `false` where only its plan, its pace or its revision moved. */
export const isOwnChange = ({ table, before, after }: ChangedRow): boolean =>
  !isSameRow(withoutCounters(table, before), withoutCounters(table, after));
