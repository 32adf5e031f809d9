// A unit as it is being written: numbers are still text, keys are given when it becomes a document, and each row has a
// handle that stays with it while it is moved about.

import type {
  Activity,
  ActivityVariant,
  Area,
  Check,
  MaterialReference,
  SkillId,
  Stage,
  TakeHome,
  UnitDocument,
  UnitId,
} from '#planning';
import type { Handle } from './handle.ts';
import { type ListenDraft, specToDraft } from './listen-draft.ts';

export interface MinutesDraft {
  readonly shortest: string;
  readonly usual: string;
  readonly longest: string;
}
export interface MaterialDraft {
  readonly handle: Handle;
  readonly key: string | null;
  readonly title: string;
  readonly spec?: unknown;
  readonly seed?: number;
  readonly takeHome?: TakeHome;
}
export interface VariantDraft {
  readonly handle: Handle;
  /** Empty: for every stage of the unit. */
  readonly stages: readonly Stage[];
  readonly ageFrom: string;
  readonly ageTo: string;
  /** Empty texts leave the activity as it is. */
  readonly title: string;
  readonly howTo: string;
  readonly minutes: MinutesDraft;
  /** Null leaves what to bring as it is; one thing a line. */
  readonly bring: string | null;
  /** Null leaves the materials as they are. */
  readonly materials: readonly MaterialDraft[] | null;
}
export interface ActivityDraft {
  readonly handle: Handle;
  /** Null until it is first saved; then it stays, whatever the title becomes. */
  readonly key: string | null;
  readonly title: string;
  readonly howTo: string;
  readonly minutes: MinutesDraft;
  readonly develops: readonly SkillId[];
  readonly character: Activity['character'];
  readonly variants: readonly VariantDraft[];
  readonly materials: readonly MaterialDraft[];
  /** One thing a line. */
  readonly bring: string;
}
export interface CheckDraft {
  readonly handle: Handle;
  readonly key: string | null;
  readonly skill: SkillId | null;
  readonly level: Check['level'];
  readonly lookFor: string;
  readonly listenFor: readonly ListenDraft[];
}
export interface UnitDraft {
  /** Null for a unit that is not in the library yet. */
  readonly id: UnitId | null;
  /** The version it was begun from; 0 for a new unit. */
  readonly version: number;
  readonly title: string;
  readonly area: Area;
  readonly goal: string;
  readonly about: string;
  readonly stages: readonly Stage[];
  readonly ageFrom: string;
  readonly ageTo: string;
  readonly families: readonly string[];
  /** Skills it involves that none of its activities develops: ongoing ones, and what it builds on. */
  readonly alsoSkills: readonly SkillId[];
  /** The order in which the unit listed its skills. */
  readonly skillOrder: readonly SkillId[];
  readonly activities: readonly ActivityDraft[];
  readonly extensions: readonly ActivityDraft[];
  readonly checks: readonly CheckDraft[];
  readonly next: readonly UnitId[];
  readonly lastHandle: Handle;
}

export type ActivityList = 'activities' | 'extensions';

const noMinutes: MinutesDraft = { shortest: '', usual: '', longest: '' };

export const newUnitDraft: UnitDraft = {
  id: null,
  version: 0,
  title: '',
  area: 'technique',
  goal: '',
  about: '',
  stages: [],
  ageFrom: '7',
  ageTo: '99',
  families: [],
  alsoSkills: [],
  skillOrder: [],
  activities: [],
  extensions: [],
  checks: [],
  next: [],
  lastHandle: 0,
};

export const emptyActivity = (handle: Handle): ActivityDraft => ({
  handle,
  key: null,
  title: '',
  howTo: '',
  minutes: { shortest: '5', usual: '10', longest: '15' },
  develops: [],
  character: 'new',
  variants: [],
  materials: [],
  bring: '',
});
export const emptyVariant = (handle: Handle): VariantDraft => ({
  handle,
  stages: [],
  ageFrom: '',
  ageTo: '',
  title: '',
  howTo: '',
  minutes: noMinutes,
  bring: null,
  materials: null,
});
export const emptyCheck = (handle: Handle, skill: SkillId | null): CheckDraft => ({
  handle,
  key: null,
  skill,
  level: 2,
  lookFor: '',
  listenFor: [],
});

