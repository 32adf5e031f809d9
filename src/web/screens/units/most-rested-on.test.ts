import { expect, test } from 'vitest';
import type { Skill } from '#planning';
import { mostRestedOn } from './most-rested-on.ts';

const skill = (name: string, ...restsOn: readonly string[]): Skill => ({
  id: `skill:${name}` as Skill['id'],
  title: name,
  area: 'technique',
  stage: 'beginner',
  description: '',
  ongoing: false,
  restsOn: restsOn.map((one) => `skill:${one}` as Skill['id']),
});

test('counts what rests on a skill by any number of steps, each once', () => {
  const skills = [skill('alone'), skill('b', 'a'), skill('a'), skill('c', 'b', 'a'), skill('d', 'c')];
  expect(mostRestedOn(skills)?.title).toBe('a');
});

test('takes the first of equals, and nothing from nothing', () => {
  expect(mostRestedOn([skill('one'), skill('two')])?.title).toBe('one');
  expect(mostRestedOn([])).toBeNull();
});

test('comes to an end on a ring', () => {
  expect(mostRestedOn([skill('x'), skill('a', 'b'), skill('b', 'a')])?.title).toBe('a');
});
