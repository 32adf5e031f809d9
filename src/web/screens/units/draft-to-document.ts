// From what was written to a unit document. It always gives one, so that the findings can be live; whether the library
// will take it is for find-draft-faults.ts to say.

import type {
  Activity,
  ActivityVariant,
  Check,
  MaterialReference,
  Minutes,
  SkillId,
  UnitDocument,
  UnitId,
} from '#planning';
import { draftToSpec } from './listen-draft.ts';
import { titleToSlug, uniqueSlug } from './slug.ts';
import {
  type ActivityDraft,
  type CheckDraft,
  linesOf,
  type MaterialDraft,
  type MinutesDraft,
  type UnitDraft,
  type VariantDraft,
} from './unit-draft.ts';

/** A whole number as written, else NaN: `'12 '` → 12, `'1.5'` → NaN */
export function readWhole(text: string): number {
  return /^\s*\d{1,6}\s*$/.test(text) ? Number(text) : Number.NaN;
}

/** The document, with this id; keys that were given stay, new ones come from the titles. */
export function draftToDocument(draft: UnitDraft, id: UnitId): UnitDocument {
  const keyed = giveKeys([...draft.activities, ...draft.extensions], (one) =>
    titleToSlug(one.title, 'activity'),
  );
  const toActivity = (one: ActivityDraft) => activityToDocument(one, keyed.get(one.handle) ?? '');
  const activities = draft.activities.map(toActivity);
  const extensions = draft.extensions.map(toActivity);
  const checkDrafts = draft.checks.filter(isSkillChosen);
  const checkKeys = giveKeys(checkDrafts, (one) => titleToSlug(one.skill.slice('skill:'.length), 'check'));
  const developed = [...activities, ...extensions].flatMap((one) => one.develops);
  const involved = new Set<SkillId>([
    ...developed,
    ...draft.alsoSkills,
    ...checkDrafts.map((one) => one.skill),
  ]);
  return {
    format: 'levare-unit/1',
    id,
    version: Math.max(1, draft.version),
    title: toLine(draft.title),
    area: draft.area,
    goal: toLine(draft.goal),
    about: toProse(draft.about),
    stages: draft.stages,
    ages: { from: readWhole(draft.ageFrom), to: readWhole(draft.ageTo) },
    families: draft.families,
    skills: [
      ...draft.skillOrder.filter((skill) => involved.has(skill)),
      ...[...involved].filter((skill) => !draft.skillOrder.includes(skill)),
    ],
    activities,
    extensions,
    checks: checkDrafts.map(
      (one): Check => ({
        key: checkKeys.get(one.handle) ?? '',
        skill: one.skill,
        level: one.level,
        lookFor: toProse(one.lookFor),
        ...(one.listenFor.length === 0 ? {} : { listenFor: one.listenFor.map(draftToSpec) }),
      }),
    ),
    next: draft.next,
  };
}

/** A unit's usual minutes in all: its activities', without extensions; what is not a number counts as nothing. */
export const usualMinutesOf = (draft: UnitDraft): number =>
  draft.activities.reduce((sum, one) => sum + (readWhole(one.minutes.usual) || 0), 0);

function activityToDocument(one: ActivityDraft, key: string): Activity {
  return {
    key,
    title: toLine(one.title),
    howTo: toProse(one.howTo),
    minutes: toMinutes(one.minutes),
    develops: one.develops,
    character: one.character,
    variants: one.variants.map(variantToDocument),
    materials: materialsToDocument(one.materials),
    bring: linesOf(clean(one.bring)),
  };
}

function materialsToDocument(drafts: readonly MaterialDraft[]): readonly MaterialReference[] {
  const materials = drafts.filter((material) => material.title.trim() !== '');
  const materialKeys = giveKeys(materials, (material) => titleToSlug(material.title, 'material'));
  return materials.map(({ handle, ...material }) => ({
    ...material,
    key: materialKeys.get(handle) ?? '',
    title: toLine(material.title),
  }));
}

function variantToDocument(one: VariantDraft): ActivityVariant {
  return {
    ...(one.stages.length > 0 ? { stages: one.stages } : {}),
    ...(one.ageFrom.trim() !== '' || one.ageTo.trim() !== ''
      ? { ages: { from: readWhole(one.ageFrom || '3'), to: readWhole(one.ageTo || '99') } }
      : {}),
    ...(toLine(one.title) === '' ? {} : { title: toLine(one.title) }),
    ...(toProse(one.howTo) === '' ? {} : { howTo: toProse(one.howTo) }),
    ...(hasMinutes(one.minutes) ? { minutes: toMinutes(one.minutes) } : {}),
    ...(one.materials === null ? {} : { materials: materialsToDocument(one.materials) }),
    ...(one.bring === null ? {} : { bring: linesOf(clean(one.bring)) }),
  };
}

/** Whether any of the three was written: then all three count. */
export const hasMinutes = ({ shortest, usual, longest }: MinutesDraft): boolean =>
  [shortest, usual, longest].some((text) => text.trim() !== '');

const toMinutes = (minutes: MinutesDraft): Minutes => ({
  shortest: readWhole(minutes.shortest),
  usual: readWhole(minutes.usual),
  longest: readWhole(minutes.longest),
});

interface Keyed {
  readonly handle: number;
  readonly key: string | null;
}

/** Keys by handle: those that were given first, so that a new row never takes one of theirs. */
function giveKeys<Row extends Keyed>(
  rows: readonly Row[],
  slugOf: (row: Row) => string,
): ReadonlyMap<number, string> {
  const keys = new Map<number, string>();
  const taken = new Set<string>();
  for (const row of rows)
    if (row.key !== null && !taken.has(row.key)) {
      keys.set(row.handle, row.key);
      taken.add(row.key);
    }
  for (const row of rows) {
    if (keys.has(row.handle)) continue;
    const key = uniqueSlug(slugOf(row), taken);
    keys.set(row.handle, key);
    taken.add(key);
  }
  return keys;
}

function isSkillChosen(one: CheckDraft): one is CheckDraft & { readonly skill: SkillId } {
  return one.skill !== null;
}

/** Without what survives no file: control characters other than tab and line feed, and halves of character pairs. */
const clean = (text: string): string =>
  text
    .replaceAll('\r\n', '\n')
    .replaceAll('\r', '\n')
    .replace(/\p{Cs}|[^\P{Cc}\n\t]/gu, '');

export const toLine = (text: string): string => clean(text).replace(/\s+/g, ' ').trim();

export const toProse = (text: string): string =>
  clean(text)
    .split('\n')
    .map((line) => line.trimEnd())
    .join('\n')
    .trim();
