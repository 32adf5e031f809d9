// Why a piece of work or a revisit stands where it stands, as typed values. Every reason given is true of the plan it
// is given for.

import type { PlainDate } from '#core';
import { type MemoryCard, recallOn } from '../review/memory-card.ts';
import type { CourseInput } from './course-input.ts';
import type { Reason } from './course-plan.ts';
import type { DueRevisit } from './due-revisits.ts';
import type { Formulation, OpenActivity } from './formulate-problem.ts';

/** One go at an activity in the plan. */
export interface PlannedGo {
  readonly id: string;
  readonly lesson: number;
  readonly minutes: number;
  readonly pinned: boolean;
}

/** A difference of pace smaller than this is not worth a sentence. */
const leastPacePercent = 5;

/** Reasons for the nth go (from 0) of an activity, given all its goes in order. */
export function reasonsForGo(
  input: CourseInput,
  formulation: Formulation,
  open: OpenActivity,
  goes: readonly PlannedGo[],
  nth: number,
): readonly Reason[] {
  const go = goes[nth];
  if (go === undefined) return [];
  const { activity, remaining } = open;
  const reasons: Reason[] = [];
  if (go.pinned) reasons.push({ kind: 'pinned' });
  if (open.setAside !== null && open.setAside.backFrom !== null && nth === 0)
    reasons.push({ kind: 'backFromAside', since: open.setAside.since });
  if (remaining.known !== null) reasons.push({ kind: 'knownAlready', level: remaining.known });
  if (nth === 0 && open.times === 0 && remaining.known === null) {
    if (activity.kind === 'ext') reasons.push({ kind: 'readyEarly' });
    else reasons.push(placeInOrder(formulation, open));
  }
  const rested = restBefore(input, open, goes, nth);
  if (rested > 0) reasons.push({ kind: 'rested', lessons: rested });
  const before = goes.slice(0, nth).reduce((sum, g) => sum + g.minutes, 0);
  const done = remaining.whole - remaining.demand;
  // Pins may give more than is wanted.
  const whole = Math.max(remaining.whole, done + goes.reduce((sum, g) => sum + g.minutes, 0));
  if (go.minutes < whole)
    reasons.push({
      kind: 'split',
      minutes: go.minutes,
      upTo: done + before + go.minutes,
      of: whole,
    });
  const { pace } = formulation;
  const percent = Math.round(formulation.reckonedPace(activity.area) * 100);
  if (pace.observations > 0 && remaining.known === null && Math.abs(percent - 100) >= leastPacePercent)
    reasons.push({ kind: 'pace', percent, observations: pace.observations });
  if (activity.isVariant) reasons.push({ kind: 'variant', title: activity.activity.title });
  if (open.lastDay !== null) reasons.push({ kind: 'deadline', date: open.lastDay });
  return reasons;
}

/** The activity listed last among those it rests on, or its place in the listed order. */
function placeInOrder(formulation: Formulation, open: OpenActivity): Reason {
  const preds = new Set(formulation.order.predsById.get(open.activity.id));
  const base = formulation.order.sequence.findLast((a) => preds.has(a.id));
  return base === undefined
    ? { kind: 'nextInOrder' }
    : {
        kind: 'restsOn',
        activity: base.activity.key,
        courseUnit: base.courseUnit,
        title: base.activity.title,
      };
}

/** Lessons it rested just before this go, when a full run of lessons stood before the rest; otherwise 0. */
function restBefore(input: CourseInput, open: OpenActivity, goes: readonly PlannedGo[], nth: number): number {
  const go = goes[nth];
  if (go === undefined) return 0;
  const { courseUnit, activity } = open.activity;
  const taught = input.taught.map((lesson) =>
    lesson.work.some((work) => work.courseUnit === courseUnit && work.activity === activity.key),
  );
  const planned = input.lessons.slice(0, go.lesson).map((_, at) => goes.some((g) => g.lesson === at));
  const history = [...taught, ...planned];
  let rest = 0;
  while (rest < history.length && !history[history.length - 1 - rest]) rest++;
  let run = 0;
  while (history[history.length - 1 - rest - run]) run++;
  return rest > 0 && run >= input.settings.maxRun ? rest : 0;
}

/** Reasons for the revisit of a skill on a day. */
export function reasonsForRevisit(due: DueRevisit, skillTitle: string, on: PlainDate): readonly Reason[] {
  const recall: Reason = { kind: 'due', recall: recallOn(due.card, on), lastSeen: due.card.lastSeen };
  return due.neededBy === null
    ? [recall]
    : [{ kind: 'neededNext', skill: due.skill, title: skillTitle, by: due.neededBy }];
}

/** The reason for the revisit of a skill that is only completed in the course of this plan. */
export function reasonsForLaterRevisit(card: MemoryCard, on: PlainDate): readonly Reason[] {
  return [{ kind: 'due', recall: recallOn(card, on), lastSeen: null }];
}
