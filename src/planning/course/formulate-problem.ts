// From one course as the studio knows it to a planning problem, with everything needed to read the answer back: rules
// [F…] of SPEC.md.

import type { PlainDate } from '#core';
import { reckonPace } from '../pace/reckoned-pace.ts';
import { learnPace, type PaceObservation, type StudentPace } from '../pace/student-pace.ts';
import { normalQuantile } from '../problem/overrun.ts';
import type { PlanningProblem, ProblemActivity } from '../problem/problem.ts';
import type { Area, SkillId } from '../skill/skill.ts';
import { type ActivityOrder, orderActivities } from './activity-order.ts';
import { fitChunks, longestGo } from './chunk-limits.ts';
import {
  activityId,
  type CourseActivity,
  lastDayOf,
  listCourseActivities,
  ongoingSkills,
} from './course-activity.ts';
import type { CourseInput, SetAside, Work } from './course-input.ts';
import type { LeftOut, NotReady, OrderCycle } from './course-plan.ts';
import { type DueRevisit, daysToFirstRevisit, findDueRevisits, revisitLength } from './due-revisits.ts';
import { estimateStarts, usableShare } from './estimate-starts.ts';
import { keepMoments } from './keep-moments.ts';
import {
  frameLesson,
  frameToProblemLesson,
  type LessonFrame,
  longestFit,
  type Risk,
} from './lesson-frame.ts';
import { type RemainingWork, remainingWork } from './remaining-work.ts';
import { findShortestWay } from './shortest-way.ts';
import { firstLessonOn, lastLessonBefore, readSkillMemory } from './skill-memory-of-course.ts';
import { readStanding } from './skill-standing.ts';

/** An activity with something left to do, and where it stands. */
export interface OpenActivity {
  readonly activity: CourseActivity;
  readonly remaining: RemainingWork;
  /** Minutes that pins already give it. */
  readonly pinned: number;
  /** Times it was taught so far. */
  readonly times: number;
  readonly setAside: SetAside | null;
  /** The skill of the revisit that completing it brings, or null. */
  readonly revisits: SkillId | null;
  readonly lastDay: PlainDate | null;
}

export interface Formulation {
  readonly problem: PlanningProblem;
  readonly risk: Risk;
  readonly frames: readonly LessonFrame[];
  /** By id, every activity not yet complete, in the problem or not. */
  readonly openById: ReadonlyMap<string, OpenActivity>;
  readonly order: ActivityOrder;
  readonly revisitBySkill: ReadonlyMap<SkillId, DueRevisit>;
  readonly notReady: readonly NotReady[];
  /** What no plan could hold. */
  readonly leftOut: readonly LeftOut[];
  readonly cycles: readonly OrderCycle[];
  /** What is believed of the student's pace. */
  readonly pace: StudentPace;
  /** The pace that sets minutes: follows the belief in small steps. */
  readonly reckonedPace: (area: Area) => number;
  readonly ongoing: readonly SkillId[];
}

/** Spread of log-pace that all work of one lesson shares, beside each piece's own. Our own choice. */
const sharedSpread = 0.15;
/** What a lesson too late, a lesson of one strand and a split cost in P, and an extension is worth. Our own choice. */
const problemWeights = { late: 3, solo: 2, split: 1 };
const extensionValue = 2;
/** From this priority on all strands cost the same. */
const leastPriority = 6;

