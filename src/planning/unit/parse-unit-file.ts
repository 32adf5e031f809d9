// From anything at all to a unit file or a skill map, or to a list of what is wrong with it.

import type * as z from 'zod';
import { err, nearWord, ok, type Result } from '#core';
import type { Skill } from '../skill/skill.ts';
import { skillMapFileSchema } from '../skill/skill-schema.ts';
import { listenForFields, listenForKinds } from './listen-for-schema.ts';
import { plainValue } from './plain-value.ts';
import type { UnitFile } from './unit.ts';
import { formatFieldPath, type UnitFault } from './unit-fault.ts';
import { unitFileSchema } from './unit-schema.ts';

const mostFaults = 50;

/** A fault with its path still in steps, so that a reader of text can look up the line. */
export interface PlacedFault {
  readonly fault: UnitFault;
  readonly steps: readonly PropertyKey[];
}

/** A unit file from parsed JSON or any other value. Fields that may be left out get their usual values. Never throws. */
export function parseUnitFile(value: unknown): Result<UnitFile, readonly UnitFault[]> {
  return withoutPlaces(placeUnitFile(value));
}

/** The skills of a skill map file (`format: levare-skills/1`), not yet checked against each other. Never throws. */
export function parseSkillMap(value: unknown): Result<readonly Skill[], readonly UnitFault[]> {
  return withoutPlaces(placeSkillMap(value));
}

export function placeUnitFile(value: unknown): Result<UnitFile, readonly PlacedFault[]> {
  return parseWith(unitFileSchema, value);
}

export function placeSkillMap(value: unknown): Result<readonly Skill[], readonly PlacedFault[]> {
  const parsed = parseWith(skillMapFileSchema, value);
  return parsed.ok ? ok(parsed.value.skills) : parsed;
}

function withoutPlaces<T>(result: Result<T, readonly PlacedFault[]>): Result<T, readonly UnitFault[]> {
  return result.ok ? result : err(result.error.map((placed) => placed.fault));
}

function parseWith<T>(schema: z.ZodType<T>, value: unknown): Result<T, readonly PlacedFault[]> {
  const plain = plainValue(value);
  if (!plain.ok) return err([{ fault: plain.error, steps: [] }]);
  const parsed = schema.safeParse(plain.value, { reportInput: true });
  if (parsed.success) return ok(parsed.data);
  return err(parsed.error.issues.flatMap(issueToFaults).slice(0, mostFaults));
}

function issueToFaults(issue: z.core.$ZodIssue): readonly PlacedFault[] {
  const at = (steps: readonly PropertyKey[], problem: string, mend: string): PlacedFault => ({
    fault: { kind: 'Shape', path: formatFieldPath(steps), problem, mend },
    steps,
  });
  const here = (problem: string, mend: string) => [at(issue.path, problem, mend)];
  const { input } = issue;

  if (issue.code === 'unrecognized_keys')
    return issue.keys.map((key) => {
      const meant = nearWord(key, isInListenFor(issue) ? listenForFields(kindOf(input)) : fieldNames);
      return at(
        [...issue.path, key],
        'is not a field here',
        meant === null || meant === key ? 'Remove it.' : `Did you mean ${meant}? Else remove it.`,
      );
    });
  if (input === undefined && issue.code !== 'custom')
    return here('is missing', `Add it${wanted(issue) === '' ? '' : `: ${wanted(issue)}`}.`);

  switch (issue.code) {
    case 'invalid_type':
      // A schema that knows better what belongs here says so itself.
      return here(
        `is ${sayKind(input)}`,
        issue.message.startsWith('Write ') ? issue.message : `Write ${wanted(issue)}.`,
      );
    case 'invalid_value':
      return here(`is ${quote(input)}`, `${didYouMean(input, issue.values)}Write ${wanted(issue)}.`);
    case 'invalid_union':
      if (issue.discriminator !== undefined) return unknownKind(issue, here);
      return here(`is ${quote(input)}`, 'Write 1, 2, 3 or 4.');
    case 'too_small':
      if (issue.origin === 'number' || issue.origin === 'int')
        return here(`is ${quote(input)}, less than ${issue.minimum}`, `Write ${issue.minimum} or more.`);
      return here('is empty', issue.origin === 'array' ? 'Add at least one entry.' : 'Write some text.');
    case 'too_big':
      if (issue.origin === 'number' || issue.origin === 'int')
        return here(`is ${quote(input)}, more than ${issue.maximum}`, `Write ${issue.maximum} or less.`);
      return here(
        `is longer than ${issue.maximum} ${issue.origin === 'array' ? 'entries' : 'characters'}`,
        'Shorten it.',
      );
    case 'invalid_format':
      return here(`is ${quote(input)}`, issue.message);
    case 'custom':
      return here(issue.message, String(issue.params?.['mend'] ?? 'Change it.'));
    default:
      return here('does not fit', issue.message);
  }
}

const isInListenFor = (issue: z.core.$ZodIssue): boolean => issue.path.includes('listenFor');

const kindOf = (input: unknown): unknown =>
  typeof input === 'object' && input !== null && 'kind' in input ? input.kind : undefined;

/** A list of things of several kinds holds one whose kind is none of them. */
function unknownKind(
  issue: z.core.$ZodIssueInvalidUnion,
  here: (problem: string, mend: string) => readonly PlacedFault[],
): readonly PlacedFault[] {
  const kind = kindOf(issue.input);
  const kinds = listenForKinds;
  const mend = `${didYouMean(kind, kinds)}Write one of ${kinds.join(', ')}.`;
  return kind === undefined ? here('is missing', mend) : here(`is ${quote(kind)}`, mend);
}

function didYouMean(input: unknown, known: readonly unknown[]): string {
  const meant = typeof input === 'string' ? nearWord(input, known.map(String)) : null;
  return meant === null ? '' : `Did you mean ${meant}? `;
}

function wanted(issue: z.core.$ZodIssue): string {
  if (issue.code === 'invalid_value')
    return `${issue.values.length > 1 ? 'one of ' : ''}${issue.values.join(', ')}`;
  if (issue.code !== 'invalid_type') return '';
  switch (issue.expected) {
    case 'string':
      return 'text';
    case 'int':
    case 'number':
      return 'a whole number';
    case 'array':
      return 'a list';
    case 'object':
    case 'record':
      return 'fields';
    case 'boolean':
      return 'true or false';
    default:
      return issue.expected;
  }
}

function sayKind(input: unknown): string {
  if (input === null) return 'empty';
  if (Array.isArray(input)) return 'a list';
  if (typeof input === 'object') return 'a group of fields';
  return quote(input);
}

function quote(input: unknown): string {
  const text = JSON.stringify(input) ?? 'nothing';
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

const fieldNames =
  'unit skills format id version title area goal about stages ages from to families activities extensions checks next key howTo minutes shortest usual longest develops character variants materials bring spec seed takeHome skill level lookFor listenFor stage description restsOn ongoing'.split(
    ' ',
  );
