// The published JSON Schema (draft 2020-12) of the file forms. What a schema cannot say (shortest ≤ usual ≤ longest, order
// of ages) is checked on reading.

import * as z from 'zod';
import { skillMapFileSchema } from '../skill/skill-schema.ts';
import { unitFileSchema } from './unit-schema.ts';

/** The schema of a unit file (`unit`) or of a skill map file (`skills`), as plain data. */
export function unitJsonSchema(of: 'unit' | 'skills'): Readonly<Record<string, unknown>> {
  const schema = z.toJSONSchema(of === 'unit' ? unitFileSchema : skillMapFileSchema, { io: 'input' });
  const title = of === 'unit' ? 'Levare unit of work' : 'Levare skill map';
  return JSON.parse(JSON.stringify({ title, ...schema }));
}
