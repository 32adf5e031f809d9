import { expect, test } from 'vitest';
import type { SkillStandingView } from '#contract';
import type { Id, PlainDate } from '#core';
import { courseOf, lessonOf } from '../../score/course.fixture.ts';
import { lessonsWithout, skillsOfMember } from './skills-of-member.ts';

const mia = 'student:mia' as Id<'student'>;
const ben = 'student:ben' as Id<'student'>;
const seen = (lesson: Id<'lesson'> | null, level: 1 | 3): SkillStandingView['history'][number] => ({
  observation: `observation:${lesson ?? 'none'}-${level}` as Id<'observation'>,
  lesson,
  date: '2026-01-05' as PlainDate,
  level,
  note: '',
  take: null,
});
const skill = (level: 1 | 3 | null, history: SkillStandingView['history']): SkillStandingView => ({
  skill: 'skill:s' as SkillStandingView['skill'],
  title: 's',
  area: 'ear',
  ongoing: false,
  level,
  history,
  recall: null,
  due: null,
});
const first = lessonOf(1, { status: 'taught' });
const second = lessonOf(2, { status: 'taught', absent: [{ student: mia, name: 'Mia' }] });
const both = [seen(first.lesson, 1), seen(second.lesson, 3)];
const plain = courseOf({ bars: [first, second], skills: [skill(3, both)] });
const course = { ...plain, learner: { ...plain.learner, group: 'group:g' as Id<'group'> } };

test('what a group was seen to do while a member was not there is no level of that member', () => {
  expect([...lessonsWithout(course, mia).keys()]).toEqual([second.lesson]);
  expect(skillsOfMember(course, mia)).toEqual([skill(1, both.slice(0, 1))]);
  expect(skillsOfMember(course, ben)).toBe(course.skills);
});

test('with nothing else seen, nothing is known; what was noted outside a lesson stays', () => {
  const alone = { ...course, skills: [skill(3, [seen(second.lesson, 3)])] };
  expect(skillsOfMember(alone, mia)).toEqual([skill(null, [])]);
  const outside = { ...course, skills: [skill(3, [seen(second.lesson, 1), seen(null, 3)])] };
  expect(skillsOfMember(outside, mia)).toEqual([skill(3, [seen(null, 3)])]);
});
