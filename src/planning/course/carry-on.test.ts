import { expect, test } from 'vitest';
import { addDays } from '#core';
import type { CourseInput, Work } from './course-input.ts';
import {
  exampleActivity as act,
  exampleCourse,
  exampleSkill,
  exampleUnit,
  firstDay,
  logged,
  onCourse,
  weeklyLessons,
} from './example-course.contract.ts';
import { planCourse } from './plan-course.ts';

// Two strands of short independent activities for a child: enough beside them that finishing one early costs the plan
// nothing, or nearly.
const names = ['walk', 'tap', 'sing', 'name', 'draw', 'lead', 'hum', 'trade'];
const unit = (from: number) =>
  exampleUnit(
    `u${from}`,
    names.slice(from, from + 4).map((name) => act(name, 12, [name])),
  );
const start = exampleCourse({
  age: 9,
  skills: names.map((name) => exampleSkill(name)),
  strands: [
    { id: 'one', name: 'One', priority: 1, deadline: null },
    { id: 'two', name: 'Two', priority: 2, deadline: null },
  ],
  units: [onCourse('u1', unit(0), 'one'), onCourse('u2', unit(4), 'two')],
  lessons: weeklyLessons(10, 30),
});
const plan = planCourse(start, null);
const first = (plan.lessons[0]?.segments ?? []).filter((s) => s.kind === 'work');

const afterFirst = (work: readonly Work[], rest: Partial<CourseInput> = {}): CourseInput => ({
  ...start,
  today: addDays(firstDay, 1),
  lessons: start.lessons.slice(1),
  taught: [{ id: start.lessons[0]?.id ?? '', date: firstDay, minutes: 30, work, revisited: [] }],
  ...rest,
});
const goes = (course: CourseInput, key: string) =>
  planCourse(course, plan).lessons.flatMap((lesson, at) =>
    lesson.segments.filter((s) => s.activity === key).map((s) => ({ at, minutes: s.planned })),
  );

test('[F21] each piece of work of the first lesson, left half done, is finished in the next', () => {
  expect(first.length).toBeGreaterThan(1);
  for (const left of first) {
    const work = first.map((s) =>
      s === left
        ? logged(s.courseUnit ?? '', s.activity ?? '', s.planned, 'partly', s.planned / 2)
        : // done with, so that the lesson need not hold more begun work than it can
          logged(s.courseUnit ?? '', s.activity ?? '', s.planned, 'finished'),
    );
    expect(goes(afterFirst(work), left.activity ?? '')[0]?.at, left.title).toBe(0);
  }
});

test('[F21] the plan made again keeps it there', () => {
  const [left] = first;
  const after = afterFirst([logged(left?.courseUnit ?? '', left?.activity ?? '', 6, 'partly')]);
  const once = planCourse(after, plan);
  const other = {
    ...after,
    observations: [{ skill: exampleSkill('hum').id, date: firstDay, level: 1 as const }],
  };
  const again = planCourse(other, once).lessons[0]?.segments.map((s) => s.activity);
  expect(again).toContain(left?.activity);
});

test('[F21] a day that has not come, a lesson kept free and a long rest of work are left as they are', () => {
  const [left] = first;
  const work = [logged(left?.courseUnit ?? '', left?.activity ?? '', 6, 'partly')];
  const lessons = start.lessons.slice(1).map((lesson, at) => ({ ...lesson, barred: at === 0 }));
  expect(goes(afterFirst(work, { lessons }), left?.activity ?? '')[0]?.at).toBe(1);
  const units = start.units.map((u) => ({ ...u, notBefore: start.lessons[3]?.date ?? null }));
  expect(goes(afterFirst(work, { units }), left?.activity ?? '')[0]?.at).toBe(2);
});

test('[F21] a go at what was begun leaves a rest that can still be shared out', () => {
  // 19 minutes are left, at 6 to 9 a go: after a go of 9 the other 10 could not be shared out.
  const long = exampleUnit('long', [act('line', 24, ['walk'])]);
  const course = exampleCourse({
    ...start,
    units: [onCourse('u1', long, 'one'), onCourse('u2', unit(4), 'two')],
  });
  const before = planCourse(course, null);
  for (let done = 1; done < 10; done++) {
    const work = [logged('u1', 'line', done, 'partly')];
    const taught = [{ id: course.lessons[0]?.id ?? '', date: firstDay, minutes: 30, work, revisited: [] }];
    const after = planCourse(
      { ...course, today: addDays(firstDay, 1), lessons: course.lessons.slice(1), taught },
      before,
    );
    expect(after.leftOut, `${done} minutes done`).toEqual([]);
    expect(after.lessons[0]?.segments.map((s) => s.activity)).toContain('line');
  }
});
