// Which skills should come back in the coming lessons, from when, and why: their memory is due, or the next activity
// rests on them.

import { addDays, daysBetween, type PlainDate } from '#core';
import { dueDate, levelToRating, type MemoryCard, recallOn, seeSkill } from '../review/memory-card.ts';
import type { Level, SkillId } from '../skill/skill.ts';
import type { CourseInput } from './course-input.ts';
import { type LessonFrame, revisitMinutes } from './lesson-frame.ts';
import { firstLessonOn, type SkillMemory } from './skill-memory-of-course.ts';
import type { SkillStanding } from './skill-standing.ts';

export interface DueRevisit {
  readonly skill: SkillId;
  readonly minutes: number;
  /** First lesson index it may stand in. */
  readonly due: number;
  readonly weight: number;
  /** The card with which recall is predicted: the next recap is already counted. */
  readonly card: MemoryCard;
  /** The activity that needs it, when it comes back earlier for that. */
  readonly neededBy: string | null;
}

/** An activity still to come, as far as revisits need to know it. */
export interface ComingWork {
  readonly title: string;
  readonly develops: readonly SkillId[];
  /** Lesson index at which it is about to start. */
  readonly start: number;
  readonly started: boolean;
}

/** Below this predicted recall a skill is brought back before work that rests on it. Our own choice. */
const neededRecall = 0.92;
const weights = { due: 1, needed: 2 };

/** Revisits within the coming lessons, most urgent first, no more than the lessons can hold. */
export function findDueRevisits(
  input: CourseInput,
  frames: readonly LessonFrame[],
  coming: readonly ComingWork[],
  standing: SkillStanding,
  memory: SkillMemory,
  asideSince: ReadonlyMap<SkillId, PlainDate>,
): readonly DueRevisit[] {
  const lessons = input.lessons;
  const minutes = revisitLength(input);
  const first = lessons[0];
  if (minutes === 0 || first === undefined) return [];
  const pinned = new Set(input.pins.flatMap((pin) => (pin.kind === 'revisit' ? [pin.skill] : [])));
  const open = (from: number) => {
    const at = frames.findIndex((frame, i) => i >= from && frame.reviewMax >= minutes);
    return at < 0 ? lessons.length : at;
  };
  const gap = usualGap(lessons);
  const revisits: DueRevisit[] = [];
  for (const skill of memory.skills) {
    const level = memory.levelOf(skill) ?? 1;
    const aside = asideSince.get(skill);
    const today = memory.cardOf(skill);
    if (today === null || standing.isOngoing(skill) || pinned.has(skill)) continue;
    const developing = coming.filter((work) => work.develops.includes(skill));
    if (level < standing.wantedLevel(skill) && aside === undefined && developing.length > 0) continue;

    const inRecap = memory.isInNextRecap(skill) && (frames[0]?.recap ?? 0) > 0;
    const card = inRecap ? seeSkill(today, first.date, levelToRating(level)) : today;
    let due = firstLessonOn(lessons, dueDate(card, input.settings.retention));
    let neededBy: string | null = null;
    for (const work of coming) {
      const lesson = lessons[work.start];
      if (work.started || lesson === undefined || work.start >= due) continue;
      if (inRecap && work.start === 0) continue;
      const restsOnIt = work.develops.some((s) => standing.skillOf(s)?.restsOn.includes(skill));
      // Met in the lesson before, it is fresh enough to go on from.
      const isFresh = daysBetween(card.lastSeen, lesson.date) <= gap;
      if (!restsOnIt || isFresh || recallOn(card, lesson.date) >= neededRecall) continue;
      due = work.start;
      neededBy = work.title;
    }
    // What was set aside rests first; what is about to be worked on needs no revisit beside it.
    if (aside !== undefined)
      due = Math.max(due, firstLessonOn(lessons, addDays(aside, restDays(lessons, input.settings.parkGap))));
    due = open(due);
    if (due >= lessons.length || developing.some((work) => work.started || work.start <= due)) continue;
    revisits.push({
      skill,
      minutes,
      due,
      weight: neededBy === null ? weights.due : weights.needed,
      card,
      neededBy,
    });
  }
  const perLesson = Math.floor(input.settings.revisit / minutes);
  const recallAt = (r: DueRevisit) => recallOn(r.card, lessons[r.due]?.date ?? first.date);
  return revisits
    .sort(
      (a, b) =>
        a.due - b.due || b.weight - a.weight || recallAt(a) - recallAt(b) || (a.skill < b.skill ? -1 : 1),
    )
    .slice(0, Math.min(100, perLesson * lessons.length));
}

/** Minutes of one revisit for this student; 0 when the course has no time for revisits. */
export function revisitLength(input: CourseInput): number {
  return Math.min(revisitMinutes(input.age), input.settings.revisit);
}

/**
 * Days after an activity is complete until its skill should come back: seen at the wanted level, seen again in the recap
 * of the next lesson, then left until predicted recall falls below the wanted retention.
 */
export function daysToFirstRevisit(input: CourseInput): number {
  return daysBetween(
    input.today,
    dueDate(
      expectedCard(input.today, usualGap(input.lessons), 2, input.settings.recap > 0),
      input.settings.retention,
    ),
  );
}

/** The card of a skill that is completed on a day and opens the recap `gap` days later. */
export function expectedCard(completed: PlainDate, gap: number, level: Level, recap: boolean): MemoryCard {
  const learnt = seeSkill(null, completed, levelToRating(level));
  return recap ? seeSkill(learnt, addDays(completed, gap), levelToRating(level)) : learnt;
}

/** The usual days from one lesson to the next: the median, or a week when there is only one lesson. */
export function usualGap(lessons: readonly { readonly date: PlainDate }[]): number {
  const gaps = lessons
    .slice(1)
    .map((lesson, i) => daysBetween(lessons[i]?.date ?? lesson.date, lesson.date))
    .sort((a, b) => a - b);
  return Math.max(1, gaps[Math.floor((gaps.length - 1) / 2)] ?? 7);
}

const restDays = (lessons: readonly { readonly date: PlainDate }[], parkGap: number) =>
  parkGap * usualGap(lessons);
