// Common practice, no source: see README.md.

import { describe, expect, test } from 'vitest';
import type { PlainDate } from '#core';
import {
  type Activity,
  type CourseInput,
  type CoursePlan,
  defaultCourseSettings,
  defaultPacePrior,
  planCourse,
  type Skill,
  type SkillId,
  type UnitDocument,
  type UnitId,
} from '#planning';

const skillId = (name: string) => `skill:${name}` as SkillId;
const skill = (name: string, restsOn: readonly string[], ongoing = false): Skill => ({
  id: skillId(name),
  title: name,
  area: 'rhythm',
  stage: 'beginner',
  description: name,
  restsOn: restsOn.map(skillId),
  ongoing,
});
const skills = [
  skill('steady beat', []),
  skill('copies a rhythm', ['steady beat']),
  skill('answers a rhythm', ['copies a rhythm']),
  skill('plays an answer in a tune', ['answers a rhythm']),
  skill('easy breathing', [], true),
].map((s) => ({ ...s, id: s.id.replaceAll(' ', '-') as SkillId, restsOn: s.restsOn.map(hyphens) }));
function hyphens(id: SkillId): SkillId {
  return id.replaceAll(' ', '-') as SkillId;
}
const activity = (
  title: string,
  shortest: number,
  usual: number,
  skillName: string,
  character: Activity['character'],
): Activity => ({
  key: title.toLowerCase().replaceAll(' ', '-'),
  title,
  howTo: title,
  minutes: { shortest, usual, longest: usual * 2 },
  develops: [hyphens(skillId(skillName))],
  character,
  variants: [],
  materials: [],
  bring: [],
});
const unitOf = (activities: readonly Activity[]): UnitDocument => ({
  format: 'levare-unit/1',
  id: 'unit:answers' as UnitId,
  version: 1,
  title: 'Answers in two bars',
  area: 'rhythm',
  goal: 'answer a two-bar rhythm',
  about: '',
  stages: ['beginner'],
  ages: { from: 6, to: 99 },
  families: [],
  skills: skills.map((s) => s.id),
  activities,
  extensions: [],
  checks: activities.map((a, i) => ({
    key: `check-${i}`,
    skill: a.develops[0] ?? skillId(''),
    level: 2,
    lookFor: 'in time',
  })),
  next: [],
});
const lessons = (minutes: number) =>
  ['2026-09-07', '2026-09-14', '2026-09-21', '2026-09-28', '2026-10-05'].map((date) => ({
    id: `lesson:${date}`,
    date: date as PlainDate,
    minutes,
    barred: false,
  }));
const course = (minutes: number, activities: readonly Activity[], age: number | null): CourseInput => ({
  course: 'course:check',
  today: '2026-09-07' as PlainDate,
  age,
  stage: 'beginner',
  skills,
  library: [],
  strands: [{ id: 'rhythm', name: 'Rhythm', priority: 1, deadline: null }],
  units: [{ id: 'cu', strand: 'rhythm', document: unitOf(activities), notBefore: null, notAfter: null }],
  lessons: lessons(minutes),
  taught: [],
  observations: [],
  pins: [],
  setAside: [],
  pacePrior: defaultPacePrior,
  settings: defaultCourseSettings,
});

/** Usual minutes of four activities that fill three lessons once the frame and room to breathe are taken off. */
const fourActivities = (first: number, long: number, third: number, last: number) => [
  activity('Keep the beat', 5, first, 'steady beat', 'new'),
  activity('Copy the call', 8, long, 'copies a rhythm', 'hard'),
  activity('Answer the call', 6, third, 'answers a rhythm', 'new'),
  activity('Answers in a tune', 6, last, 'plays an answer in a tune', 'musical'),
];
const rows = [
  { minutes: 30, age: 12, activities: fourActivities(8, 20, 12, 10) },
  { minutes: 40, age: 15, activities: fourActivities(12, 26, 15, 18) },
  { minutes: 45, age: null, activities: fourActivities(15, 30, 18, 20) },
];

describe.each(rows)('three lessons of $minutes minutes, age $age', ({ minutes, age, activities }) => {
  const plan = planCourse(course(minutes, activities, age), null);
  const work = (p: CoursePlan) =>
    p.lessons.map((lesson) => lesson.segments.filter((segment) => segment.kind === 'work'));

  test('four activities give three lessons, and nothing is left out', () => {
    expect(work(plan).map((segments) => segments.length > 0)).toEqual([true, true, true, false, false]);
    expect(plan.leftOut).toEqual([]);
  });

  test('each lesson after the first opens with recap or a revisit, once settled in', () => {
    const opens = plan.lessons.map((l) => l.segments.find((s) => s.kind !== 'settlingIn')?.kind);
    expect(opens[0]).toBe('work');
    for (const kind of opens.slice(1)) expect(['recap', 'revisit']).toContain(kind);
  });

  test('the long activity is split over two lessons with a useful go in each', () => {
    const goes = plan.lessons.flatMap((lesson, at) =>
      lesson.segments
        .filter((s) => s.activity === 'copy-the-call' && s.kind === 'work')
        .map((s) => ({ ...s, at })),
    );
    expect(goes).toHaveLength(2);
    expect((goes[1]?.at ?? 0) - (goes[0]?.at ?? 0)).toBe(1);
    for (const go of goes) expect(go.planned).toBeGreaterThanOrEqual(8);
    expect(goes.reduce((sum, go) => sum + go.planned, 0)).toBe(activities[1]?.minutes.usual);
    expect(goes.map((go) => go.completes)).toEqual([false, true]);
  });

  test('the ongoing skill is in each lesson and has no slot', () => {
    for (const lesson of plan.lessons) {
      expect(lesson.ongoing).toEqual(['skill:easy-breathing']);
      expect(lesson.segments.filter((s) => s.skill === hyphens(skillId('easy breathing')))).toEqual([]);
    }
  });

  test('every lesson ends with setting practice and fills its minutes exactly', () => {
    for (const lesson of plan.lessons) {
      expect(lesson.segments.at(-1)?.kind).toBe('practice');
      expect(lesson.segments.reduce((sum, s) => sum + s.minutes, 0)).toBe(minutes);
    }
  });
});
