// The library of units and the skill map.

import type { Id } from '#core';
import type { Area, Skill, Stage, UnitDocument, UnitId } from '#planning';

export interface UnitRow {
  readonly id: UnitId;
  readonly version: number;
  readonly title: string;
  readonly area: Area;
  readonly goal: string;
  readonly stages: readonly Stage[];
  readonly ages: { readonly from: number; readonly to: number };
  readonly usualMinutes: number;
  readonly activities: number;
  readonly usedBy: number;
  readonly retired: boolean;
}

export interface UnitView {
  readonly document: UnitDocument;
  readonly versions: readonly { readonly version: number; readonly savedAt: string }[];
  readonly usedBy: readonly {
    readonly courseUnit: Id<'course-unit'>;
    readonly course: Id<'course'>;
    readonly learner: string;
    readonly version: number;
  }[];
  /** Sentences about what does not fit the skill map. */
  readonly findings: readonly string[];
  /** Units that teach what this one rests on, and units that rest on it. */
  readonly before: readonly { readonly unit: UnitId; readonly title: string }[];
  readonly after: readonly { readonly unit: UnitId; readonly title: string }[];
}

export interface SkillMapView {
  readonly skills: readonly (Skill & {
    readonly taughtBy: readonly { readonly unit: UnitId; readonly title: string }[];
  })[];
}

export interface CourseUnitCompareView {
  readonly id: Id<'course-unit'>;
  readonly course: Id<'course'>;
  readonly courseRevision: number;
  readonly learner: string;
  readonly document: UnitDocument;
  readonly library: UnitDocument | null;
  readonly differences: readonly string[];
}
