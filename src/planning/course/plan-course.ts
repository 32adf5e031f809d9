// One student's course, computed: formulate, solve, arrange, explain. The whole of `planning` meets here.

import { present } from '#core';
import { overrunChance } from '../problem/overrun.ts';
import type { Plan, PlannedLesson, PlanningProblem } from '../problem/problem.ts';
import type { SkillId } from '../skill/skill.ts';
import { arrangeLesson, type UnplacedSegment, type UnplacedWork } from './arrange-lesson.ts';
import { workToCarryOn } from './carry-on.ts';
import { activityId } from './course-activity.ts';
import type { CourseInput } from './course-input.ts';
import type { CoursePlan, LeftOut, LessonPlan } from './course-plan.ts';
import { expectedCard, revisitLength, usualGap } from './due-revisits.ts';
import { fingerprintOf } from './fingerprint.ts';
import { type Formulation, formulateProblem } from './formulate-problem.ts';
import { addLaterRevisits } from './later-revisits.ts';
import type { LessonFrame } from './lesson-frame.ts';
import { type PlanCourseOptions, planAnew } from './plan-anew.ts';
import { completionRevisit, coursePlanToPlan } from './plan-answer.ts';
import {
  type PlannedGo,
  reasonsForGo,
  reasonsForLaterRevisit,
  reasonsForRevisit,
} from './segment-reasons.ts';

/**
 * Plans a course. The same input and previous plan give the same plan; when nothing that matters has changed since the
 * previous plan, its minutes stay where they are.
 */
export function planCourse(
  input: CourseInput,
  previous: CoursePlan | null,
  options: PlanCourseOptions = {},
): CoursePlan {
  const formulation = formulateProblem(input);
  const { problem } = formulation;
  const fingerprint = fingerprintOf(JSON.stringify(problem));
  const answer =
    previous !== null && previous.fingerprint === fingerprint
      ? coursePlanToPlan(previous, problem)
      : planAnew(problem, previous, workToCarryOn(input, problem, previous), options);

  const solved = inProblemOrder(problem, answer);
  const goesById = listGoes(formulation, solved);
  const planned = addLaterRevisits(input, formulation, solved, completions(formulation, goesById));
  return {
    lessons: planned.map((lesson) => planLesson(input, formulation, goesById, planned, lesson)),
    notReady: formulation.notReady,
    leftOut: listLeftOut(formulation, goesById),
    cycles: formulation.cycles,
    pace: {
      mean: formulation.pace.mean,
      sd: formulation.pace.sd,
      observations: formulation.pace.observations,
    },
    fingerprint,
    objective: answer.objective,
  };
}

/** One entry for each lesson, its contents in the problem's order, so that equal plans look equal wherever they come from. */
function inProblemOrder(problem: PlanningProblem, answer: Plan): readonly PlannedLesson[] {
  const lessonByIndex = new Map(answer.lessons.map((lesson) => [lesson.lesson, lesson]));
  return problem.lessons.map((_, at) => {
    const { chunks = [], reviews = [] } = lessonByIndex.get(at) ?? {};
    return {
      lesson: at,
      chunks: problem.activities.flatMap((a) => chunks.filter((chunk) => chunk.activity === a.id)),
      reviews: problem.reviews.map((review) => review.id).filter((id) => reviews.includes(id)),
    };
  });
}

type GoesById = ReadonlyMap<string, readonly PlannedGo[]>;

/** Every go at every activity, pinned or planned, in the order of lessons. */
function listGoes(formulation: Formulation, planned: readonly PlannedLesson[]): GoesById {
  const goesById = new Map<string, PlannedGo[]>();
  const add = (go: PlannedGo) => {
    const goes = goesById.get(go.id);
    if (goes) goes.push(go);
    else goesById.set(go.id, [go]);
  };
  formulation.frames.forEach((frame, lesson) => {
    for (const pin of frame.pins)
      if (pin.kind === 'activity')
        add({ id: activityId(pin.courseUnit, pin.activity), lesson, minutes: pin.given, pinned: true });
    for (const { activity, minutes } of planned[lesson]?.chunks ?? [])
      add({ id: activity, lesson, minutes, pinned: false });
  });
  return goesById;
}

