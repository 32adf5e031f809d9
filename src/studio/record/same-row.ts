// Whether two rows hold the same: key order makes no difference, nor whether a field is null or absent, as a column that
// came with a later version is in rows the journal kept before.

/** `isSameRow({ a: 1, b: [2] }, { b: [2], a: 1 })` → `true` */
export const isSameRow = (a: unknown, b: unknown): boolean => canonical(a) === canonical(b);

function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value === 'object' && value !== null)
    return `{${Object.entries(value)
      .filter(([, v]) => v !== undefined && v !== null)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([key, v]) => `${key}:${canonical(v)}`)
      .join(',')}}`;
  return JSON.stringify(value) ?? 'null';
}
