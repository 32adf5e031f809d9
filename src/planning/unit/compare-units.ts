// What differs between two states of a unit: a student's copy and the library's, or two versions of the library's.

import type { SkillId } from '../skill/skill.ts';
import type { Activity, ActivityKey, Check, UnitDocument, UnitId } from './unit.ts';

export type UnitField = 'title' | 'area' | 'goal' | 'about' | 'stages' | 'ages' | 'families';
export type ActivityField =
  | 'title'
  | 'howTo'
  | 'minutes'
  | 'develops'
  | 'character'
  | 'variants'
  | 'materials'
  | 'bring';
export type CheckField = 'skill' | 'level' | 'lookFor' | 'listenFor';

export interface Change {
  readonly before: unknown;
  readonly after: unknown;
}

export type UnitDifference =
  | ({ readonly kind: 'FieldChanged'; readonly field: UnitField } & Change)
  | { readonly kind: 'SkillAdded' | 'SkillRemoved'; readonly skill: SkillId }
  | {
      readonly kind: 'ActivityAdded' | 'ActivityRemoved';
      readonly key: ActivityKey;
      readonly title: string;
      readonly extension: boolean;
    }
  /** Places count from 0 within the activities or the extensions. */
  | ({ readonly kind: 'ActivityMoved'; readonly key: ActivityKey; readonly title: string } & {
      readonly before: Place;
      readonly after: Place;
    })
  | ({
      readonly kind: 'ActivityChanged';
      readonly key: ActivityKey;
      readonly title: string;
      readonly field: ActivityField;
    } & Change)
  | { readonly kind: 'CheckAdded' | 'CheckRemoved'; readonly key: string }
  | ({ readonly kind: 'CheckChanged'; readonly key: string; readonly field: CheckField } & Change)
  | { readonly kind: 'NextAdded' | 'NextRemoved'; readonly unit: UnitId };

export interface Place {
  readonly extension: boolean;
  readonly index: number;
}

const unitFields = ['title', 'area', 'goal', 'about', 'stages', 'ages', 'families'] as const;
const activityFields = [
  'title',
  'howTo',
  'minutes',
  'develops',
  'character',
  'variants',
  'materials',
  'bring',
] as const;
const checkFields = ['skill', 'level', 'lookFor', 'listenFor'] as const;

/**
 * Everything that differs, in the order of the unit; none when the two teach the same. Activities and checks are matched
 * by key. Id and version are not compared: a copy has its own.
 */
export function compareUnits(before: UnitDocument, after: UnitDocument): readonly UnitDifference[] {
  const skills = compareSets(before.skills, after.skills);
  const next = compareSets(before.next, after.next);
  return [
    ...unitFields.flatMap((field) =>
      same(before[field], after[field])
        ? []
        : [{ kind: 'FieldChanged', field, before: before[field], after: after[field] } as const],
    ),
    ...skills.added.map((skill) => ({ kind: 'SkillAdded', skill }) as const),
    ...skills.removed.map((skill) => ({ kind: 'SkillRemoved', skill }) as const),
    ...compareActivities(before, after),
    ...compareChecks(before.checks, after.checks),
    ...next.added.map((unit) => ({ kind: 'NextAdded', unit }) as const),
    ...next.removed.map((unit) => ({ kind: 'NextRemoved', unit }) as const),
  ];
}

function compareActivities(before: UnitDocument, after: UnitDocument): readonly UnitDifference[] {
  const differences: UnitDifference[] = [];
  const old = placeActivities(before);
  const fresh = placeActivities(after);
  for (const [key, { activity, place }] of old)
    if (!fresh.has(key))
      differences.push({
        kind: 'ActivityRemoved',
        key,
        title: activity.title,
        extension: place.extension,
      });
  for (const [key, { activity, place }] of fresh) {
    const was = old.get(key);
    if (was === undefined) {
      differences.push({ kind: 'ActivityAdded', key, title: activity.title, extension: place.extension });
      continue;
    }
    for (const field of activityFields)
      if (!same(was.activity[field], activity[field]))
        differences.push({
          kind: 'ActivityChanged',
          key,
          title: activity.title,
          field,
          before: was.activity[field],
          after: activity[field],
        });
  }
  for (const key of findMoved(old, fresh)) {
    const was = old.get(key);
    const is = fresh.get(key);
    if (was !== undefined && is !== undefined)
      differences.push({
        kind: 'ActivityMoved',
        key,
        title: is.activity.title,
        before: was.place,
        after: is.place,
      });
  }
  return differences;
}

