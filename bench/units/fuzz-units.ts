// Random damage to unit files: reading never throws, and whatever is accepted comes back the same through YAML and JSON.

import { isDeepStrictEqual } from 'node:util';
import { createSeededRandom, type Random, randomInteger } from '#core';
import {
  createSkillMap,
  formatUnitFault,
  parseUnitFile,
  readUnitText,
  type UnitFault,
  type UnitFile,
  unitToMarkdown,
  validateUnit,
  writeUnitJson,
  writeUnitYaml,
} from '#planning';
import { writtenUnit } from '../../src/planning/unit/example-unit.contract.ts';

export interface FuzzCount {
  /** How many mutations to try. */
  readonly count: number;
  /** Any 32-bit integer; the same seed gives the same mutations. */
  readonly seed: number;
}

export interface FuzzReport {
  readonly tried: number;
  readonly accepted: number;
  readonly refused: number;
  /** Each with what was fed in; none is the only good number. */
  readonly failures: readonly { readonly what: string; readonly input: string }[];
}

/**
 * Of every six mutations of a small unit one is of YAML text, one of JSON text, three of values, one of what its checks listen
 * for. Stops after 20 failures.
 */
export function fuzzUnits({ count, seed }: FuzzCount): FuzzReport {
  const random = createSeededRandom(seed);
  const yaml = writeUnitYaml(example);
  const json = writeUnitJson(example);
  const failures: { what: string; input: string }[] = [];
  let accepted = 0;
  let tried = 0;
  for (; tried < count && failures.length < 20; tried++) {
    const way = tried % 6;
    const input =
      way === 0
        ? mutateText(yaml, random)
        : way === 1
          ? mutateText(json, random)
          : way === 2
            ? mutateListenFor(random)
            : mutateValue(example, random);
    try {
      const read =
        typeof input === 'string' ? readUnitText(input, way === 0 ? 'yaml' : 'json') : parseUnitFile(input);
      if (!read.ok) {
        const blunt = read.error.find((fault) => !isHelpful(fault));
        if (read.error.length === 0) failures.push({ what: 'refused without a fault', input: show(input) });
        if (blunt !== undefined)
          failures.push({
            what: `does not say how to mend it: ${formatUnitFault(blunt)}`,
            input: show(input),
          });
        continue;
      }
      accepted++;
      const wrong = findLoss(read.value);
      if (wrong !== null) failures.push({ what: wrong, input: show(input) });
    } catch (thrown) {
      failures.push({ what: `threw ${String(thrown)}`, input: show(input) });
    }
  }
  return { tried, accepted, refused: tried - accepted, failures };
}

/** Whether a fault says what to do; one at a figure that is listened for names the nearest value or the values that may stand there. */
function isHelpful(fault: UnitFault): boolean {
  if (fault.problem === '' || fault.mend === '') return false;
  if (!/listenFor\[\d+\]\.\w+$/.test(fault.path)) return true;
  return /\d|one of |Remove it|Did you mean|Write text|Type the text|Keep it|Rename it|Use /.test(fault.mend);
}

const figures: readonly (() => unknown)[] = [
  ...[-1, 0, 0.05, 0.5, 1, 1.5, 2, 3, 15, 20, 21, 60, 100, 101, 1e9].map((value) => () => value),
  ...['3', '', 'quaver', 'quavers', 'phraseLengths', 'phraseLength', 'motif', null, true].map(
    (value) => () => value,
  ),
];

/** The unit with one thing changed in what its checks listen for: a figure, a kind, a field's name, or what an odd mind writes. */
function mutateListenFor(random: Random): unknown {
  const file = structuredClone(example);
  const specs = file.unit.checks.flatMap((check) => check.listenFor ?? []);
  const spec = pick(specs, random);
  const field = pick([...Object.keys(spec), 'atLeast', 'atleast', 'kinds', 'constructor'], random);
  const isOdd = randomInteger(random, 0, 4) === 0;
  const value: unknown = isOdd ? pick(oddValues, random)() : pick(figures, random)();
  if (randomInteger(random, 0, 5) === 0) Reflect.deleteProperty(spec, field);
  else Reflect.set(spec, field, value);
  return file;
}

