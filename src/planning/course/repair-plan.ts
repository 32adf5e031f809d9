// The last plan, mended the way a teacher reflows a diary: what was not reached comes first in the next lesson, what no
// longer fits there goes to the one after, freed time is filled from later on, and everything else stays where it was.
// It may be a little less good than a plan made afresh, and moves far less.

import { present } from '#core';
import { squareLimits } from '../problem/overrun.ts';
import type { PlannedLesson, PlanningProblem, ProblemActivity } from '../problem/problem.ts';

/** Work or a revisit of the last plan with the lesson, as an index into the problem's, in which it should stand now. */
export interface Wish {
  readonly slot: number;
  readonly id: string;
  /** Minutes of work; 0 for a revisit. */
  readonly minutes: number;
}

/** Freed minutes from which on it is worth filling a lesson from later ones. Our own choice. */
const worthFilling = 4;

/**
 * Lays out the problem's work as near to the wishes as its rules allow. `wishes` stand in the order of the last plan;
 * `formerMinutes` is what the last plan had in each lesson, or null for a lesson that it did not know.
 */
export function repairPlan(
  problem: PlanningProblem,
  wishes: readonly Wish[],
  formerMinutes: readonly (number | null)[],
): readonly PlannedLesson[] {
  const repair = createRepair(problem);
  const reviewIds = new Set(problem.reviews.map((review) => review.id));
  let waiting: Wish[] = wishes.filter((wish) => !reviewIds.has(wish.id) && repair.left(wish.id) > 0);
  const known = new Set(waiting.map((wish) => wish.id));
  for (const a of problem.activities)
    if (!known.has(a.id) && a.demand > 0)
      waiting.push({ slot: problem.lessons.length, id: a.id, minutes: a.demand });
  const reviewSlots = new Map(wishes.filter((w) => reviewIds.has(w.id)).map((w) => [w.id, w.slot]));
  const openReviews = new Set(problem.reviews);

  return problem.lessons.map((_, at): PlannedLesson => {
    repair.open(at);
    const reviews: string[] = [];
    const revisit = (isWanted: (id: string) => boolean) => {
      for (const review of openReviews)
        if (at >= review.due && isWanted(review.id) && repair.addReview(review.minutes)) {
          reviews.push(review.id);
          openReviews.delete(review);
        }
    };
    revisit((id) => (reviewSlots.get(id) ?? problem.lessons.length) <= at);

    const place = (pulling: boolean) => {
      let placedAny = true;
      while (placedAny) {
        placedAny = false;
        for (const wish of waiting) {
          if (!pulling && wish.slot > at) continue;
          const later = waiting.reduce(
            (sum, other) => (other !== wish && other.id === wish.id ? sum + other.minutes : sum),
            0,
          );
          // Work that grew is taken up here; what is pulled forward or late comes as a whole where it can.
          const wanted =
            pulling || wish.slot < at
              ? repair.left(wish.id)
              : Math.max(wish.minutes, repair.left(wish.id) - later);
          const given = repair.addWork(wish.id, wanted);
          if (given === 0) continue;
          placedAny = true;
          waiting = spend(waiting, wish, given, repair.left(wish.id), at);
          break;
        }
      }
    };
    place(false);
    // A revisit that the last plan did not know takes room that is left, and drives nothing out.
    revisit((id) => !reviewSlots.has(id));
    const former = formerMinutes[at] ?? null;
    if (former === null || repair.workMinutes() <= former - worthFilling) place(true);
    return { lesson: at, chunks: repair.close(), reviews };
  });
}

/** Takes placed minutes off the wishes for an activity, this one first; what is left and has no wish waits for the next lesson. */
function spend(waiting: readonly Wish[], placed: Wish, given: number, left: number, at: number): Wish[] {
  const rest: Wish[] = [];
  let open = left;
  for (const wish of waiting) {
    if (wish.id !== placed.id) rest.push(wish);
    else if (wish !== placed && open > 0) {
      rest.push({ ...wish, minutes: Math.min(wish.minutes, open) });
      open -= Math.min(wish.minutes, open);
    }
  }
  if (open > 0) {
    // A wish that was cut short goes on in the next lesson, before what stands there.
    const index = rest.findIndex((wish) => wish.slot > at);
    rest.splice(index < 0 ? rest.length : index, 0, { ...placed, slot: at + 1, minutes: open });
  }
  return given > 0 ? rest : [...waiting];
}