interface PlacedActivity {
  readonly activity: Activity;
  readonly place: Place;
}

function placeActivities(unit: UnitDocument): ReadonlyMap<ActivityKey, PlacedActivity> {
  return new Map<ActivityKey, PlacedActivity>([
    ...unit.activities.map(
      (activity, index) => [activity.key, { activity, place: { extension: false, index } }] as const,
    ),
    ...unit.extensions.map(
      (activity, index) => [activity.key, { activity, place: { extension: true, index } }] as const,
    ),
  ]);
}

/** The fewest activities whose move explains the new order: all but a longest run that kept its order. */
function findMoved(
  old: ReadonlyMap<ActivityKey, PlacedActivity>,
  fresh: ReadonlyMap<ActivityKey, PlacedActivity>,
): readonly ActivityKey[] {
  const oldOrder = new Map([...old.keys()].filter((key) => fresh.has(key)).map((key, i) => [key, i]));
  const kept = [...fresh.keys()].filter((key) => oldOrder.has(key));
  const crossed = (key: ActivityKey) => old.get(key)?.place.extension !== fresh.get(key)?.place.extension;
  const staying = kept.filter((key) => !crossed(key));
  const ranks = staying.map((key) => oldOrder.get(key) ?? 0);
  // Longest increasing subsequence, quadratic: a unit has at most 60 activities.
  const best = ranks.map(() => 1);
  const from = ranks.map(() => -1);
  ranks.forEach((rank, i) => {
    for (let j = 0; j < i; j++)
      if ((ranks[j] ?? 0) < rank && (best[j] ?? 0) + 1 > (best[i] ?? 0)) {
        best[i] = (best[j] ?? 0) + 1;
        from[i] = j;
      }
  });
  const still = new Set<ActivityKey>();
  for (let i = best.indexOf(Math.max(0, ...best)); i >= 0; i = from[i] ?? -1) {
    const key = staying[i];
    if (key !== undefined) still.add(key);
  }
  return kept.filter((key) => !still.has(key));
}

function compareChecks(before: readonly Check[], after: readonly Check[]): readonly UnitDifference[] {
  const oldByKey = new Map(before.map((check) => [check.key, check]));
  const freshByKey = new Map(after.map((check) => [check.key, check]));
  const differences: UnitDifference[] = [];
  for (const key of oldByKey.keys())
    if (!freshByKey.has(key)) differences.push({ kind: 'CheckRemoved', key });
  for (const [key, check] of freshByKey) {
    const was = oldByKey.get(key);
    if (was === undefined) {
      differences.push({ kind: 'CheckAdded', key });
      continue;
    }
    for (const field of checkFields)
      if (!same(was[field], check[field]))
        differences.push({ kind: 'CheckChanged', key, field, before: was[field], after: check[field] });
  }
  return differences;
}

function compareSets<T>(before: readonly T[], after: readonly T[]) {
  return {
    added: after.filter((item) => !before.includes(item)),
    removed: before.filter((item) => !after.includes(item)),
  };
}

function same(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (Array.isArray(a) && Array.isArray(b))
    return a.length === b.length && a.every((item, i) => same(item, b[i]));
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) return false;
  const left = new Map<string, unknown>(Object.entries(a));
  const right = new Map<string, unknown>(Object.entries(b));
  return (
    left.size === right.size && [...left].every(([key, item]) => right.has(key) && same(item, right.get(key)))
  );
}
