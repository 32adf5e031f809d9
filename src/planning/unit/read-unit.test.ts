import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkableValues, checkFields, parseCheckSpec } from '#listening';
import { exampleFile, writtenUnit } from './example-unit.contract.ts';
import { parseSkillMap, parseUnitFile } from './parse-unit-file.ts';
import { longestUnitText, readSkillMapText, readUnitText } from './read-unit-text.ts';
import { formatUnitFault } from './unit-fault.ts';
import { writeUnitJson, writeUnitYaml } from './write-unit.ts';

const yaml = writeUnitYaml(exampleFile);
const faultsOf = (result: ReturnType<typeof parseUnitFile>) => {
  if (result.ok) throw new Error('accepted');
  return result.error.map(formatUnitFault);
};

describe('a unit file', () => {
  test('gets the usual values for what it leaves out', () => {
    const { unit } = exampleFile;
    expect(unit).toMatchObject({ version: 1, families: [], extensions: [], next: [], about: '' });
    expect(unit.activities[1]).toMatchObject({ character: 'new', variants: [], materials: [], bring: [] });
    expect(unit.checks[0]?.level).toBe(2);
    expect(exampleFile.skills[0]).toMatchObject({ restsOn: [], ongoing: false });
  });

  test('reads back the same from YAML and from JSON', () => {
    expect(readUnitText(yaml, 'yaml')).toEqual({ ok: true, value: exampleFile });
    expect(readUnitText(writeUnitJson(exampleFile), 'json')).toEqual({ ok: true, value: exampleFile });
  });

  test('has its paragraphs in block text', () => {
    const [first] = exampleFile.unit.activities;
    if (first === undefined) throw new Error('no activity');
    const unit = { ...exampleFile.unit, activities: [{ ...first, howTo: 'One: two.\n\n# Three' }] };
    expect(writeUnitYaml({ ...exampleFile, unit })).toContain(
      '      howTo: |-\n        One: two.\n\n        # Three\n',
    );
  });

  const [walk, play] = writtenUnit.unit.activities;
  test.each([
    [
      { minutes: { shortest: 9, usual: 8, longest: 12 } },
      'unit.activities[0].minutes.shortest is 9, more than usual (8). Keep shortest ≤ usual ≤ longest.',
    ],
    [
      { minutes: { shortest: 4, usual: 8, longest: 240 } },
      'unit.activities[0].minutes.longest is 240, more than 120. Write 120 or less.',
    ],
    [
      { minutes: { shortest: 0, usual: 8, longest: 12 } },
      'unit.activities[0].minutes.shortest is 0, less than 1. Write 1 or more.',
    ],
    [
      { minutes: { shortest: 4.5, usual: 8, longest: 12 } },
      'unit.activities[0].minutes.shortest is 4.5. Write a whole number.',
    ],
    [{ minuts: 3 }, 'unit.activities[0].minuts is not a field here. Did you mean minutes? Else remove it.'],
    [{ title: ' \n ' }, 'unit.activities[0].title is empty. Write some text.'],
    [{ title: 'x'.repeat(121) }, 'unit.activities[0].title is longer than 120 characters. Shorten it.'],
    [{ title: undefined }, 'unit.activities[0].title is missing. Add it: text.'],
    [{ title: ['x'] }, 'unit.activities[0].title is a list. Write text.'],
    [
      { character: 'hart' },
      'unit.activities[0].character is "hart". Did you mean hard? Write one of new, hard, easy, musical.',
    ],
    [
      { key: 'Two Words' },
      'unit.activities[0].key is "Two Words". Write lower-case words joined by hyphens, as in two-bar-answers.',
    ],
    [
      { develops: ['beat'] },
      'unit.activities[0].develops[0] is "beat". Write skill: and then 1 to 80 lower-case letters, digits and hyphens.',
    ],
    [
      { howTo: 'bell \u0007' },
      'unit.activities[0].howTo holds a control character or half of a character pair. Type the text again.',
    ],
  ])('with %j is refused', (change, sentence) => {
    const unit = { ...writtenUnit.unit, activities: [{ ...walk, ...change }, play] };
    expect(faultsOf(parseUnitFile({ ...writtenUnit, unit }))).toEqual([sentence]);
  });

  const [hear] = writtenUnit.unit.checks;
  const withListenFor = (listenFor: unknown) => ({
    ...writtenUnit,
    unit: { ...writtenUnit.unit, checks: [{ ...hear, listenFor }] },
  });
  const at = 'unit.checks[0].listenFor';
  test.each([
    [
      [{ kind: 'phraseLength' }],
      `${at}[0].kind is "phraseLength". Did you mean phraseLengths? Write one of `,
    ],
    [[{ atLeast: 3 }], `${at}[0].kind is missing. Write one of phraseLengths, `],
    [[{ kind: 'phraseLengths', atLeast: 40 }], `${at}[0].atLeast is 40, more than 20. Write 20 or less.`],
    [[{ kind: 'phraseLengths', atLeast: 0 }], `${at}[0].atLeast is 0, less than 1. Write 1 or more.`],
    [
      [{ kind: 'phraseLengths', atLeast: 2.5 }],
      `${at}[0].atLeast is 2.5. Write a whole number from 1 to 20.`,
    ],
    [
      [{ kind: 'inTune', withinCents: 'few' }],
      `${at}[0].withinCents is "few". Write a number from 3 to 100.`,
    ],
    [
      [{ kind: 'phraseLengths', atleast: 3 }],
      `${at}[0].atleast is not a field here. Did you mean atLeast? Else remove it.`,
    ],
    [[{ kind: 'phraseLengths', bars: 2 }], `${at}[0].bars is not a field here. Remove it.`],
    [
      [{ kind: 'mostlyValue', value: 'quavers' }],
      `${at}[0].value is "quavers". Did you mean quaver? Write one of semibreve, `,
    ],
    [
      [{ kind: 'restShare', atLeast: 0.6 }],
      `${at}[0].atLeast is 0.6, more than atMost (0.5). Write 0.5 or less, or a larger atMost.`,
    ],
    [[{ kind: 'inScale', atLeastShare: 90 }], `${at}[0].atLeastShare is 90, more than 1. Write 1 or less.`],
    [3, `${at} is 3. Write a list.`],
    [[], `${at} is empty. Add at least one entry.`],
    [[null], `${at}[0] is empty. Write fields.`],
    [Array(7).fill({ kind: 'motif' }), `${at} is longer than 6 entries. Shorten it.`],
  ])('that listens for %j is refused', (listenFor, sentence) => {
    const faults = faultsOf(parseUnitFile(withListenFor(listenFor)));
    expect(faults).toEqual([expect.stringContaining(sentence)]);
  });

  test('listens for what `listening` can hold against a take, with its usual values', () => {
    const number = fc.oneof(fc.integer({ min: -2, max: 110 }), fc.double({ min: 0, max: 4, noNaN: true }));
    const field = fc.oneof(
      { arbitrary: number, weight: 5 },
      { arbitrary: fc.constantFrom<string | null>(...checkableValues, 'few', null), weight: 1 },
    );
    const names = [...new Set(Object.values(checkFields).flatMap((fields) => fields.map((f) => f.name)))];
    const spec = fc.constantFrom(...Object.keys(checkFields), 'marks').chain((kind) => {
      const own = Object.entries(checkFields)
        .find(([known]) => known === kind)?.[1]
        .map((f) => f.name);
      return fc
        .dictionary(fc.constantFrom(...(own ?? names)), field, { maxKeys: 3 })
        .map((fields) => ({ kind, ...fields }));
    });
    let taken = 0;
    fc.assert(
      fc.property(spec, (given) => {
        const read = parseUnitFile(withListenFor([given]));
        const held = parseCheckSpec(given);
        // null is a missing value to the one and a wrong one to the other
        if (Object.values<unknown>(given).includes(null)) return;
        expect(read.ok).toBe(held.ok);
        if (!read.ok || !held.ok) return;
        taken++;
        expect(read.value.unit.checks[0]?.listenFor).toEqual([held.value]);
        expect(readUnitText(writeUnitYaml(read.value), 'yaml')).toEqual(read);
      }),
      { seed: 20261125, numRuns: 1500 },
    );
    expect(taken).toBeGreaterThan(100);
  });

  test('with more than 60 activities in all is refused', () => {
    const many = (of: string, count: number) =>
      Array.from({ length: count }, (_, i) => ({ ...play, key: `${of}-${i}` }));
    const unit = { ...writtenUnit.unit, activities: many('a', 40), extensions: many('e', 21) };
    expect(faultsOf(parseUnitFile({ unit }))).toEqual([
      'unit.activities and extensions are 61 together, more than 60. Split the unit in two.',
    ]);
  });

  test('never throws, whatever the value', () => {
    fc.assert(
      fc.property(
        fc.anything({ withBigInt: true, withDate: true, withMap: true, withSparseArray: true }),
        (value) => {
          expect(parseUnitFile(value).ok).toBe(false);
          expect(parseSkillMap(value).ok).toBe(false);
        },
      ),
      { seed: 20261125 },
    );
    const hostile = new Proxy(
      {},
      {
        ownKeys: () => {
          throw new Error('no');
        },
      },
    );
    expect(parseUnitFile(hostile).ok).toBe(false);
  });
});

