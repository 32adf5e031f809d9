// Goes through all text of a row, at whatever depth, and leaves ids, numbers and what a machine measured alone.

import { type Fields, isFields } from '#core';
import type { TableName } from '../record/records.ts';

/** Sounds, and what was heard in a take: nothing that anybody wrote, and much of it. */
const measured: ReadonlySet<string> = new Set(['heard', 'evidence', 'context', 'data']);
const idForm = /^[a-z-]+:\S*$/;

/** The same row with each of its texts as `change` has it; the row itself where none is changed. */
export function mapRowTexts<Row>(
  table: TableName,
  row: Row,
  change: (text: string, field: string) => string,
): Row {
  if (table === 'sound' || table === 'soundData' || !isFields(row)) return row;
  const mapped = mapFields(row, (value, field) =>
    measured.has(field) ? value : mapTexts(value, (text) => change(text, field)),
  );
  return mapped as Row; // the same fields, with text where text was
}

/** As `mapRowTexts`, for any value that JSON holds. */
export function mapTexts(value: unknown, change: (text: string) => string): unknown {
  if (typeof value === 'string') return idForm.test(value) ? value : change(value);
  if (Array.isArray(value)) {
    const mapped = value.map((item) => mapTexts(item, change));
    return mapped.some((item, at) => item !== value[at]) ? mapped : value;
  }
  return isFields(value) ? mapFields(value, (item) => mapTexts(item, change)) : value;
}

function mapFields(fields: Fields, map: (value: unknown, field: string) => unknown): Fields {
  let changed = false;
  const entries = Object.entries(fields).map(([field, value]): [string, unknown] => {
    const mapped = map(value, field);
    changed ||= mapped !== value;
    return [field, mapped];
  });
  return changed ? Object.fromEntries(entries) : fields;
}
