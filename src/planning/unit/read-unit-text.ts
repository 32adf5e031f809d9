// Reads units and skill maps from text that anyone may have written: bounded in size and depth, without tags of their own
// making, and without aliases that multiply. Faults carry the line and column.

import { Composer, type CST, type Document, isMap, isNode, isScalar, LineCounter, Parser, visit } from 'yaml';
import { err, parseJson, type Result } from '#core';
import type { Skill } from '../skill/skill.ts';
import { type PlacedFault, placeSkillMap, placeUnitFile } from './parse-unit-file.ts';
import type { UnitFile } from './unit.ts';
import type { UnitFault } from './unit-fault.ts';

export type TextFormat = 'yaml' | 'json';

/** In UTF-16 units; a rich unit has about 25,000. */
export const longestUnitText = 512_000;
const deepestYaml = 40;
const mostAliases = 20;

/** A unit file from its text. Never throws. */
export function readUnitText(text: string, format: TextFormat): Result<UnitFile, readonly UnitFault[]> {
  return readText(text, format, placeUnitFile);
}

/** The skills of a skill map file from its text. Never throws. */
export function readSkillMapText(
  text: string,
  format: TextFormat,
): Result<readonly Skill[], readonly UnitFault[]> {
  return readText(text, format, placeSkillMap);
}

function readText<T>(
  text: string,
  format: TextFormat,
  place: (value: unknown) => Result<T, readonly PlacedFault[]>,
): Result<T, readonly UnitFault[]> {
  if (text.length > longestUnitText)
    return err([
      {
        kind: 'TooLarge',
        path: '',
        problem: `has ${text.length} characters, more than ${longestUnitText}`,
        mend: 'Split it, or move long texts elsewhere.',
      },
    ]);
  const body = text.startsWith('\ufeff') ? text.slice(1) : text;
  return format === 'json' ? readJson(body, place) : readYaml(body, place);
}

function readJson<T>(
  text: string,
  place: (value: unknown) => Result<T, readonly PlacedFault[]>,
): Result<T, readonly UnitFault[]> {
  const read = parseJson(text);
  if (!read.ok) {
    const { problem, mend, line, column } = read.error;
    return err([{ kind: 'Syntax', path: '', problem, mend, line, column }]);
  }
  const placed = place(read.value);
  return placed.ok ? placed : err(placed.error.map((one) => one.fault));
}

function readYaml<T>(
  text: string,
  place: (value: unknown) => Result<T, readonly PlacedFault[]>,
): Result<T, readonly UnitFault[]> {
  const lines = new LineCounter();
  const syntax = (problem: string, mend: string, offset: number): UnitFault => {
    const { line, col } = lines.linePos(offset);
    return { kind: 'Syntax', path: '', problem, mend, line: Math.max(1, line), column: Math.max(1, col) };
  };

  // The composer recurses, so depth is measured on the flat token tree first: past the stack's end V8 may abort.
  const tokens = [...new Parser(lines.addNewLine).parse(text)];
  const tooDeep = findTooDeep(tokens);
  if (tooDeep !== null)
    return err([syntax('is nested too deep', `Keep it within ${deepestYaml} levels.`, tooDeep)]);

  const composer = new Composer({
    version: '1.2',
    schema: 'core',
    merge: false,
    resolveKnownTags: false,
    uniqueKeys: false, // the library compares every pair of keys; `findBadKey` does it in one pass
    prettyErrors: false,
  });
  const documents: Document.Parsed[] = [...composer.compose(tokens, true, text.length)];
  const document = documents[0];
  if (document === undefined) return err([syntax('is empty', 'Write a unit.', 0)]);
  const second = documents[1];
  if (second !== undefined)
    return err([syntax('holds more than one document', 'Keep one per file.', second.range[0])]);

  const problems = [...document.errors, ...document.warnings];
  if (problems.length > 0)
    return err(
      problems
        .slice(0, 10)
        .map((one) =>
          syntax(
            `is not YAML that can be read: ${one.message.replace(/\.$/, '')}`,
            mendYaml(one.code),
            one.pos[0],
          ),
        ),
    );
  const badKey = findBadKey(document);
  if (badKey !== null) return err([syntax(badKey.problem, badKey.mend, badKey.offset)]);

  let value: unknown;
  try {
    value = document.toJS({ maxAliasCount: mostAliases });
  } catch {
    return err([syntax('uses aliases (*name) too freely', 'Write the text out in each place.', 0)]);
  }
  const placed = place(value);
  if (placed.ok) return placed;
  return err(
    placed.error.map(({ fault, steps }) => {
      const { line, col } = lines.linePos(findOffset(document, steps));
      return { ...fault, line: Math.max(1, line), column: Math.max(1, col) };
    }),
  );
}