/** The lesson in which each activity is completed, for those that are. */
function completions(formulation: Formulation, goesById: GoesById): ReadonlyMap<string, number> {
  const completedIn = new Map<string, number>();
  for (const [id, goes] of goesById) {
    const demand = formulation.openById.get(id)?.remaining.demand;
    let done = 0;
    for (const go of goes) {
      done += go.minutes;
      if (demand !== undefined && done >= demand && !completedIn.has(id)) completedIn.set(id, go.lesson);
    }
  }
  return completedIn;
}

function planLesson(
  input: CourseInput,
  formulation: Formulation,
  goesById: GoesById,
  planned: readonly PlannedLesson[],
  { lesson: at, reviews }: PlannedLesson,
): LessonPlan {
  const frame = present(formulation.frames[at], 'a frame for every lesson');
  const work = [...goesById.values()].flatMap((goes) =>
    goes.flatMap((go, nth) => (go.lesson === at ? workOf(input, formulation, goes, nth) : [])),
  );
  const revisits = [
    ...pinnedRevisits(input, frame),
    ...reviews.flatMap((id) => revisitOf(input, formulation, goesById, planned, at, id)),
  ];
  const segments = arrangeLesson(frame, revisits, work);
  return {
    lesson: frame.lesson.id,
    date: frame.lesson.date,
    segments,
    overrun: overrunOf(formulation, frame, revisits, work),
    ongoing: frame.lesson.barred ? [] : formulation.ongoing,
  };
}

function workOf(
  input: CourseInput,
  formulation: Formulation,
  goes: readonly PlannedGo[],
  nth: number,
): readonly UnplacedWork[] {
  const go = present(goes[nth], 'a go in range');
  const open = formulation.openById.get(go.id);
  const order = formulation.order.sequence.findIndex((a) => a.id === go.id);
  const activity = open?.activity ?? formulation.order.sequence[order];
  // A pin on something that is no longer on the course: there is nothing to show.
  if (activity === undefined) return [];
  const upTo = goes.slice(0, nth + 1).reduce((sum, g) => sum + g.minutes, 0);
  return [
    {
      id: go.id,
      character: activity.activity.character,
      preds: formulation.order.predsById.get(go.id) ?? [],
      order,
      segment: {
        key: `work:${activity.courseUnit}:${activity.activity.key}:${(open?.times ?? 0) + nth}`,
        kind: activity.kind === 'core' ? 'work' : 'extension',
        strand: activity.strand,
        courseUnit: activity.courseUnit,
        activity: activity.activity.key,
        skill: null,
        title: activity.activity.title,
        planned: go.minutes,
        completes: open !== undefined && upTo >= open.remaining.demand,
        pinned: go.pinned,
        reasons:
          open === undefined ? [{ kind: 'pinned' }] : reasonsForGo(input, formulation, open, goes, nth),
      },
    },
  ];
}

const bareRevisit = {
  kind: 'revisit',
  strand: null,
  courseUnit: null,
  activity: null,
  completes: false,
} as const;

const skillTitle = (input: CourseInput, id: string) =>
  input.skills.find((skill) => skill.id === id)?.title ?? id;

function pinnedRevisits(input: CourseInput, frame: LessonFrame): readonly UnplacedSegment[] {
  return frame.pins.flatMap((pin): UnplacedSegment[] =>
    pin.kind === 'revisit'
      ? [
          {
            ...bareRevisit,
            key: `revisit:${pin.skill}:0`,
            skill: pin.skill,
            title: skillTitle(input, pin.skill),
            planned: pin.given,
            pinned: true,
            reasons: [{ kind: 'pinned' }],
          },
        ]
      : [],
  );
}

