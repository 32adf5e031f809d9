// A whole course: its score, its units, what does not fit, what moved, where the student stands.

import type { CourseUnitView, CourseView } from '#contract';
import {
  type Formulation,
  formatMove,
  formatNotReady,
  formulateProblem,
  type Move,
  type SkillId,
  type UnitId,
} from '#planning';
import { unitVersionId } from '../command/unit-rows.ts';
import { assembleCourseInput, workDone } from '../course/assemble-course-input.ts';
import { loadCourse, segmentsOf } from '../course/course-records.ts';
import { loadLibrary } from '../course/replan-course.ts';
import { loadAbsent } from '../lesson/absence.ts';
import type { CourseId, CourseUnitId, LessonStatus } from '../record/records.ts';
import type { Reader } from '../record/store.ts';
import { listCourseActivities } from './course-activity.ts';
import { listBars } from './course-bars.ts';
import { toCourseUnitView } from './course-unit-view.ts';
import { latestLevels } from './latest-level.ts';
import { toLearnerView, toStrandViews } from './learner-view.ts';
import { listLeftOut } from './left-out.ts';
import { listStandings } from './skill-standings.ts';
import type { ViewOutside } from './view-studio.ts';

/** The view of a course, or null when there is none of this id. */
export async function viewCourse(
  reader: Reader,
  id: CourseId,
  { clock }: ViewOutside,
): Promise<CourseView | null> {
  const records = await loadCourse(reader, id);
  if (records === null) return null;
  const { course, learner, lessons } = records;
  const today = clock.today();
  const library = await loadLibrary(reader);
  const input = assembleCourseInput(records, library, today);
  const formulation = formulateProblem(input);
  const activities = listCourseActivities(course, learner, records.units, today);
  const skills = new Map(library.skills.map((s) => [s.id, s]));
  const skillTitle = (skill: SkillId) => skills.get(skill)?.title ?? skill;
  const unitTitle = (unit: UnitId) => library.units.find((u) => u.id === unit)?.title ?? unit;
  const leftOut = listLeftOut(records, formulation, today);
  const levels = latestLevels(records.observations);
  const notReady = new Set(formulation.notReady.map((n) => n.courseUnit));
  const done = lessons
    .filter((l) => l.status === 'taught')
    .flatMap((l) => segmentsOf(records, l.id).flatMap(workDone));
  const count = (status: LessonStatus) => lessons.filter((l) => l.status === status).length;
  const units: CourseUnitView[] = [];
  for (const unit of records.units)
    units.push(
      toCourseUnitView(unit, {
        records,
        done,
        activities,
        levels,
        skills,
        notReady,
        library: await reader.get('unit', unit.unit),
        original:
          (await reader.get('unitVersion', unitVersionId(unit.unit, unit.unitVersion)))?.document ?? null,
      }),
    );
  return {
    id,
    revision: course.revision,
    learner: toLearnerView(course, learner, today),
    strands: toStrandViews(course),
    settings: course.settings,
    ended: course.ended,
    today,
    slots: records.slots
      .filter((s) => s.ends === null || s.ends >= today)
      .map(({ id: slot, weekday, time, minutes, starts, ends }) => ({
        id: slot,
        weekday,
        time,
        minutes,
        starts,
        ends,
      })),
    events: records.events.map(({ id: event, date, title }) => ({ id: event, date, title })),
    bars: listBars({
      absentById: await loadAbsent(reader, learner, lessons),
      records,
      holidays: await reader.list('holiday', { orderBy: ['starts'] }),
      unfinishedUnits: new Set(leftOut.map((l) => l.courseUnit)),
      skillTitle,
    }),
    units,
    leftOut,
    notReady: listNotReady(formulation, skillTitle, unitTitle),
    setAside: records.setAside.map((a) => ({
      courseUnit: a.courseUnit,
      activity: a.activity,
      title: activities.find(a)?.activity.title ?? a.activity,
      since: a.since,
      backFrom: a.backFrom,
    })),
    moves: inOrder(course.moved).map((move) => ({
      key: move.key,
      sentence: formatMove(move),
      from: move.from?.date ?? null,
      to: move.to?.date ?? null,
    })),
    skills: listStandings(records, input, activities, library.skills),
    pace: toPace(formulation.pace),
    attendance: {
      taught: count('taught'),
      missed: count('missed'),
      cancelled: count('cancelled'),
    },
  };
}

/** By the day at which one would look for it: where it is now, else where it was. */
function inOrder(moves: readonly Move[]): readonly Move[] {
  const dayOf = (move: Move) => (move.to ?? move.from)?.date ?? '';
  return [...moves].sort((a, b) => (dayOf(a) < dayOf(b) ? -1 : dayOf(a) > dayOf(b) ? 1 : 0));
}

/** Φ⁻¹(0.9): eight in ten lie within this many standard deviations. */
const eightInTen = 1.2816;

/** A belief about log(actual / usual) as percentages: its median, and the bounds that hold eight in ten. */
export function toPace(pace: { readonly mean: number; readonly sd: number; readonly observations: number }) {
  const percent = (log: number) => Math.round(100 * Math.exp(log));
  return {
    percent: percent(pace.mean),
    low: percent(pace.mean - eightInTen * pace.sd),
    high: percent(pace.mean + eightInTen * pace.sd),
    observations: pace.observations,
  };
}

/** One entry for each activity that waits, with what is missing and the shortest way to it. */
function listNotReady(
  { notReady }: Formulation,
  skillTitle: (skill: SkillId) => string,
  unitTitle: (unit: UnitId) => string,
): CourseView['notReady'] {
  return notReady.map((entry) => ({
    // Planning hands back the ids that it was given.
    courseUnit: entry.courseUnit as CourseUnitId,
    activity: entry.activity,
    sentence: formatNotReady(entry, { skillTitle, unitTitle }),
    missing: entry.missing.map((skill) => ({ skill, title: skillTitle(skill) })),
    way: entry.way.map((unit) => ({ unit, title: unitTitle(unit) })),
  }));
}
