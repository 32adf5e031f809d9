import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseUnitFile } from './parse-unit-file.ts';

/** Names of fields in a JSON Schema (draft 2020-12, `properties`), but for what is listened for, which has hints of its own. */
function fieldsIn(node: unknown): readonly string[] {
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([key, inner]) =>
    key === 'listenFor' ? [key] : [...(key === 'properties' ? Object.keys(inner) : []), ...fieldsIn(inner)],
  );
}

test('a slip in the name of any field of the published schema is told with the field that was meant', () => {
  const schema = readFileSync(new URL('../../../library/schema/unit.schema.json', import.meta.url), 'utf8');
  const names = [...new Set(fieldsIn(JSON.parse(schema)))];
  expect(names.length).toBeGreaterThan(30);
  for (const name of names) {
    const read = parseUnitFile({ [`${name.slice(0, 1)}q${name.slice(1)}`]: 1 });
    const mends = read.ok ? [] : read.error.map(({ mend }) => mend);
    expect(mends, name).toContain(`Did you mean ${name}? Else remove it.`);
  }
});
