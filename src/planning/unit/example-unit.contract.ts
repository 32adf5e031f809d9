// A small unit for the tests of this folder.

import { assert } from '#core';
import type { Skill, SkillId } from '../skill/skill.ts';
import { parseUnitFile } from './parse-unit-file.ts';
import type { UnitFile } from './unit.ts';

const minutes = { shortest: 4, usual: 8, longest: 12 };

/** As someone might write it: what may be left out is left out. */
export const writtenUnit = {
  unit: {
    format: 'levare-unit/1',
    id: 'unit:long-and-short',
    title: 'Long and short',
    area: 'rhythm',
    goal: 'tell long from short and play both',
    stages: ['beginner', 'elementary'],
    ages: { from: 6, to: 99 },
    skills: ['skill:beat', 'skill:long-short'],
    activities: [
      {
        key: 'walk',
        title: 'Walk it',
        howTo: 'Say the words and step.',
        minutes,
        develops: ['skill:beat'],
        variants: [
          { ages: { from: 6, to: 8 }, minutes: { shortest: 3, usual: 5, longest: 7 } },
          { stages: ['elementary'], title: 'Walk it in your head' },
        ],
      },
      { key: 'play', title: 'Play it', howTo: 'One note.', minutes, develops: ['skill:long-short'] },
    ],
    checks: [{ key: 'hear', skill: 'skill:long-short', lookFor: 'Points to the right card.' }],
  },
  skills: [
    {
      id: 'skill:beat',
      title: 'keeps a beat',
      area: 'rhythm',
      stage: 'beginner',
      description: 'Steps in time.',
    },
    {
      id: 'skill:long-short',
      title: 'tells long from short',
      area: 'rhythm',
      stage: 'beginner',
      description: 'Says which.',
      restsOn: ['skill:beat'],
    },
  ],
} as const;

const read = parseUnitFile(writtenUnit);
assert(read.ok, 'the example reads');
export const exampleFile: UnitFile = read.value;
export const exampleSkillsById: ReadonlyMap<SkillId, Skill> = new Map(
  exampleFile.skills.map((skill) => [skill.id, skill]),
);
