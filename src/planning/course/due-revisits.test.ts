import { expect, test } from 'vitest';
import { addDays, daysBetween, type PlainDate } from '#core';
import { recallOn } from '../review/memory-card.ts';
import type { Level } from '../skill/skill.ts';
import type { CourseInput } from './course-input.ts';
import {
  exampleActivity as act,
  exampleCourse,
  exampleUnit,
  firstDay,
  logged,
  onCourse,
  exampleSkill as skill,
  skillId,
  weeklyLessons,
} from './example-course.contract.ts';
import { formulateProblem } from './formulate-problem.ts';
import { revisitMinutes } from './lesson-frame.ts';
import { planCourse } from './plan-course.ts';

const skills = [skill('pulse'), skill('echo', ['pulse']), skill('tone', [], { ongoing: true })];
const seen = (name: string, level: Level, date: string) => ({
  skill: skillId(name),
  level,
  date: date as PlainDate,
});
const course = (rest: Partial<CourseInput> = {}) => exampleCourse({ skills, ...rest });
const due = (input: CourseInput, name: string) => formulateProblem(input).revisitBySkill.get(skillId(name));

test('[R2] finishing an activity without a level on its skill counts as seen at the wanted level', () => {
  const unit = onCourse('u1', exampleUnit('p', [act('clap', 10, ['pulse'])]));
  const done = course({
    today: addDays(firstDay, 1),
    units: [unit],
    lessons: weeklyLessons(11, 45, addDays(firstDay, 7)),
    taught: [
      { id: 'l', date: firstDay, minutes: 45, work: [logged('u1', 'clap', 10, 'finished')], revisited: [] },
    ],
  });
  expect(due(done, 'pulse')).toEqual(due({ ...done, observations: [seen('pulse', 2, firstDay)] }, 'pulse'));
  expect(due(done, 'pulse')?.due).toBeGreaterThan(1);
});

test('[R3] what is learnt comes back; what is not, and what is ongoing, does not', () => {
  const observations = [
    seen('pulse', 2, '2026-09-01'),
    seen('echo', 1, '2026-09-01'),
    seen('tone', 3, '2026-09-01'),
  ];
  const unit = onCourse('u1', exampleUnit('e', [act('echoes', 10, ['echo'])]));
  const { problem } = formulateProblem(course({ observations, units: [unit] }));
  expect(problem.reviews.map((r) => r.id)).toEqual([skillId('pulse')]);
  // Nothing on the course works on it any more: even a low level comes back.
  expect(due(course({ observations }), 'echo')).toBeDefined();
  expect(due(course({ observations }), 'tone')).toBeUndefined();
});

test('[R4] due at the first lesson on or after the day that recall falls below what is wanted', () => {
  const input = course({
    observations: ['2026-07-20', '2026-08-03', '2026-09-07'].map((date) => seen('pulse', 3, date)),
    lessons: weeklyLessons(52, 30),
  });
  const revisit = due(input, 'pulse');
  expect(revisit?.due).toBeGreaterThan(1);
  const at = input.lessons[revisit?.due ?? 0]?.date ?? firstDay;
  const before = input.lessons[(revisit?.due ?? 0) - 1]?.date ?? firstDay;
  if (revisit === undefined) throw new Error('no revisit');
  expect(recallOn(revisit.card, at)).toBeLessThan(0.85);
  expect(recallOn(revisit.card, before)).toBeGreaterThanOrEqual(0.85);
  const barred = input.lessons.map((lesson, i) => ({ ...lesson, barred: i === revisit.due }));
  expect(due({ ...input, lessons: barred }, 'pulse')?.due).toBe(revisit.due + 1);
});

