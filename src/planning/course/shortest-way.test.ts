import { expect, test } from 'vitest';
import type { Skill } from '../skill/skill.ts';
import {
  exampleActivity as act,
  exampleCourse,
  exampleSkill,
  exampleUnit,
  skillId,
} from './example-course.contract.ts';
import { findShortestWay } from './shortest-way.ts';
import { readStanding } from './skill-standing.ts';

const skills = [
  exampleSkill('a'),
  exampleSkill('b', ['a']),
  exampleSkill('c', ['b']),
  exampleSkill('d', ['a']),
  exampleSkill('e', ['c', 'd']),
];
const unit = (name: string, develops: string, usual = 10) =>
  exampleUnit(
    name,
    develops.split(' ').map((s) => act(s, usual, [s])),
  );
const way = (
  missing: string,
  library: readonly ReturnType<typeof unit>[],
  known: readonly Skill[] = skills,
) =>
  findShortestWay(
    missing.split(' ').map(skillId),
    library,
    readStanding(exampleCourse({ skills: known })),
  ).map((id) => id.slice('unit:'.length));

test('[F5] what the missing skill rests on is taught first', () => {
  expect(way('c', [unit('C', 'c'), unit('B', 'b'), unit('A', 'a')])).toEqual(['A', 'B', 'C']);
});

test('[F5] fewest units, then fewest minutes', () => {
  const single = [unit('A', 'a'), unit('B', 'b'), unit('C', 'c')];
  expect(way('c', [...single, unit('AB', 'a b', 90)])).toEqual(['AB', 'C']);
  expect(way('c', [...single, unit('AB', 'a b', 90), unit('ab', 'a b', 20)])).toEqual(['ab', 'C']);
});

test('[F5] one unit for several missing skills beats one each', () => {
  const library = [unit('A', 'a'), unit('C', 'c'), unit('D', 'd'), unit('B', 'b'), unit('CD', 'c d', 40)];
  expect(way('c d', library)).toEqual(['A', 'B', 'CD']);
});

test('[F5] no way when the library lacks a skill, or only a ring of units would do', () => {
  expect(way('c', [unit('C', 'c'), unit('A', 'a')])).toEqual([]);
  expect(way('c', [])).toEqual([]);
});

test('[F5] a ring among units is still a way, in the order listed', () => {
  const ring = [exampleSkill('x', ['y']), exampleSkill('y', ['x'])];
  expect(way('x', [unit('Y', 'y'), unit('X', 'x')], ring)).toEqual(['X', 'Y']);
});

test('[F5] a large library is searched within bounds', () => {
  const many = Array.from({ length: 40 }, (_, i) => exampleSkill(`s${i}`, i === 0 ? [] : [`s${i - 1}`]));
  const library = many.flatMap((_, i) => [unit(`one${i}`, `s${i}`), unit(`two${i}`, `s${i}`, 12)]);
  expect(way('s5', library, many)).toEqual(['one0', 'one1', 'one2', 'one3', 'one4', 'one5']);
  // More than eight units away: no way that a teacher would call short.
  expect(way('s39', library, many)).toEqual([]);
});
