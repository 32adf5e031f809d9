// A unit of work: what a teacher prepares once and gives to many students. The document travels whole: the same shape
// is the file, the wire and the stored copy.

import type { Id, Stage } from '#core';
import type { CheckSpec } from '#listening';
import type { Area, Level, Skill, SkillId } from '../skill/skill.ts';

export type UnitId = Id<'unit'>;
/** Unique within its unit; lower-case words joined by hyphens: `two-bar-answers`. */
export type ActivityKey = string;

export interface Minutes {
  /** The least time in which the activity does some good, the usual time in all, and the most it is worth. */
  readonly shortest: number;
  readonly usual: number;
  readonly longest: number;
}

export interface AgeRange {
  readonly from: number;
  readonly to: number;
}

/** What changes for some students; absent fields stay as in the activity. The first variant that fits is used. */
export interface ActivityVariant {
  readonly stages?: readonly Stage[];
  readonly ages?: AgeRange;
  readonly title?: string;
  readonly howTo?: string;
  readonly minutes?: Minutes;
  /** In place of the activity's: another tune, larger print, none. */
  readonly materials?: readonly MaterialReference[];
  readonly bring?: readonly string[];
}

/** A worksheet, backing track or playback: `spec` is a material spec, read by those who know music. */
export interface MaterialReference {
  readonly key: string;
  readonly title: string;
  readonly spec?: unknown;
  /** Fixes what chance chooses, so that everyone gets the same; absent, each student gets their own. */
  readonly seed?: number;
  /** When it stands on the practice sheet; absent, whenever the activity was worked on. */
  readonly takeHome?: TakeHome;
}

/** `whenDone`: from the lesson in which the activity is finished. `never`: it is for the lesson alone. */
export const waysHome = ['whenDone', 'never'] as const;
export type TakeHome = (typeof waysHome)[number];

export interface Activity {
  readonly key: ActivityKey;
  readonly title: string;
  /** How to teach it, in Markdown paragraphs: what to say, show, play and ask. */
  readonly howTo: string;
  readonly minutes: Minutes;
  /** Skills it develops, main one first. */
  readonly develops: readonly SkillId[];
  /** Where it sits best in a lesson: `new` or `hard` while fresh, `easy` or `musical` near the end. */
  readonly character: 'new' | 'hard' | 'easy' | 'musical';
  readonly variants: readonly ActivityVariant[];
  readonly materials: readonly MaterialReference[];
  /** What to bring or set up: "two hand drums". */
  readonly bring: readonly string[];
}

/** How one knows that a skill is learnt. */
export interface Check {
  readonly key: string;
  readonly skill: SkillId;
  /** The level at which one moves on. */
  readonly level: Exclude<Level, 0>;
  /** What to look or listen for. */
  readonly lookFor: string;
  /** What a recorded take can show of it; absent where a recording shows nothing that matters here. */
  readonly listenFor?: readonly CheckSpec[];
}

export interface UnitDocument {
  readonly format: 'levare-unit/1';
  readonly id: UnitId;
  /** Counts the library's saved versions of this unit, from 1. */
  readonly version: number;
  readonly title: string;
  readonly area: Area;
  /** Completes "will be able to …". */
  readonly goal: string;
  /** A paragraph for the teacher: why, and what to watch for. */
  readonly about: string;
  readonly stages: readonly Stage[];
  readonly ages: AgeRange;
  /** Instrument families it suits, empty for all: `woodwind`, `strings`, … */
  readonly families: readonly string[];
  /** Every skill it involves, ongoing ones too. */
  readonly skills: readonly SkillId[];
  /** In teaching order. */
  readonly activities: readonly Activity[];
  /** Optional activities for whoever is ready early. */
  readonly extensions: readonly Activity[];
  readonly checks: readonly Check[];
  /** Units that may follow. */
  readonly next: readonly UnitId[];
}

/** The file form: a unit together with the skills it names and those they rest on, so that it can travel alone. */
export interface UnitFile {
  readonly unit: UnitDocument;
  readonly skills: readonly Skill[];
}
