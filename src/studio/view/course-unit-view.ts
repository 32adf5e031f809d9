// A unit on a course: how far it is, what is set aside, and where its checks stand.

import type { CourseUnitView } from '#contract';
import { compareUnits, type Level, type Skill, type SkillId, type UnitDocument, type Work } from '#planning';
import type { CourseRecords } from '../course/course-records.ts';
import type { CourseUnitRecord, UnitRecord } from '../record/records.ts';
import type { CourseActivities } from './course-activity.ts';

export interface CourseUnitContext {
  readonly records: CourseRecords;
  /** Of the whole course, in taught lessons. */
  readonly done: readonly Work[];
  readonly activities: CourseActivities;
  readonly levels: ReadonlyMap<SkillId, Level>;
  readonly skills: ReadonlyMap<SkillId, Skill>;
  readonly notReady: ReadonlySet<string>;
  readonly library: UnitRecord | null;
  /** The document of the version that the copy came from, or null when it is not kept. */
  readonly original: UnitDocument | null;
}

/** The view of one unit on a course. */
export function toCourseUnitView(unit: CourseUnitRecord, context: CourseUnitContext): CourseUnitView {
  const { records, activities, levels, library, original } = context;
  const own = activities.all.filter((a) => a.unit.id === unit.id);
  const work = context.done.filter((w) => w.courseUnit === unit.id);
  const shares = own.map((a) => {
    const usual = a.activity.minutes.usual;
    const goes = work.filter((w) => w.activity === a.activity.key);
    return { ...a, usual, share: shareDone(goes, usual) };
  });
  const core = shares.filter((a) => !a.isExtension);
  const usualInAll = core.reduce((sum, a) => sum + a.usual, 0);
  const share = usualInAll === 0 ? 0 : core.reduce((sum, a) => sum + a.share * a.usual, 0) / usualInAll;
  const begun = shares.some((a) => a.share > 0);
  const done = core.length > 0 && core.every((a) => a.share >= 1);
  return {
    id: unit.id,
    unit: unit.unit,
    title: unit.document.title,
    area: unit.document.area,
    goal: unit.document.goal,
    strand: unit.strand,
    position: unit.position,
    notBefore: unit.notBefore,
    notAfter: unit.notAfter,
    version: unit.unitVersion,
    libraryVersion: library?.version ?? null,
    adapted: original !== null && compareUnits(original, unit.document).length > 0,
    status: done ? 'done' : begun ? 'begun' : context.notReady.has(unit.id) ? 'notReady' : 'planned',
    share,
    activities: shares.map((a) => ({
      activity: a.activity.key,
      title: a.activity.title,
      share: a.share,
      setAside: records.setAside.some((s) => s.courseUnit === unit.id && s.activity === a.activity.key),
    })),
    checks: unit.document.checks.map((check) => ({
      skill: check.skill,
      title: context.skills.get(check.skill)?.title ?? check.skill,
      wanted: check.level,
      level: levels.get(check.skill) ?? null,
      lookFor: check.lookFor,
      listenFor: check.listenFor ?? [],
    })),
  };
}

/** Share of an activity that was done in these goes at it, 0..1; finished is all of it. */
function shareDone(goes: readonly Work[], usual: number): number {
  if (goes.some((go) => go.outcome === 'finished')) return 1;
  const covered = goes.reduce((sum, go) => sum + go.covered, 0);
  // All its usual minutes may be spent without it being there yet: then it is nearly done, not done.
  return usual <= 0 ? 0 : Math.min(0.99, covered / usual);
}