/** Can minutes left be shared out over goes that are neither too short nor too long? */
const canBeShared = (rest: number, { minChunk, maxChunk }: ProblemActivity) =>
  Math.ceil(rest / maxChunk) * minChunk <= rest;

interface Repair {
  left(id: string): number;
  open(lesson: number): void;
  addReview(minutes: number): boolean;
  /** Minutes placed in the open lesson, as many as wanted and allowed; 0 when none can be. */
  addWork(id: string, wanted: number): number;
  workMinutes(): number;
  close(): PlannedLesson['chunks'];
}

/** Keeps the rules of the planning problem while lessons are filled one after another. */
function createRepair(problem: PlanningProblem): Repair {
  const activityById = new Map(problem.activities.map((a) => [a.id, a]));
  const leftById = new Map(problem.activities.map((a) => [a.id, a.demand]));
  const taughtIn = new Map<string, Set<number>>();
  for (const a of problem.activities)
    taughtIn.set(a.id, new Set((a.recent ?? []).flatMap((was, ago) => (was === 1 ? [-1 - ago] : []))));
  const limitsByRoom = new Map<number, readonly number[]>();
  let at = 0;
  let together = 0;
  let reviewed = 0;
  let chunks: { readonly activity: string; readonly minutes: number }[] = [];

  const lesson = () => present(problem.lessons[at], 'a lesson in range');
  const limits = () => {
    const room = lesson().length - lesson().fixed;
    const known = limitsByRoom.get(room) ?? squareLimits(room, problem.z, problem.sigma, problem.tau);
    limitsByRoom.set(room, known);
    return known;
  };
  const fits = (block: number, extra: number) => {
    const total = block + chunks.reduce((sum, chunk) => sum + chunk.minutes, 0) + extra;
    const squares = block ** 2 + chunks.reduce((sum, chunk) => sum + chunk.minutes ** 2, 0) + extra ** 2;
    return squares <= (limits()[total] ?? -1);
  };
  /** After a full run an activity rests; a go here must neither break a rest nor make a run too long. */
  const mayRun = (id: string) => {
    const was = taughtIn.get(id) ?? new Set();
    const { maxRun, parkGap } = problem;
    for (let gap = 0; gap < parkGap; gap++) {
      const end = at - 1 - gap;
      let run = 0;
      while (run < maxRun && was.has(end - run)) run++;
      if (run >= maxRun) return false;
    }
    return true;
  };
  const mayStand = (a: ProblemActivity) =>
    at >= a.first &&
    at <= a.last &&
    !chunks.some((chunk) => chunk.activity === a.id) &&
    chunks.length < lesson().maxBlocks &&
    new Set([...chunks.map((chunk) => activityById.get(chunk.activity)?.strand), a.strand]).size <=
      lesson().maxStrands &&
    a.preds.every((id) => leftById.get(id) === 0) &&
    mayRun(a.id);

  return {
    left: (id) => leftById.get(id) ?? 0,
    open(index) {
      at = index;
      together = lesson().recap;
      reviewed = 0;
      chunks = [];
    },
    addReview(minutes) {
      if (reviewed + minutes > lesson().reviewMax || !fits(together + minutes, 0)) return false;
      reviewed += minutes;
      together += minutes;
      return true;
    },
    addWork(id, wanted) {
      const a = activityById.get(id);
      const left = leftById.get(id) ?? 0;
      if (a === undefined || left === 0 || !mayStand(a)) return 0;
      for (let minutes = Math.min(wanted, left, a.maxChunk); minutes >= a.minChunk; minutes--) {
        const rest = left - minutes;
        if (!canBeShared(rest, a) || !fits(together, minutes)) continue;
        chunks.push({ activity: id, minutes });
        leftById.set(id, rest);
        taughtIn.get(id)?.add(at);
        return minutes;
      }
      return 0;
    },
    workMinutes: () => chunks.reduce((sum, chunk) => sum + chunk.minutes, 0),
    close: () => chunks,
  };
}