test('[R4] the next recap counts for what the last lesson worked on', () => {
  const unit = onCourse('u1', exampleUnit('p', [act('clap', 10, ['pulse'])]));
  const input = course({
    today: addDays(firstDay, 1),
    units: [unit],
    lessons: weeklyLessons(11, 45, addDays(firstDay, 7)),
    taught: [
      { id: 'l', date: firstDay, minutes: 45, work: [logged('u1', 'clap', 10, 'finished')], revisited: [] },
    ],
    observations: [seen('pulse', 2, firstDay)],
  });
  const revisit = due(input, 'pulse');
  expect(revisit?.card.lastSeen).toBe(addDays(firstDay, 7));
  expect(revisit?.due).toBeGreaterThan(1);
  const withoutRecap = { ...input, settings: { ...input.settings, recap: 0 } };
  expect(due(withoutRecap, 'pulse')?.due).toBe(0);
});

test('[R5] a skill that the next activity rests on comes back earlier', () => {
  const twice = (first: string) => [
    seen('pulse', 3, first),
    seen('pulse', 3, addDays(first as PlainDate, 7)),
  ];
  const units = [onCourse('u1', exampleUnit('e', [act('echoes', 10, ['echo'])]))];
  // Four weeks after the second sighting recall is between 85 and 92 %: not due yet, but not good enough to rest on.
  const observations = twice('2026-08-03');
  expect(due(course({ observations }), 'pulse')).toMatchObject({ due: 2, weight: 1, neededBy: null });
  expect(due(course({ observations, units }), 'pulse')).toMatchObject({
    due: 0,
    weight: 2,
    neededBy: 'Activity echoes',
  });
  const fresh = twice('2026-08-24');
  expect(due(course({ observations: fresh, units }), 'pulse')?.neededBy).toBeNull();
});

test('[R6] no revisit beside work on the same skill', () => {
  const unit = onCourse('u1', exampleUnit('p', [act('clap', 10, ['pulse'])]));
  const input = course({ observations: [seen('pulse', 2, '2026-08-01')], units: [unit] });
  expect(due(input, 'pulse')).toBeUndefined();
});

test('[R7] what was set aside rests first, then comes back', () => {
  const unit = onCourse('u1', exampleUnit('p', [act('clap', 10, ['pulse'])]));
  const setAside = [{ courseUnit: 'u1', activity: 'clap', since: firstDay, backFrom: null }];
  const revisit = due(course({ units: [unit], setAside }), 'pulse');
  expect(revisit).toMatchObject({ due: 2 });
});

test('[R8] minutes by age, within the time the course has for revisits', () => {
  expect([5, 8, 9, 11, 12, 15, 16, 60, null].map(revisitMinutes)).toEqual([2, 2, 3, 3, 4, 4, 5, 5, 5]);
  const observations = [seen('pulse', 2, '2026-08-01')];
  expect(due(course({ observations, age: 10 }), 'pulse')?.minutes).toBe(3);
  const none = course({ observations });
  expect(due({ ...none, settings: { ...none.settings, revisit: 0 } }, 'pulse')).toBeUndefined();
});

test('[R9] the last work of a unit on a checked skill brings one revisit, where there is room', () => {
  const unit = onCourse('u1', exampleUnit('p', [act('clap', 10, ['pulse']), act('walk', 10, ['pulse'])]));
  const plan = planCourse(course({ units: [unit] }), null);
  const found = plan.lessons.flatMap((lesson) =>
    lesson.segments.filter((s) => s.kind === 'revisit').map((s) => ({ ...s, date: lesson.date })),
  );
  expect(found).toMatchObject([{ skill: skillId('pulse'), activity: 'walk', planned: 5 }]);
  // FSRS-6: hard, hard again after a week, then down to 85 %: the third or fourth week after completion.
  const weeks = found.map((s) => daysBetween(firstDay, s.date) / 7);
  expect(weeks[0]).toBeGreaterThanOrEqual(3);
  expect(weeks[0]).toBeLessThanOrEqual(4);
  const reason = found[0]?.reasons[0];
  expect(reason?.kind === 'due' && reason.recall < 0.85 && reason.lastSeen === null).toBe(true);
});
