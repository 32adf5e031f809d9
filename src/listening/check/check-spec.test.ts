import { expect, test } from 'vitest';
import { type CheckKind, checkFields, parseCheckSpec } from './check-spec.ts';
import { describeCheck, nameNotes } from './describe-check.ts';

const kinds = Object.keys(checkFields) as CheckKind[];

test.each(kinds)('%s reads with its usual values and says what it listens for', (kind) => {
  const spec = parseCheckSpec({ kind });
  if (!spec.ok) throw new Error(spec.error.message);
  expect(Object.keys(spec.value)).toEqual(['kind', ...checkFields[kind].map((field) => field.name)]);
  expect(describeCheck(spec.value).length).toBeGreaterThan(10);
});

test.each([
  [null, /kind is missing/],
  [{ kind: 'marks' }, /use one of phraseLengths/],
  [{ kind: 'phraseLengths', atLeast: 'many' }, /atLeast is many: write a number from 1 to 20/],
  [{ kind: 'mostlyValue', value: 'hemiola' }, /value is hemiola: use one of semibreve/],
  [{ kind: 'phraseLengths', atLeast: 2.5 }, /atLeast is 2.5: write a whole number/],
  [{ kind: 'phraseLengths', atleast: 2 }, /atleast is no field of phraseLengths: it takes atLeast/],
  [{ kind: 'restShare', atLeast: 0.6, atMost: 0.5 }, /atLeast is more than atMost/],
  [{ kind: 'swing', from: 2, to: 1.5 }, /from is more than to/],
] as const)('%j is refused in a sentence', (value, message) => {
  const spec = parseCheckSpec(value);
  expect(!spec.ok && spec.error.message).toMatch(message);
});

// The names are those of the shared table of rhythm (see checks/theory): a crotchet is a quarter note.
test('notes are named as the reader names them', () => {
  expect(nameNotes('dotted crotchets and triplet quavers in 2 bars', 'american')).toBe(
    'dotted quarter notes and triplet eighth notes in 2 measures',
  );
  expect(describeCheck({ kind: 'mostlyValue', value: 'semiquaver', share: 0.5, others: 0 }, 'american')).toBe(
    'mostly sixteenth notes (at least 50 % of the notes)',
  );
});
