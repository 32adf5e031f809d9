import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { parseUnitFile, readUnitText, unitJsonSchema, writeUnitJson } from '#planning';
import { readLibraryFile, skillsText, starterUnits } from './starter-library.ts';

const ajv = new Ajv2020({ strict: true, allErrors: true });
const accepts = {
  unit: ajv.compile(JSON.parse(readLibraryFile('schema/unit.schema.json'))),
  skills: ajv.compile(JSON.parse(readLibraryFile('schema/skills.schema.json'))),
};

describe('the published schema', () => {
  test.each(['unit', 'skills'] as const)('of %s is current (else run tools/schema.ts)', (of) => {
    expect(JSON.parse(readLibraryFile(`schema/${of}.schema.json`))).toEqual(unitJsonSchema(of));
  });

  test.each(starterUnits)('accepts $name as written, and as the application writes it', ({ text }) => {
    expect(accepts.unit(parse(text)), JSON.stringify(accepts.unit.errors)).toBe(true);
    const read = readUnitText(text, 'yaml');
    if (!read.ok) throw new Error('unreadable');
    expect(accepts.unit(JSON.parse(writeUnitJson(read.value)))).toBe(true);
  });

  test('accepts the skill map', () => {
    expect(accepts.skills(parse(skillsText)), JSON.stringify(accepts.skills.errors)).toBe(true);
  });

  type Break = (unit: Record<string, unknown>) => void;
  const firstActivity = (unit: Record<string, unknown>) =>
    (unit['activities'] as Record<string, unknown>[])[0] ?? {};
  test.each<[string, Break]>([
    ['no title', (unit) => delete unit['title']],
    ['another format', (unit) => Object.assign(unit, { format: 'levare-unit/2' })],
    ['an unknown area', (unit) => Object.assign(unit, { area: 'theory' })],
    ['no stage', (unit) => Object.assign(unit, { stages: [] })],
    ['an age as text', (unit) => Object.assign(unit, { ages: { from: 'six', to: 99 } })],
    ['an unknown field', (unit) => Object.assign(unit, { color: 'red' })],
    ['minutes as a number', (unit) => Object.assign(firstActivity(unit), { minutes: 10 })],
    [
      'half minutes',
      (unit) => Object.assign(firstActivity(unit), { minutes: { shortest: 2.5, usual: 5, longest: 9 } }),
    ],
    [
      'too many minutes',
      (unit) => Object.assign(firstActivity(unit), { minutes: { shortest: 5, usual: 9, longest: 400 } }),
    ],
    ['a key with a space', (unit) => Object.assign(firstActivity(unit), { key: 'two words' })],
    [
      'a skill without its prefix',
      (unit) => Object.assign(firstActivity(unit), { develops: ['steady-beat'] }),
    ],
    [
      'a level of zero',
      (unit) => Object.assign(unit, { checks: [{ key: 'a', skill: 'skill:a', level: 0, lookFor: 'x' }] }),
    ],
  ])('refuses a unit with %s, as reading does', (_, breakIt) => {
    for (const { text } of starterUnits) {
      const file = parse(text);
      breakIt(file.unit);
      expect(accepts.unit(file)).toBe(false);
      expect(parseUnitFile(file).ok).toBe(false);
    }
  });
});
