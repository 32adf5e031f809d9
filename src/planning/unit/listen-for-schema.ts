// What a check may have listened for in a take, as it stands in a unit file: the kinds and limits are those of `#listening`,
// which holds them against what is heard.

import * as z from 'zod';
import { assert } from '#core';
import {
  type CheckField,
  type CheckKind,
  type CheckSpec,
  checkableValues,
  checkFields,
  findCrossedBounds,
} from '#listening';

/** Most specs of one check: more than a handful and nobody reads what they show. Our own choice. */
const mostSpecs = 6;

export const listenForKinds = Object.keys(checkFields) as readonly CheckKind[]; // the keys of a record by kind

/** The names of the fields that a kind takes; of every kind where it is none. For "did you mean". */
export function listenForFields(kind: unknown): readonly string[] {
  const known = listenForKinds.filter((one) => one === kind);
  const fields = (known.length > 0 ? known : listenForKinds).flatMap((one) => checkFields[one]);
  return ['kind', ...new Set(fields.map((field) => field.name))];
}

function fieldSchema(field: CheckField): z.ZodType {
  if (field.type === 'value') return z.enum(checkableValues).default(usualValue(field));
  const mend = `Write a ${field.isWhole ? 'whole number' : 'number'} from ${field.low} to ${field.high}.`;
  const number = field.isWhole ? z.int(mend) : z.number(mend);
  return number.min(field.low).max(field.high).default(Number(field.usual));
}

function usualValue({ usual }: CheckField): (typeof checkableValues)[number] {
  return checkableValues.find((value) => value === usual) ?? 'quaver';
}

function kindSchema(kind: CheckKind) {
  const fields = Object.fromEntries(checkFields[kind].map((field) => [field.name, fieldSchema(field)]));
  return z.strictObject({ kind: z.literal(kind), ...fields }).superRefine((spec, context) => {
    const crossed = findCrossedBounds(spec);
    if (crossed === null) return;
    const [low, high] = crossed;
    const values: Readonly<Record<string, unknown>> = spec;
    context.addIssue({
      code: 'custom',
      path: [low],
      message: `is ${String(values[low])}, more than ${high} (${String(values[high])})`,
      params: { mend: `Write ${String(values[high])} or less, or a larger ${high}.` },
    });
  });
}

const [first, ...others] = listenForKinds.map(kindSchema);
assert(first !== undefined, 'there are kinds of checks');

const specSchema = z.discriminatedUnion('kind', [first, ...others]).meta({
  id: 'listenFor',
  description: 'One thing that a recorded take can show; a field left out has its usual value',
});

// Built from the table, so that the compiler cannot follow: a test holds what it takes against `parseCheckSpec`.
export const listenForSchema = z
  .array(specSchema as unknown as z.ZodType<CheckSpec>)
  .min(1)
  .max(mostSpecs)
  .meta({ description: 'What a recorded take can show of it, each heard, not heard, or not to be heard' });