function mendYaml(code: string): string {
  switch (code) {
    case 'TAG_RESOLVE_FAILED':
      return 'Remove the tag (the word that starts with !).';
    case 'TAB_AS_INDENT':
      return 'Indent with spaces, not tabs.';
    case 'BAD_INDENT':
      return 'Line it up with its neighbours.';
    case 'MISSING_CHAR':
      return 'Close the quote or bracket.';
    default:
      return 'Put text with a colon, # or quotes in it into quotes, or below a line that ends in |-.';
  }
}

function findTooDeep(tokens: readonly CST.Token[]): number | null {
  const waiting: { readonly token: CST.Token; readonly depth: number }[] = tokens.map((token) => ({
    token,
    depth: 0,
  }));
  for (let next = waiting.pop(); next !== undefined; next = waiting.pop()) {
    const { token, depth } = next;
    if (depth > deepestYaml) return token.offset ?? 0;
    if (token.type === 'document' && token.value !== undefined)
      waiting.push({ token: token.value, depth: depth + 1 });
    if ('items' in token)
      for (const item of token.items) {
        if (item.key) waiting.push({ token: item.key, depth: depth + 1 });
        if (item.value) waiting.push({ token: item.value, depth: depth + 1 });
      }
  }
  return null;
}

interface BadKey {
  readonly problem: string;
  readonly mend: string;
  readonly offset: number;
}

/** A field name said twice in one place, or one that is itself a list or a group of fields. */
function findBadKey(document: Document.Parsed): BadKey | null {
  let found: BadKey | null = null;
  visit(document, {
    Map(_, map) {
      const seen = new Set<string>();
      for (const { key } of map.items) {
        const offset = isNode(key) ? (key.range?.[0] ?? 0) : 0;
        if (!isScalar(key)) {
          found = { problem: 'has a field whose name is not text', mend: 'Write a plain name.', offset };
          return visit.BREAK;
        }
        const name = String(key.value);
        if (seen.has(name)) {
          found = { problem: `says "${name}" twice`, mend: 'Keep one of the two.', offset };
          return visit.BREAK;
        }
        seen.add(name);
      }
      return undefined;
    },
  });
  return found;
}

/** Where the field stands in the text; for a missing one, the nearest thing around it that is there. */
function findOffset(document: Document.Parsed, steps: readonly PropertyKey[]): number {
  for (let length = steps.length; length > 0; length--) {
    const parent: unknown =
      length === 1 ? document.contents : document.getIn(steps.slice(0, length - 1), true);
    const last = steps[length - 1];
    if (isMap(parent)) {
      const pair = parent.items.find((item) => isScalar(item.key) && item.key.value === last);
      if (pair !== undefined && isScalar(pair.key)) return pair.key.range?.[0] ?? 0;
      continue;
    }
    const node: unknown = document.getIn(steps.slice(0, length), true);
    if (typeof node === 'object' && node !== null && 'range' in node && Array.isArray(node.range))
      return Number(node.range[0]);
  }
  return 0;
}
