// Which activities must be complete before another may start, from the prerequisites of the skills they develop; and one
// order of the whole course that keeps to them. Rings are named and opened at the listed order, never thrown.

import type { Skill, SkillId } from '../skill/skill.ts';
import { createSkillMap } from '../skill/skill-map.ts';
import type { CourseActivity } from './course-activity.ts';
import type { OrderCycle } from './course-plan.ts';
import type { SkillStanding } from './skill-standing.ts';

export interface ActivityOrder {
  /** Ids that must be complete first, by id. */
  readonly predsById: ReadonlyMap<string, readonly string[]>;
  /** Skills that no activity of the course develops and the student lacks, by id; only where there are any. */
  readonly missingById: ReadonlyMap<string, readonly SkillId[]>;
  /** Every activity once, none before what it needs, otherwise as listed. */
  readonly sequence: readonly CourseActivity[];
  readonly cycles: readonly OrderCycle[];
}

/** Orders a course's activities. */
export function orderActivities(
  activities: readonly CourseActivity[],
  standing: SkillStanding,
): ActivityOrder {
  const core = activities.filter((a) => a.kind === 'core');
  const firstUnitBySkill = new Map<SkillId, string>();
  const developersByUnitAndSkill = new Map<string, CourseActivity[]>();
  for (const a of core)
    for (const skill of a.develops) {
      if (!firstUnitBySkill.has(skill)) firstUnitBySkill.set(skill, a.courseUnit);
      const key = `${a.courseUnit} ${skill}`;
      const developers = developersByUnitAndSkill.get(key);
      if (developers) developers.push(a);
      else developersByUnitAndSkill.set(key, [a]);
    }
  const developersIn = (unit: string, skill: SkillId) =>
    developersByUnitAndSkill.get(`${unit} ${skill}`) ?? [];

  const predsById = new Map<string, Set<string>>();
  const missingById = new Map<string, readonly SkillId[]>();
  for (const a of activities) {
    const preds = new Set<string>();
    const missing = new Set<SkillId>();
    predsById.set(a.id, preds);
    if (a.kind === 'ext') {
      for (const b of core) if (b.courseUnit === a.courseUnit) preds.add(b.id);
      continue;
    }
    const waitForEarlierIn = (skill: SkillId) => {
      for (const b of developersIn(a.courseUnit, skill)) if (b.listed < a.listed) preds.add(b.id);
    };
    for (const skill of a.develops) {
      waitForEarlierIn(skill);
      for (const base of standing.skillOf(skill)?.restsOn ?? []) {
        if (standing.has(base)) {
          // Taken as there by its stage alone, yet the unit itself teaches it first.
          if (standing.levelOf(base) === null) waitForEarlierIn(base);
          continue;
        }
        const unit = firstUnitBySkill.get(base);
        if (unit === undefined) {
          missing.add(base);
          continue;
        }
        const developers = developersIn(unit, base);
        // Within one unit the listed order decides which of several activities on the base come first.
        const before = developers.filter((b) => unit !== a.courseUnit || b.listed < a.listed);
        if (a.develops.includes(base) && unit === a.courseUnit) continue;
        for (const b of before.length > 0 ? before : developers) if (b.id !== a.id) preds.add(b.id);
      }
    }
    if (missing.size > 0) missingById.set(a.id, [...missing]);
  }

  const cycles: OrderCycle[] = findSkillCycles(
    activities.flatMap((a) => a.develops),
    standing,
  );
  const sequence = sequenceOf(activities, predsById, cycles);
  return {
    predsById: new Map([...predsById].map(([id, preds]) => [id, [...preds]])),
    missingById,
    sequence,
    cycles,
  };
}

/** Repeatedly the first listed activity whose needs are met; where there is none a ring is named and opened. */
function sequenceOf(
  activities: readonly CourseActivity[],
  predsById: ReadonlyMap<string, Set<string>>,
  cycles: OrderCycle[],
): readonly CourseActivity[] {
  const waiting = [...activities];
  const placed = new Set<string>();
  const sequence: CourseActivity[] = [];
  while (waiting.length > 0) {
    const next = waiting.findIndex((a) => [...(predsById.get(a.id) ?? [])].every((id) => placed.has(id)));
    if (next >= 0) {
      const [a] = waiting.splice(next, 1);
      if (a === undefined) break;
      placed.add(a.id);
      sequence.push(a);
      continue;
    }
    const ring = ringAmong(waiting, predsById);
    if (!cycles.some((cycle) => cycle.kind === 'SkillCycle'))
      cycles.push({
        kind: 'ActivityCycle',
        activities: ring.map((a) => ({
          courseUnit: a.courseUnit,
          activity: a.activity.key,
          title: a.activity.title,
        })),
      });
    // The first listed of the ring goes first, as the teacher wrote it.
    const first = ring.reduce((x, y) => (y.listed < x.listed ? y : x));
    for (const a of ring) predsById.get(first.id)?.delete(a.id);
  }
  return sequence;
}

function ringAmong(
  waiting: readonly CourseActivity[],
  predsById: ReadonlyMap<string, ReadonlySet<string>>,
): readonly CourseActivity[] {
  const path: CourseActivity[] = [];
  let at = waiting[0];
  while (at !== undefined && !path.includes(at)) {
    path.push(at);
    const preds = predsById.get(at.id);
    at = waiting.find((a) => preds?.has(a.id));
  }
  return at === undefined ? path : path.slice(path.indexOf(at)).reverse();
}

/** The ring among the skills that the course develops and all they rest on, when there is one. */
function findSkillCycles(from: readonly SkillId[], standing: SkillStanding): OrderCycle[] {
  const reached = new Map<SkillId, Skill>();
  const waiting = [...from];
  for (let id = waiting.pop(); id !== undefined; id = waiting.pop()) {
    const skill = standing.skillOf(id);
    if (skill === null || reached.has(id)) continue;
    reached.set(id, skill);
    waiting.push(...skill.restsOn);
  }
  const map = createSkillMap([...reached.values()]);
  if (map.ok) return [];
  return map.error.flatMap((fault): OrderCycle[] =>
    fault.kind === 'SkillCycle' ? [{ kind: 'SkillCycle', skills: fault.cycle.slice(0, -1) }] : [],
  );
}
