// Revisits of skills that will only be completed in the course of the plan: put into what room the plan leaves. They are
// a forecast; once the skill is there its own memory says when it comes back. They are kept out of the planning problem,
// where being late with one would count for more than doing the work early.

import { addDays, present } from '#core';
import { squareLimits } from '../problem/overrun.ts';
import type { PlannedLesson } from '../problem/problem.ts';
import type { CourseInput } from './course-input.ts';
import { daysToFirstRevisit, revisitLength } from './due-revisits.ts';
import type { Formulation } from './formulate-problem.ts';
import { completionRevisit } from './plan-answer.ts';
import { firstLessonOn } from './skill-memory-of-course.ts';

/** A forecast that finds no room within so many lessons is left to the memory of the skill itself. */
const mostLate = 3;

/** The planned lessons with the revisits that completing their work will bring, where there is room. */
export function addLaterRevisits(
  input: CourseInput,
  formulation: Formulation,
  planned: readonly PlannedLesson[],
  completedIn: ReadonlyMap<string, number>,
): readonly PlannedLesson[] {
  const { frames, openById, risk, revisitBySkill } = formulation;
  const minutes = revisitLength(input);
  if (minutes === 0) return planned;
  const gap = daysToFirstRevisit(input);
  const reviews = planned.map((lesson) => [...lesson.reviews]);
  const revisitMinutes = planned.map((lesson) =>
    lesson.reviews.reduce((sum, id) => sum + minutesOf(revisitBySkill, id), 0),
  );
  const fits = (at: number) => {
    const frame = present(frames[at], 'a frame for every lesson');
    const together = frame.recap + (revisitMinutes[at] ?? 0) + minutes;
    const work = planned[at]?.chunks ?? [];
    const total = together + work.reduce((sum, chunk) => sum + chunk.minutes, 0);
    const squares = together ** 2 + work.reduce((sum, chunk) => sum + chunk.minutes ** 2, 0);
    const limit = squareLimits(frame.room, risk.z, risk.sigma, risk.tau)[total] ?? -1;
    return (revisitMinutes[at] ?? 0) + minutes <= frame.reviewMax && squares <= limit;
  };
  for (const [id, lesson] of [...completedIn].sort((a, b) => a[1] - b[1])) {
    const open = openById.get(id);
    const day = input.lessons[lesson]?.date;
    if (open === undefined || open.revisits === null || day === undefined) continue;
    const due = firstLessonOn(input.lessons, addDays(day, gap));
    for (let at = due; at < Math.min(planned.length, due + mostLate); at++) {
      if (!fits(at)) continue;
      reviews[at]?.push(completionRevisit(id));
      revisitMinutes[at] = (revisitMinutes[at] ?? 0) + minutes;
      break;
    }
  }
  return planned.map((lesson, at) => ({ ...lesson, reviews: reviews[at] ?? [] }));
}

const minutesOf = (revisitBySkill: Formulation['revisitBySkill'], id: string) =>
  [...revisitBySkill.values()].find((revisit) => revisit.skill === id)?.minutes ?? 0;