/** Formulates a course. Pure: the same input gives the same problem. */
export function formulateProblem(input: CourseInput): Formulation {
  const standing = readStanding(input);
  const activities = listCourseActivities(input, standing.isOngoing);
  const activitiesById = new Map(activities.map((a) => [a.id, a]));
  const order = orderActivities(activities, standing);
  const memory = readSkillMemory(input, activitiesById, standing);
  const logById = readLog(input);
  const timed = paceObservations(input, activitiesById);
  const reckonedPace = reckonPace(timed, input.pacePrior);
  const ongoing = ongoingSkills(input, standing.isOngoing);

  const alpha = Math.min(0.5, Math.max(0.01, input.settings.overrun));
  const sigma = Math.min(0.6, Math.max(0.05, input.pacePrior.within));
  const risk: Risk = { z: Math.max(0, normalQuantile(1 - alpha)), sigma, tau: sharedSpread };
  const anyTaught = input.taught.length > 0;
  const frames = input.lessons.map((lesson, at) =>
    frameLesson(input, lesson, ongoing.length, anyTaught || at > 0, risk),
  );

  const openById = new Map<string, OpenActivity>();
  const pinnedUntil = new Map<string, number>();
  for (const a of order.sequence) {
    const log = logById.get(a.id) ?? [];
    const remaining = remainingWork(a, log, reckonedPace(a.area), standing, memory, input.today);
    if (remaining.demand === 0) continue;
    let pinned = 0;
    frames.forEach((frame, at) => {
      for (const pin of frame.pins)
        if (pin.kind === 'activity' && activityId(pin.courseUnit, pin.activity) === a.id) {
          pinned += pin.given;
          pinnedUntil.set(a.id, at);
        }
    });
    openById.set(a.id, {
      activity: a,
      remaining,
      pinned,
      times: log.length,
      setAside:
        input.setAside.find((s) => s.courseUnit === a.courseUnit && s.activity === a.activity.key) ?? null,
      revisits: remaining.known === null && a.kind === 'core' ? revisitedSkill(a) : null,
      lastDay: lastDayOf(input, a.unit),
    });
  }

  const leftOut: LeftOut[] = [];
  const notReady: NotReady[] = [];
  const windows = new Map<string, { readonly first: number; readonly last: number }>();
  const out = new Set<string>();
  for (const a of order.sequence) {
    const open = openById.get(a.id);
    const left = open === undefined ? 0 : open.remaining.demand - open.pinned;
    if (open === undefined || left <= 0) continue;
    const leave = (why: LeftOut['why']) => {
      out.add(a.id);
      if (a.kind === 'core')
        leftOut.push({
          courseUnit: a.courseUnit,
          activity: a.activity.key,
          title: a.activity.title,
          minutes: left,
          why,
        });
    };
    const window = windowOf(input, open, order.predsById.get(a.id) ?? [], pinnedUntil);
    const missing = open.times > 0 ? [] : (order.missingById.get(a.id) ?? []);
    const blocker = (order.predsById.get(a.id) ?? []).find((id) => out.has(id));
    if (open.setAside !== null && (open.setAside.backFrom === null || window.first >= frames.length))
      leave({ kind: 'setAside' });
    else if (missing.length > 0) {
      notReady.push({
        courseUnit: a.courseUnit,
        activity: a.activity.key,
        title: a.activity.title,
        missing,
        way: findShortestWay(missing, input.library, standing),
      });
      leave({ kind: 'notReady' });
    } else if (blocker !== undefined)
      leave({ kind: 'afterLeftOut', title: openById.get(blocker)?.activity.activity.title ?? '' });
    else if (window.first > window.last)
      leave(open.lastDay === null ? { kind: 'noRoom' } : { kind: 'noRoomBefore', date: open.lastDay });
    else windows.set(a.id, window);
  }

  const room = longestFit(frames, risk);
  const strandById = new Map(input.strands.map((strand) => [strand.id, strand]));
  const planned = order.sequence.filter((a) => windows.has(a.id));
  const longest = longestGo(input.age, new Set(planned.map((a) => a.strand)).size);
  const lineup = lineUp(planned, windows, frames, longest, input.settings.mostStrands);
  const problemActivities = planned.map((a): ProblemActivity => {
    const open = openById.get(a.id);
    const window = windows.get(a.id) ?? { first: 0, last: frames.length - 1 };
    const demand = open === undefined ? 0 : open.remaining.demand - open.pinned;
    const chunks = fitChunks(demand, a.activity.minutes.shortest, longest, room);
    const strand = strandById.get(a.strand);
    const begun = (open?.times ?? 0) > 0;
    const line = begun ? [] : (lineup.get(a.id) ?? []);
    const preds = new Set([...(order.predsById.get(a.id) ?? []), ...line]);
    return {
      id: a.id,
      strand: a.strand,
      kind: a.kind,
      demand,
      ...chunks,
      weight:
        a.kind === 'core'
          ? Math.max(1, leastPriority - (strand?.priority ?? leastPriority)) * (open?.lastDay ? 2 : 1)
          : 0,
      value: a.kind === 'ext' ? extensionValue : 0,
      preds: [...preds].filter((id) => windows.has(id)),
      ...window,
      review: 0, // see later-revisits.ts
      recent: recentOf(input, a),
    };
  });

  const starts = estimateStarts(
    problemActivities.filter((a) => a.kind === 'core'),
    frames,
    input.settings.mostStrands,
  );
  const coming = planned
    .filter((a) => a.kind === 'core')
    .map((a) => ({
      title: a.activity.title,
      develops: a.develops,
      start: starts.get(a.id) ?? frames.length,
      started: (openById.get(a.id)?.times ?? 0) > 0,
    }));
  const asideSince = new Map(
    input.setAside.flatMap((s) =>
      (activitiesById.get(activityId(s.courseUnit, s.activity))?.develops ?? []).map(
        (skill) => [skill, s.since] as const,
      ),
    ),
  );
  const revisits = findDueRevisits(input, frames, coming, standing, memory, asideSince);

  const problem: PlanningProblem = {
    id: input.course,
    alpha,
    z: risk.z,
    sigma,
    tau: sharedSpread,
    maxRun: input.settings.maxRun,
    parkGap: input.settings.parkGap,
    reviewGapDays: daysToFirstRevisit(input),
    weights: problemWeights,
    lessons: keepMoments(
      frames.map((frame) =>
        frameToProblemLesson(frame, input.settings.mostBlocks, input.settings.mostStrands),
      ),
      revisits.map((revisit) => revisit.due),
      revisitLength(input),
      input.taught.length,
    ),
    strands: [
      ...input.strands.map((strand) => ({
        id: strand.id,
        priority: strand.priority,
        deadline:
          strand.deadline === null ? null : Math.max(0, lastLessonBefore(input.lessons, strand.deadline)),
      })),
      // A unit whose strand was taken away keeps its place in the plan, as the least important.
      ...[...new Set(input.units.map((unit) => unit.strand))]
        .filter((id) => !strandById.has(id))
        .map((id) => ({ id, priority: leastPriority, deadline: null })),
    ],
    activities: problemActivities,
    reviews: revisits.map((r) => ({ id: r.skill, minutes: r.minutes, due: r.due, weight: r.weight })),
  };
  return {
    problem,
    risk,
    frames,
    openById,
    order,
    revisitBySkill: new Map(revisits.map((r) => [r.skill, r])),
    notReady,
    leftOut,
    cycles: order.cycles,
    pace: learnPace(timed, input.pacePrior),
    reckonedPace,
    ongoing,
  };
}

