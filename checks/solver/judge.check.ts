// Source: the project's reference judge, data/check-plan.mjs (see README.md). Rules broken, objective, its parts and the
// greatest chance of overrun must be the same for any plan, sensible or not.

import { expect, test } from 'vitest';
import { createSeededRandom, type Random, randomInteger } from '#core';
import { evaluatePlan, type Plan, type PlanningProblem, parseProblem, solve, squareLimits } from '#planning';
import { generateProblem, problemSizes } from '../../bench/planner/generate.ts';
import { evaluate, qmaxTable } from './data/check-plan.mjs';

test('the table of square limits is the judge’s, entry by entry', () => {
  for (const C of [0, 1, 7, 26, 40, 55, 240])
    for (const z of [0.05, 0.253347, 0.841621, 1.644854, 3])
      for (const [sigma, tau] of [
        [0.3, 0.15],
        [0.2, 0],
        [0.4, 0.2],
        [1.2, 0.6],
      ] as const)
        expect([...squareLimits(C, z, sigma, tau)], `${C} ${z} ${sigma} ${tau}`).toEqual(
          qmaxTable(C, z, sigma, tau),
        );
});

test('evaluatePlan and the judge agree on 3,600 plans, allowed, disturbed and wild', () => {
  let allowed = 0;
  let broken = 0;
  const rules = new Set<string>();
  for (let seed = 1; seed <= 60; seed++)
    for (const size of problemSizes) {
      const problem = generateProblem(size, seed);
      const random = createSeededRandom(seed);
      const good = solve(problem, { steps: 30 });
      for (let k = 0; k < 20; k++) {
        const plan = k === 0 ? good : k < 14 ? disturbed(problem, good, random) : wild(problem, random);
        const judged = evaluate(problem, plan);
        const own = evaluatePlan(problem, plan);
        const where = `${size} ${seed} plan ${k}`;
        expect(own.broken.map(({ rule, detail }) => `${rule}: ${detail}`).sort(), where).toEqual(
          [...judged.broken].sort(),
        );
        expect(own.objective, where).toEqual(judged.objective);
        expect(own.parts, where).toEqual(judged.parts);
        expect(own.maxOverrun, where).toBeCloseTo(judged.maxOverrun, 3);
        for (const { rule } of own.broken) rules.add(rule);
        if (judged.feasible) allowed++;
        else broken++;
      }
    }
  expect(allowed).toBeGreaterThan(300);
  expect(broken).toBeGreaterThan(1500);
  expect(rules.size, [...rules].join(' ')).toBe(14);
});

test('solve gives plans the judge allows, with the objective it says', () => {
  for (let seed = 5001; seed <= 5060; seed++)
    for (const size of problemSizes) {
      const problem = generateProblem(size, seed);
      const parsed = parseProblem(JSON.parse(JSON.stringify(problem)));
      if (!parsed.ok) throw new Error(`${size} ${seed} ${parsed.error.path} ${parsed.error.wrong}`);
      const plan = solve(parsed.value, { steps: 400 });
      const judged = evaluate(problem, plan);
      expect(judged.broken, `${size} ${seed}`).toEqual([]);
      expect(plan.objective, `${size} ${seed}`).toEqual(judged.objective);
    }
});

/** One to three changes to a plan: minutes, a chunk elsewhere, a revisit elsewhere, twice or unknown. */
function disturbed(
  problem: PlanningProblem,
  plan: Pick<Plan, 'lessons'>,
  random: Random,
): Pick<Plan, 'lessons'> {
  const lessons = plan.lessons.map(({ lesson, chunks, reviews }) => ({
    lesson,
    chunks: chunks.map((chunk) => ({ ...chunk })),
    reviews: [...reviews],
  }));
  const reviewIds = [
    ...problem.reviews.map(({ id }) => id),
    ...problem.activities.map(({ id }) => `rev:${id}`),
    'nobody',
  ];
  const lessonAt = () => lessons[randomInteger(random, 0, lessons.length - 1)];
  for (let n = randomInteger(random, 1, 3); n > 0; n--) {
    const lesson = lessonAt();
    const chunk = lesson?.chunks[randomInteger(random, 0, Math.max(0, lesson.chunks.length - 1))];
    const draw = randomInteger(random, 0, 5);
    if (draw === 0 && chunk) chunk.minutes += randomInteger(random, -4, 4);
    else if (draw === 1 && chunk) lessonAt()?.chunks.push({ ...chunk });
    else if (draw === 2 && lesson)
      lesson.reviews.push(reviewIds[randomInteger(random, 0, reviewIds.length - 1)] ?? '');
    else if (draw === 3 && lesson) lesson.chunks.length = Math.max(0, lesson.chunks.length - 1);
    else if (draw === 4 && lesson) lesson.reviews.length = 0;
    else if (lesson) lesson.lesson = randomInteger(random, -1, lessons.length);
  }
  return { lessons };
}

function wild(problem: PlanningProblem, random: Random): Pick<Plan, 'lessons'> {
  const ids = [...problem.activities.map(({ id }) => id), 'stranger'];
  return {
    lessons: problem.lessons.map((_, lesson) => ({
      lesson,
      chunks: Array.from({ length: randomInteger(random, 0, 5) }, () => ({
        activity: ids[randomInteger(random, 0, ids.length - 1)] ?? '',
        minutes: randomInteger(random, 0, 14),
      })),
      reviews: problem.reviews.filter(() => random.next() < 0.2).map(({ id }) => id),
    })),
  };
}
