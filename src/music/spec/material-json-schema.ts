// The published JSON Schema (draft 2020-12) of material specs, made from the fields the reader reads with.

import { backingFields } from '../backing/backing-fields.ts';
import type { JsonSchema } from './field.ts';
import { fieldsByKind } from './material-spec.ts';

/** The schema of a material spec, sheet or backing track, as plain data. What it cannot say (a chart that reads) is checked on reading. */
export function materialJsonSchema(): JsonSchema {
  const kinds = Object.entries({ ...fieldsByKind, backing: backingFields }).map(([kind, fields]) => {
    const properties: Record<string, unknown> = { kind: { const: kind } };
    const required = ['kind'];
    for (const [name, field] of Object.entries(fields)) {
      const fallback = field.fallback === undefined ? {} : { default: field.fallback };
      properties[name] = { ...field.schema, ...fallback, description: field.about };
      if (field.fallback === undefined) required.push(name);
    }
    return { type: 'object', title: kind, properties, required, additionalProperties: false };
  });
  return { $schema: 'https://json-schema.org/draft/2020-12/schema', title: 'Levare material', oneOf: kinds };
}