function readLog(input: CourseInput): ReadonlyMap<string, readonly Work[]> {
  const logById = new Map<string, Work[]>();
  for (const lesson of input.taught)
    for (const work of lesson.work) {
      const id = activityId(work.courseUnit, work.activity);
      const log = logById.get(id);
      if (log) log.push(work);
      else logById.set(id, [work]);
    }
  return logById;
}

function paceObservations(
  input: CourseInput,
  activitiesById: ReadonlyMap<string, CourseActivity>,
): readonly PaceObservation[] {
  return input.taught.flatMap((lesson) =>
    lesson.work.flatMap((work): PaceObservation[] => {
      const a = activitiesById.get(activityId(work.courseUnit, work.activity));
      return a === undefined
        ? []
        : [{ area: a.area, actual: work.actual, covered: work.covered, usual: a.activity.minutes.usual }];
    }),
  );
}

/** Completing the last activity of its unit on a skill that the unit checks brings that skill back later. */
function revisitedSkill(a: CourseActivity): SkillId | null {
  const { activities, checks } = a.unit.document;
  return (
    a.develops.find(
      (skill) =>
        checks.some((check) => check.skill === skill) &&
        activities.findLast((other) => other.develops.includes(skill))?.key === a.activity.key,
    ) ?? null
  );
}

function windowOf(
  input: CourseInput,
  open: OpenActivity,
  preds: readonly string[],
  pinnedUntil: ReadonlyMap<string, number>,
): { readonly first: number; readonly last: number } {
  const { lessons } = input;
  let first = 0;
  for (const day of [open.activity.unit.notBefore, open.setAside?.backFrom ?? null])
    if (day !== null) first = Math.max(first, firstLessonOn(lessons, day));
  for (const pred of preds) first = Math.max(first, pinnedUntil.get(pred) ?? 0);
  const { notAfter } = open.activity.unit;
  const deadline = input.strands.find((strand) => strand.id === open.activity.strand)?.deadline ?? null;
  let last = lessons.length - 1;
  if (notAfter !== null) last = lessons.findLastIndex((lesson) => lesson.date <= notAfter);
  // A deadline that has passed binds nothing any more.
  if (deadline !== null && deadline > input.today) last = Math.min(last, lastLessonBefore(lessons, deadline));
  return { first, last };
}

/**
 * Keeps a strand's work in teaching order without forbidding variety: an activity waits until all but a few of those
 * before it on its strand are complete; just enough stay open at a time to fill a lesson.
 */
function lineUp(
  planned: readonly CourseActivity[],
  windows: ReadonlyMap<string, { readonly first: number }>,
  frames: readonly LessonFrame[],
  longest: number,
  mostStrands: number,
): ReadonlyMap<string, readonly string[]> {
  const core = planned.filter((a) => a.kind === 'core');
  const strands = [...new Set(core.map((a) => a.strand))];
  const rooms = frames.map((frame) => frame.room * usableShare - frame.recap);
  const share = Math.max(0, ...rooms) / Math.max(1, Math.min(strands.length, mostStrands));
  const openAtOnce = Math.max(2, Math.ceil(share / longest) + 1);
  const predsById = new Map<string, readonly string[]>();
  for (const strand of strands) {
    // What may only start later must not hold up what comes after it.
    const line = core.filter((a) => a.strand === strand && windows.get(a.id)?.first === 0);
    line.forEach((a, at) => {
      const before = line[at - openAtOnce];
      if (before !== undefined) predsById.set(a.id, [before.id]);
    });
  }
  return predsById;
}

function recentOf(input: CourseInput, a: CourseActivity): readonly (0 | 1)[] {
  const horizon = input.settings.maxRun + input.settings.parkGap - 1;
  return input.taught
    .slice(-horizon)
    .reverse()
    .map((lesson) =>
      lesson.work.some((work) => work.courseUnit === a.courseUnit && work.activity === a.activity.key)
        ? 1
        : 0,
    );
}
