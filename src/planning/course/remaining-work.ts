// What is left to do of one activity for this student, and why it is that much.

import type { PlainDate } from '#core';
import { daysBetween } from '#core';
import { recallOn } from '../review/memory-card.ts';
import type { Level } from '../skill/skill.ts';
import type { CourseActivity } from './course-activity.ts';
import type { Work } from './course-input.ts';
import type { SkillMemory } from './skill-memory-of-course.ts';
import type { SkillStanding } from './skill-standing.ts';

export interface RemainingWork {
  /** Clock minutes expected to be left, at this student's pace; 0 when it is complete. */
  readonly demand: number;
  /** Clock minutes expected in all. */
  readonly whole: number;
  /** Set when the skills are there already and only a short check is left. */
  readonly known: Level | null;
}

/** Minutes of the check that stands in for an activity whose skills are there already. */
export const shortCheckMinutes = 3;
/** Seen this lately and remembered this well, even the check falls away. Common practice, no source. */
const lately = { days: 21, recall: 0.9 };

/** What is left of an activity after the work logged, at `pace` actual minutes for each usual one. */
export function remainingWork(
  activity: CourseActivity,
  log: readonly Work[],
  pace: number,
  standing: SkillStanding,
  memory: SkillMemory,
  today: PlainDate,
): RemainingWork {
  const { shortest, usual, longest } = activity.activity.minutes;
  const whole = Math.max(1, Math.round(usual * pace));
  if (log.some((work) => work.outcome === 'finished')) return { demand: 0, whole, known: null };

  const known = levelOfAll(activity, standing);
  if (known !== null && known >= 3) {
    const fresh = activity.develops.every((skill) => {
      const card = memory.cardOf(skill);
      return (
        card !== null &&
        daysBetween(card.lastSeen, today) <= lately.days &&
        recallOn(card, today) >= lately.recall
      );
    });
    const minutes = Math.min(shortCheckMinutes, whole);
    return { demand: fresh || log.length > 0 ? 0 : minutes, whole: minutes, known };
  }

  const covered = log.reduce((sum, work) => sum + work.covered, 0);
  // All its usual minutes are done and it is still not there: one more useful go, until it is worked to its longest.
  const left =
    covered < usual ? usual - covered : covered < longest ? Math.min(shortest, longest - covered) : 0;
  return { demand: left <= 0 ? 0 : Math.max(1, Math.round(left * pace)), whole, known: null };
}

/** The lowest level observed among the skills it develops; null while any was never observed, or it develops none. */
function levelOfAll(activity: CourseActivity, standing: SkillStanding): Level | null {
  let lowest: Level | null = null;
  for (const skill of activity.develops) {
    const level = standing.levelOf(skill);
    if (level === null) return null;
    if (lowest === null || level < lowest) lowest = level;
  }
  return lowest;
}