describe('the text of a unit', () => {
  test('shows line and column of a field that does not fit', () => {
    const lines = yaml.split('\n');
    const line = lines.findIndex((one) => one.includes('usual: 8'));
    const broken = yaml.replace('usual: 8', 'usual: lots');
    expect(faultsOf(readUnitText(broken, 'yaml'))).toEqual([
      `unit.activities[0].minutes.usual (line ${line + 1}, column 9) is "lots". Write a whole number.`,
    ]);
  });

  test.each([
    ['unit: [', 'is not YAML that can be read'],
    ['unit: !!binary aGk=', 'Remove the tag'],
    ['unit: !secret x', 'Remove the tag'],
    ['%YAML 1.1\n---\nunit: !!set {a}', 'Remove the tag'],
    ['a: 1\na: 2', 'The file (line 2, column 1) says "a" twice. Keep one of the two.'],
    ['a: 1\n---\nb: 2', 'more than one document'],
    ['? {a: 1}\n: 2', 'a field whose name is not text'],
    ['', 'is empty'],
    [`${'['.repeat(200_000)}`, 'nested too deep'],
    [`${'? '.repeat(100_000)}`, 'nested too deep'],
    [`a: &a [1]\nb: [${'*a,'.repeat(90)}]`, 'uses aliases (*name) too freely'],
    ['a: &a [*a]', 'nested too deep'],
    ['a: *nobody', 'The file'],
    [`# ${'x'.repeat(longestUnitText)}`, 'Split it'],
  ])('%# as YAML is refused in words', (text, words) => {
    expect(faultsOf(readUnitText(text, 'yaml')).join('\n')).toContain(words);
  });

  test('an alias bomb is refused before it grows', () => {
    const bomb = ['a: &a [x,x,x,x,x,x,x,x,x]'];
    for (let i = 1; i < 12; i++) {
      const [here, below] = ['abcdefghijkl'[i], 'abcdefghijkl'[i - 1]];
      bomb.push(`${here}: &${here} [${`*${below},`.repeat(9)}]`);
    }
    expect(faultsOf(readUnitText(bomb.join('\n'), 'yaml'))).toEqual([
      'The file (line 1, column 1) uses aliases (*name) too freely. Write the text out in each place.',
    ]);
  });

  test('as JSON shows where it breaks', () => {
    expect(faultsOf(readUnitText('{\n  "unit": {},\n  "skills" []\n}', 'json'))).toEqual([
      'The file (line 3, column 12) is not JSON. Put a colon here.',
    ]);
    expect(faultsOf(readUnitText('['.repeat(200_000), 'json'))[0]).toContain('is not JSON');
    expect(faultsOf(readUnitText(`${'['.repeat(90_000)}${']'.repeat(90_000)}`, 'json'))[0]).toContain(
      'nested too deep',
    );
  });

  test('a field said twice is refused alike in JSON and in YAML', () => {
    const twice = '{\n  "unit": {"title": "One", "goal": "x",\n    "title": "Two"},\n  "skills": []\n}';
    const told = ['The file (line 3, column 5) says "title" twice. Keep one of the two.'];
    expect(faultsOf(readUnitText(twice, 'json'))).toEqual(told);
    expect(faultsOf(readUnitText(twice, 'yaml'))).toEqual(told);
    const skills = '{"format": "levare-skills/1", "skills": [], "format": "levare-skills/1"}';
    expect(readSkillMapText(skills, 'json')).toMatchObject({ ok: false, error: [{ line: 1, column: 45 }] });
  });

  test('skills come from a skill map file', () => {
    const text =
      'format: levare-skills/1\nskills:\n  - {id: "skill:beat", title: Beat, area: rhythm, stage: beginner, description: There.}\n';
    const read = readSkillMapText(text, 'yaml');
    expect(read.ok && read.value[0]?.restsOn).toEqual([]);
    expect(readSkillMapText(text.replace('rhythm', 'rythm'), 'yaml')).toMatchObject({
      ok: false,
      error: [{ path: 'skills[0].area', line: 3 }],
    });
  });
});
