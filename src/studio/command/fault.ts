// Refusals, in words a teacher can act on.

import type { Fault } from '#contract';
import { type Err, err } from '#core';
import type { TableName } from '../record/records.ts';
import type { Reader } from '../record/store.ts';

export type Refusal = Err<Fault>;

/** There is no such thing: it was removed, or the address is mistyped. `notFound('student')` */
export const notFound = (what: string): Refusal =>
  err({
    kind: 'NotFound',
    message: `There is no such ${what} any more; it may have been removed, or erased with its student. Load the page again.`,
  });

/** A rule stands against it now. */
export const notAllowed = (message: string, details?: readonly string[]): Refusal =>
  err(
    details === undefined ? { kind: 'NotAllowedNow', message } : { kind: 'NotAllowedNow', message, details },
  );

/** A field holds something that cannot be. */
export const invalid = (field: string, message: string, details?: readonly string[]): Refusal =>
  err({ kind: 'Invalid', field, message, ...(details === undefined ? {} : { details }) });

/** Someone, or another window, changed it since it was shown. Names the newest change that touched the row. */
export async function changedElsewhere(
  reader: Reader,
  table: TableName,
  id: string,
  what: string,
): Promise<Refusal> {
  const label = await newestChangeOf(reader, table, id);
  const by = label === null ? '' : ` The newest change: “${label}”.`;
  return err({
    kind: 'ChangedElsewhere',
    message: `${what} was changed in another window since you opened it.${by} Nothing was saved; look at it as it is now and try again.`,
  });
}

/** How far back the journal is searched for the change to name. */
const changesSearched = 60;

async function newestChangeOf(reader: Reader, table: TableName, id: string): Promise<string | null> {
  for (const change of await reader.listChanges(changesSearched)) {
    const rows = await reader.listChangedRows(change.id);
    if (rows.some((r) => r.table === table && r.rowId === id)) return change.label;
  }
  return null;
}