function findLoss(file: UnitFile): string | null {
  const again = parseUnitFile(file);
  if (!again.ok || !isDeepStrictEqual(again.value, file)) return 'parsing twice gives another value';
  const fromJson = readUnitText(writeUnitJson(file), 'json');
  if (!fromJson.ok || !isDeepStrictEqual(fromJson.value, file)) return 'JSON gives another value';
  const fromYaml = readUnitText(writeUnitYaml(file), 'yaml');
  if (!fromYaml.ok || !isDeepStrictEqual(fromYaml.value, file)) return 'YAML gives another value';
  const map = createSkillMap(file.skills);
  const skillsById = map.ok ? map.value.skillsById : new Map();
  validateUnit(file.unit, skillsById);
  return unitToMarkdown(file.unit, skillsById) === '' ? 'Markdown is empty' : null;
}

const odd = [
  ...[
    '',
    ' ',
    '\n',
    '\r\n',
    '\t',
    '  ',
    ': ',
    '- ',
    '? ',
    '# ',
    '|',
    '|-\n',
    '>+2\n',
    '&a ',
    '*a',
    '!!binary ',
  ],
  ...[
    '!x ',
    '%YAML 1.1\n',
    '---\n',
    '...\n',
    '<<: ',
    '[',
    ']',
    '{',
    '}',
    ',',
    '"',
    "'",
    '\\',
    '\\u',
    '~',
    'null',
  ],
  ...['true', 'no', '0', '-0', '1e999', '0x1f', '0o7', '.inf', '.nan', '12345678901234567890', '2026-11-25'],
  ...[
    '\u0000',
    '\u0007',
    '\u0085',
    '\u2028',
    '\ufeff',
    '\ud800',
    '\udc00',
    '😀',
    'é',
    'e\u0301',
    '__proto__',
    'constructor',
  ],
];

function mutateText(text: string, random: Random): string {
  let changed = text;
  for (let times = randomInteger(random, 1, 3); times > 0; times--) {
    const at = randomInteger(random, 0, changed.length);
    const end = Math.min(changed.length, at + randomInteger(random, 0, 12));
    const other = randomInteger(random, 0, changed.length);
    switch (randomInteger(random, 0, 5)) {
      case 0:
        changed = changed.slice(0, at) + changed.slice(end);
        break;
      case 1:
        changed = changed.slice(0, at) + pick(odd, random) + changed.slice(at);
        break;
      case 2:
        changed = changed.slice(0, at) + pick(odd, random) + changed.slice(end);
        break;
      case 3:
        changed = changed.slice(0, at) + changed.slice(other, other + 40) + changed.slice(at);
        break;
      case 4:
        changed =
          changed.slice(0, at) + String.fromCharCode(randomInteger(random, 0, 0x2ff)) + changed.slice(at + 1);
        break;
      default:
        if (randomInteger(random, 0, 9) === 0) changed = changed.slice(0, at);
        else
          changed =
            changed.slice(0, at) + pick(odd, random).repeat(randomInteger(random, 2, 60)) + changed.slice(at);
    }
  }
  return changed;
}

const oddValues: readonly (() => unknown)[] = [
  ...odd.map((text) => () => text),
  ...[null, undefined, true, 0, -0, -1, 1, 2.5, 121, 1e21, Number.NaN, Number.POSITIVE_INFINITY, 10n].map(
    (v) => () => v,
  ),
  () => [],
  () => ({}),
  () => new Map([['a', 1]]),
  () => Symbol('odd'),
  () => [...odd],
  () => 'a'.repeat(7000),
  () => ' a\n\n\n b  \n',
  () => ({ [Symbol.iterator]: 1, toJSON: () => 'x' }),
  () => JSON.parse('{"__proto__":{"x":1}}'),
  () => {
    const ring: unknown[] = [];
    ring.push(ring);
    return ring;
  },
  () => ({
    get title() {
      throw new Error('no');
    },
  }),
  () => ({ '': [{ '- x': ': y', '#': 'a # b', n: 1.5e-7, deep: [[[[' x ']]]] }] }),
];

/** A copy with one to three places replaced, removed, doubled or moved. */
function mutateValue(value: unknown, random: Random): unknown {
  let changed: unknown = structuredClone(value);
  for (let times = randomInteger(random, 1, 3); times > 0; times--) changed = mutateOnce(changed, random);
  return changed;
}