function revisitOf(
  input: CourseInput,
  formulation: Formulation,
  goesById: GoesById,
  planned: readonly PlannedLesson[],
  at: number,
  id: string,
): readonly UnplacedSegment[] {
  const { date } = present(input.lessons[at], 'a lesson in range');
  const due = formulation.revisitBySkill.get(id as SkillId); // another id is of none
  if (due !== undefined) {
    const title = skillTitle(input, due.skill);
    return [
      {
        ...bareRevisit,
        key: `revisit:${due.skill}:0`,
        skill: due.skill,
        title,
        planned: due.minutes,
        pinned: false,
        reasons: reasonsForRevisit(due, title, date),
      },
    ];
  }
  const open = [...formulation.openById.values()].find((o) => completionRevisit(o.activity.id) === id);
  if (open === undefined || open.revisits === null) return [];
  const skill = open.revisits;
  // Another revisit of the same skill may stand before it.
  const earlier = planned.some((lesson) => lesson.lesson <= at && lesson.reviews.includes(skill)) ? 1 : 0;
  const completed = goesById.get(open.activity.id)?.at(-1)?.lesson ?? at;
  const card = expectedCard(
    input.lessons[completed]?.date ?? date,
    usualGap(input.lessons),
    2,
    input.settings.recap > 0,
  );
  return [
    {
      ...bareRevisit,
      key: `revisit:${skill}:${earlier}`,
      strand: open.activity.strand,
      courseUnit: open.activity.courseUnit,
      activity: open.activity.activity.key,
      skill,
      title: skillTitle(input, skill),
      planned: revisitLength(input),
      pinned: false,
      reasons: reasonsForLaterRevisit(card, date),
    },
  ];
}

/** Recap and revisits count as one block, every piece of work as its own, pinned or not. */
function overrunOf(
  { risk }: Formulation,
  frame: LessonFrame,
  revisits: readonly UnplacedSegment[],
  work: readonly UnplacedWork[],
): number {
  const blocks = [
    frame.recap + revisits.reduce((sum, segment) => sum + segment.planned, 0),
    ...work.map((w) => w.segment.planned),
  ];
  const total = blocks.reduce((sum, m) => sum + m, 0);
  const squares = blocks.reduce((sum, m) => sum + m * m, 0);
  const room = frame.lesson.minutes - frame.settlingIn - frame.practice;
  return overrunChance(total, squares, room, risk.sigma, risk.tau);
}

/** What no plan could hold, and what this one leaves undone. */
function listLeftOut(formulation: Formulation, goesById: GoesById): readonly LeftOut[] {
  const { order, openById, problem } = formulation;
  const undone = new Map<string, number>();
  const leftOut: LeftOut[] = [...formulation.leftOut];
  const inProblem = new Set(problem.activities.map((a) => a.id));
  for (const a of order.sequence) {
    const open = openById.get(a.id);
    if (open === undefined || a.kind === 'ext' || !inProblem.has(a.id)) continue;
    const done = (goesById.get(a.id) ?? []).reduce((sum, go) => sum + go.minutes, 0);
    const minutes = open.remaining.demand - done;
    if (minutes <= 0) continue;
    undone.set(a.id, minutes);
    const blocker = (order.predsById.get(a.id) ?? []).find((id) => undone.has(id));
    leftOut.push({
      courseUnit: a.courseUnit,
      activity: a.activity.key,
      title: a.activity.title,
      minutes,
      why:
        blocker !== undefined && done === 0
          ? { kind: 'afterLeftOut', title: openById.get(blocker)?.activity.activity.title ?? '' }
          : open.lastDay !== null
            ? { kind: 'noRoomBefore', date: open.lastDay }
            : { kind: 'noRoom' },
    });
  }
  return leftOut;
}
