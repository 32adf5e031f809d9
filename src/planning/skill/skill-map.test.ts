import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Skill, SkillId } from './skill.ts';
import { createSkillMap, formatSkillMapFault } from './skill-map.ts';

/** `b<a` is skill b resting on a; `*` marks an ongoing one. */
function skill(text: string): Skill {
  const [head = '', ...restsOn] = text.split('<');
  return {
    id: `skill:${head.replace('*', '')}` as SkillId,
    title: head.replace('*', ''),
    area: 'rhythm',
    stage: 'beginner',
    description: 'There.',
    restsOn: restsOn.map((id) => `skill:${id}` as SkillId),
    ongoing: head.includes('*'),
  };
}
const skills = (text: string) => text.split(' ').map(skill);
const ids = (text: string) => (text === '' ? [] : text.split(' ').map((id) => `skill:${id}` as SkillId));
function mapOf(text: string) {
  const made = createSkillMap(skills(text));
  if (!made.ok) throw new Error('expected a map');
  return made.value;
}

describe('a skill map', () => {
  test('puts every skill after all it rests on', () => {
    const map = mapOf('d<c<b c<a b<a a');
    expect(map.inOrder.map((one) => one.title)).toEqual(['a', 'c', 'b', 'd']);
    expect(map.restsOnAll(ids('d')[0] as SkillId)).toEqual(ids('a c b'));
    expect(map.supportsAll(ids('a')[0] as SkillId)).toEqual(ids('c b d'));
    expect(map.restsOnAll('skill:unheard-of' as SkillId)).toEqual([]);
  });

  test('keeps that order for any graph without cycles', () => {
    const graph = fc.array(fc.array(fc.nat(30), { maxLength: 4 }), { maxLength: 31 });
    fc.assert(
      fc.property(graph, fc.nat(), (links, turn) => {
        const list = links.map((down, i) =>
          skill([`s${i}`, ...down.filter((j) => j < i).map((j) => `s${j}`)].join('<')),
        );
        const at = list.length === 0 ? 0 : turn % list.length;
        const made = createSkillMap([...list.slice(at), ...list.slice(0, at)]);
        if (!made.ok) throw new Error('refused');
        const place = new Map(made.value.inOrder.map((one, i) => [one.id, i]));
        expect(place.size).toBe(list.length);
        for (const one of list)
          for (const needed of one.restsOn)
            expect(place.get(needed)).toBeLessThan(place.get(one.id) as number);
      }),
      { seed: 20261125 },
    );
  });

  test.each([
    ['a<c b<a c<b', 'SkillCycle', '“a” rests on “c” rests on “b” rests on “a”. Take off one of these links.'],
    ['z<a a<a', 'SkillCycle', '“a” rests on “a”. Take off one of these links.'],
    [
      'beat a<beet',
      'UnknownPrerequisite',
      '“a” rests on skill:beet, which is not in the map. Did you mean skill:beat?',
    ],
    ['a a', 'DuplicateSkill', 'skill:a is in the map twice. Rename or remove one of the two.'],
  ])('of %s is refused as %s', (text, kind, sentence) => {
    const list = skills(text);
    const made = createSkillMap(list);
    if (made.ok) throw new Error('accepted');
    expect(made.error.map((fault) => fault.kind)).toEqual([kind]);
    expect(made.error.map((fault) => formatSkillMapFault(fault, list))).toEqual([sentence]);
  });

  test.each([
    ['', 'a b'],
    ['a', 'b'],
    ['b', ''], // having b stands for the a below it
  ])('with %j already there, a unit on c misses %j', (has, missing) => {
    const map = mapOf('tone* a b<a c<b<tone d<c');
    const unit = { skills: ids('c d'), activities: [{ develops: ids('c') }, { develops: ids('d') }] };
    expect(map.missingFor(unit, (id) => ids(has).includes(id))).toEqual(ids(missing));
  });
});