function mutateOnce(value: unknown, random: Random): unknown {
  const oddValue = () => pick(oddValues, random)();
  if (randomInteger(random, 0, 199) === 0) return oddValue();
  let at: unknown = value;
  for (;;) {
    if (typeof at !== 'object' || at === null) return value;
    const keys = Object.keys(at);
    const key = pick(keys, random);
    if (key === undefined) return value;
    const inside: unknown = readField(at, key);
    const goDeeper = typeof inside === 'object' && inside !== null && randomInteger(random, 0, 4) > 0;
    if (goDeeper) {
      at = inside;
      continue;
    }
    switch (randomInteger(random, 0, 4)) {
      case 0:
        if (Array.isArray(at)) at.splice(Number(key), 1);
        else Reflect.deleteProperty(at, key);
        break;
      case 1:
        if (Array.isArray(at)) at.push(structuredCloneOr(inside));
        else Reflect.set(at, pick(odd, random), inside);
        break;
      case 2:
        Reflect.set(at, pick(keys, random), structuredCloneOr(inside));
        break;
      case 3:
        if (typeof inside === 'string') Reflect.set(at, key, mutateText(inside, random));
        else if (typeof inside === 'number') Reflect.set(at, key, inside + randomInteger(random, -3, 130));
        else Reflect.set(at, key, oddValue());
        break;
      default:
        Reflect.set(at, key, oddValue());
    }
    return value;
  }
}

function readField(from: object, key: string): unknown {
  try {
    return Reflect.get(from, key);
  } catch {
    return undefined;
  }
}

function structuredCloneOr(value: unknown): unknown {
  try {
    return structuredClone(value);
  } catch {
    return value;
  }
}

function pick<T>(list: readonly T[], random: Random): T {
  return list[randomInteger(random, 0, list.length - 1)] as T;
}

function show(input: unknown): string {
  if (typeof input === 'string') return JSON.stringify(input);
  try {
    return (JSON.stringify(input) ?? String(input)).slice(0, 4000);
  } catch {
    return String(Object.prototype.toString.call(input));
  }
}

const example: UnitFile = readExample({
  unit: {
    format: 'levare-unit/1',
    id: 'unit:long-and-short',
    title: 'Long and short: "two" kinds of note',
    area: 'rhythm',
    goal: 'tell long from short & play both',
    about: 'First paragraph.\n\nSecond: with a colon.\n- and a list',
    stages: ['beginner'],
    ages: { from: 6, to: 99 },
    families: ['woodwind'],
    skills: ['skill:beat', 'skill:long-short'],
    activities: [
      {
        key: 'walk',
        title: 'Walk it',
        howTo: 'Say *walk* and step.\n\nThen play.',
        minutes: { shortest: 4, usual: 8, longest: 12 },
        develops: ['skill:beat'],
        variants: [{ ages: { from: 6, to: 8 }, minutes: { shortest: 3, usual: 5, longest: 7 } }],
        materials: [{ key: 'cards', title: 'Cards', spec: { bars: 2, list: [1, 'a', null] } }],
        bring: ['a drum'],
      },
      {
        key: 'play',
        title: 'Play it',
        howTo: 'One note.',
        minutes: { shortest: 4, usual: 8, longest: 12 },
        develops: ['skill:long-short'],
        character: 'musical',
      },
    ],
    checks: [
      { key: 'hear', skill: 'skill:long-short', lookFor: 'Points to the right card.' },
      {
        key: 'show',
        skill: 'skill:long-short',
        lookFor: 'Both kinds, and room between them.',
        listenFor: [
          { kind: 'mostlyValue', value: 'crotchet', share: 0.5, others: 1 },
          { kind: 'restShare', atLeast: 0.1, atMost: 0.4 },
          { kind: 'longNotes', withinCents: 15, seconds: 4, times: 1 },
        ],
      },
    ],
  },
  skills: writtenUnit.skills,
});

function readExample(value: unknown): UnitFile {
  const read = parseUnitFile(value);
  if (!read.ok) throw new Error(`The example is broken: ${JSON.stringify(read.error)}`);
  return read.value;
}
