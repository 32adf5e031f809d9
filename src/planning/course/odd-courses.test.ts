// Whatever a teacher sets, whatever the records hold: a plan comes out, its lessons add up, and it stays when asked again.

import { expect, test } from 'vitest';
import { createSeededRandom, randomInteger } from '#core';
import { parseProblem } from '../problem/parse-problem.ts';
import { changesBetween } from './changes-between.ts';
import type { CourseInput } from './course-input.ts';
import { formatLeftOut, formatMove, formatNotReady, formatReason } from './course-wording.ts';
import { formulateProblem } from './formulate-problem.ts';
import { listMoves } from './list-moves.ts';
import { planCourse } from './plan-course.ts';
import { randomCourse } from './random-course.contract.ts';

const options = { steps: 50 };

/** A random course with settings at and beyond the edge of sense, and parts missing. */
function oddCourse(seed: number): CourseInput {
  const random = createSeededRandom(seed);
  const int = (low: number, high: number) => randomInteger(random, low, high);
  const pick = (values: readonly number[]) => values[int(0, values.length - 1)] ?? 0;
  const course = randomCourse(random, {
    lessons: int(1, 8),
    strands: int(1, 4),
    units: int(1, 5),
    history: true,
  });
  const { skills } = course;
  return {
    ...course,
    settings: {
      overrun: pick([0, 0.01, 0.2, 0.5, 0.9]),
      retention: pick([0.5, 0.7, 0.85, 0.97, 0.99]),
      maxRun: int(1, 4),
      parkGap: int(0, 4),
      settlingIn: int(0, 15),
      settingPractice: int(0, 15),
      recap: int(0, 20),
      revisit: int(0, 15),
      mostBlocks: int(0, 6),
      mostStrands: int(0, 4),
    },
    pacePrior: { mean: int(-100, 100) / 50, between: int(1, 100) / 100, within: int(1, 150) / 100 },
    lessons:
      int(0, 5) === 0
        ? []
        : course.lessons.map((lesson) => ({ ...lesson, minutes: pick([0, 3, 5, 10, 20, 30, 45, 60, 120]) })),
    units: int(0, 5) === 0 ? [] : course.units,
    strands: int(0, 5) === 0 ? [] : course.strands,
    // Any skill may rest on any other, itself included, or on one that is nowhere described.
    skills:
      int(0, 3) === 0
        ? skills.map((s) => ({ ...s, restsOn: [skills[int(0, skills.length - 1)]?.id ?? s.id] }))
        : skills.slice(int(0, 2)),
  };
}

test('odd courses are planned like any other', () => {
  for (let seed = 1; seed <= 80; seed++) {
    const input = oddCourse(seed * 7919);
    const { problem } = formulateProblem(input);
    expect(parseProblem(JSON.parse(JSON.stringify(problem))), `seed ${seed}`).toEqual({
      ok: true,
      value: problem,
    });
    const plan = planCourse(input, null, options);
    plan.lessons.forEach((lesson, at) => {
      expect(lesson.segments.every((s) => s.minutes > 0)).toBe(true);
      expect(lesson.segments.reduce((sum, s) => sum + s.minutes, 0)).toBe(input.lessons[at]?.minutes);
    });
    const later = { ...input, lessons: input.lessons.slice(1) };
    const after = planCourse(later, plan, options);
    expect(planCourse(later, after, options), `seed ${seed}`).toEqual(after);
    const sentences = [
      ...listMoves(plan, after, changesBetween(input, later)).map((move) => formatMove(move)),
      ...plan.leftOut.map((left) => formatLeftOut(left)),
      ...plan.notReady.map((entry) => formatNotReady(entry)),
      ...plan.lessons.flatMap((l) => l.segments.flatMap((s) => s.reasons.map((r) => formatReason(r)))),
    ];
    for (const sentence of sentences) expect(sentence).not.toMatch(/undefined|NaN|Infinity|null/);
  }
});