/** A stored unit opened for writing. */
export function documentToDraft(unit: UnitDocument): UnitDraft {
  let last = 0;
  const handle = () => ++last;
  const activity = (one: Activity): ActivityDraft => ({
    handle: handle(),
    key: one.key,
    title: one.title,
    howTo: one.howTo,
    minutes: minutesToDraft(one.minutes),
    develops: one.develops,
    character: one.character,
    variants: one.variants.map((variant) => variantToDraft(variant, handle)),
    materials: materialsToDraft(one.materials, handle),
    bring: one.bring.join('\n'),
  });
  const activities = unit.activities.map(activity);
  const extensions = unit.extensions.map(activity);
  const developed = new Set([...activities, ...extensions].flatMap((one) => one.develops));
  return {
    id: unit.id,
    version: unit.version,
    title: unit.title,
    area: unit.area,
    goal: unit.goal,
    about: unit.about,
    stages: unit.stages,
    ageFrom: String(unit.ages.from),
    ageTo: String(unit.ages.to),
    families: unit.families,
    alsoSkills: unit.skills.filter((skill) => !developed.has(skill)),
    skillOrder: unit.skills,
    activities,
    extensions,
    checks: unit.checks.map((check) => ({
      ...check,
      handle: handle(),
      listenFor: (check.listenFor ?? []).map((spec) => specToDraft(spec, handle())),
    })),
    next: unit.next,
    lastHandle: last,
  };
}

/** The same unit as one that is not in the library yet: no id, and keys as they were. */
export const draftAsNew = (draft: UnitDraft, title: string): UnitDraft => ({
  ...draft,
  id: null,
  version: 0,
  title,
});

/** The draft with a fresh handle taken, and the handle. */
export function takeHandle(draft: UnitDraft): readonly [UnitDraft, Handle] {
  const handle = draft.lastHandle + 1;
  return [{ ...draft, lastHandle: handle }, handle];
}

/** Puts the row with this handle in a changed form; the others stay. */
export const changeRow = <Row extends { readonly handle: Handle }>(
  rows: readonly Row[],
  handle: Handle,
  change: Partial<Row>,
): readonly Row[] => rows.map((row) => (row.handle === handle ? { ...row, ...change } : row));

export const withoutRow = <Row extends { readonly handle: Handle }>(
  rows: readonly Row[],
  handle: Handle,
): readonly Row[] => rows.filter((row) => row.handle !== handle);

/** The lines of a field that holds one thing a line, trimmed, without empty ones. */
export const linesOf = (text: string): readonly string[] =>
  text
    .split('\n')
    .map((line) => line.replace(/\s+/g, ' ').trim())
    .filter((line) => line !== '');

/** Whether nothing was written yet. */
export const isUntouched = (draft: UnitDraft, from: UnitDraft): boolean =>
  JSON.stringify({ ...draft, lastHandle: 0 }) === JSON.stringify({ ...from, lastHandle: 0 });

const minutesToDraft = (minutes: Activity['minutes']): MinutesDraft => ({
  shortest: String(minutes.shortest),
  usual: String(minutes.usual),
  longest: String(minutes.longest),
});

const materialsToDraft = (
  materials: readonly MaterialReference[],
  handle: () => Handle,
): readonly MaterialDraft[] => materials.map((material) => ({ ...material, handle: handle() }));

const variantToDraft = (variant: ActivityVariant, handle: () => Handle): VariantDraft => ({
  handle: handle(),
  stages: variant.stages ?? [],
  ageFrom: variant.ages ? String(variant.ages.from) : '',
  ageTo: variant.ages ? String(variant.ages.to) : '',
  title: variant.title ?? '',
  howTo: variant.howTo ?? '',
  minutes: variant.minutes ? minutesToDraft(variant.minutes) : noMinutes,
  bring: variant.bring ? variant.bring.join('\n') : null,
  materials: variant.materials ? materialsToDraft(variant.materials, handle) : null,
});
