// Every sentence that planning says to a teacher, in one place, so that translations can stand beside it. British
// spelling, words of the trade; typed values go in, a sentence comes out.

import type { PlainDate } from '#core';
import type { SkillId } from '../skill/skill.ts';
import type { UnitId } from '../unit/unit.ts';
import type { LeftOut, Move, NotReady, OrderCycle, Reason } from './course-plan.ts';

/** What the sentences need from their surroundings. */
export interface WordingContext {
  /** A day as the reader writes it; the month in words by default: `12 May`. */
  readonly day?: (date: PlainDate) => string;
  readonly skillTitle?: (skill: SkillId) => string;
  readonly unitTitle?: (unit: UnitId) => string;
}

export const segmentTitles = {
  settlingIn: 'Settling in',
  recap: 'Recap',
  open: 'Open time',
  practice: 'Setting practice',
} as const;

const levelWords = ['not yet', 'introduced', 'with help', 'alone', 'transfers'] as const;
const months = 'January February March April May June July August September October November December'.split(
  ' ',
);

/** `2026-05-12` → `12 May` */
export function formatDay(date: PlainDate): string {
  return `${Number(date.slice(8))} ${months[Number(date.slice(5, 7)) - 1] ?? ''}`;
}

/** Why a segment stands where it stands. `{ kind: 'split', minutes: 12, upTo: 12, of: 20 }` → `Split: 12 of 20 minutes fit here.` */
export function formatReason(reason: Reason, context: WordingContext = {}): string {
  const day = context.day ?? formatDay;
  switch (reason.kind) {
    case 'restsOn':
      return `Rests on “${reason.title}”.`;
    case 'nextInOrder':
      return 'Next in order on its strand.';
    case 'split':
      return reason.upTo === reason.minutes
        ? `Split: ${reason.minutes} of ${minutes(reason.of)} fit here.`
        : `Split: ${minutes(reason.minutes)} more, up to ${reason.upTo} of ${reason.of}.`;
    case 'due':
      return reason.lastSeen === null
        ? `Due for a revisit by then: predicted recall ${percent(reason.recall)}.`
        : `Due for a revisit: predicted recall ${percent(reason.recall)}, last seen ${day(reason.lastSeen)}.`;
    case 'neededNext':
      return `Comes back early because “${reason.by}” rests on it.`;
    case 'rested':
      return `Back after resting for ${count(reason.lessons, 'lesson')}.`;
    case 'backFromAside':
      return `Back after being set aside on ${day(reason.since)}.`;
    case 'knownAlready':
      return `Only a short check: its skills were seen ${levelWords[reason.level]}.`;
    case 'pace':
      return `Minutes follow this student’s own pace: ${reason.percent}% of the usual, from ${count(reason.observations, 'piece')} of logged work.`;
    case 'pinned':
      return 'Pinned by hand.';
    case 'variant':
      return 'In the variant for this stage and age.';
    case 'readyEarly':
      return 'Optional: there is room once the rest of its unit is done.';
    case 'deadline':
      return `To be ready by ${day(reason.date)}.`;
  }
}

/** What moved, and why. */
export function formatMove(move: Move, context: WordingContext = {}): string {
  const day = context.day ?? formatDay;
  const { from, to, title } = move;
  const what =
    from === null
      ? to === null
        ? `“${title}” is as it was`
        : `“${title}” is new on ${day(to.date)}, ${minutes(to.minutes)}`
      : to === null
        ? `“${title}” on ${day(from.date)} falls away`
        : from.date === to.date
          ? `“${title}” on ${day(to.date)} takes ${minutes(to.minutes)} instead of ${from.minutes}`
          : `“${title}” moved from ${day(from.date)} to ${day(to.date)}`;
  return `${what}: ${causeOf(move, day)}.`;
}

function causeOf(move: Move, day: (date: PlainDate) => string): string {
  const { because, from, to } = move;
  switch (because.kind) {
    case 'lessonGone':
      // Of several moves told as one, the last was from a lesson between where it was and where it is.
      return from?.date === because.date
        ? `no lesson on ${day(because.date)}`
        : `in between it stood on ${day(because.date)}, and there is no lesson then`;
    case 'notReached':
      return 'not reached in the lesson before';
    case 'fasterThanPlanned':
      return 'it went faster than planned';
    case 'slowerThanPlanned':
      return 'it went slower than planned';
    case 'paceLearnt':
      return 'its minutes follow this student’s pace, which is reckoned anew';
    case 'knownAlready':
      return 'its skills are there already';
    case 'due':
      return 'its memory is due at another time now';
    case 'restsOnMoved':
      return `it rests on “${because.title}”, which moved`;
    case 'madeRoom':
      if (to === null) return 'there is no room left';
      if (from === null) return 'there is room for it now';
      return to.date < from.date ? 'time came free' : 'to make room for what else moved';
    case 'byHand':
      return 'changed by hand';
  }
}

/** What could not be placed, and why. */
export function formatLeftOut(left: LeftOut, context: WordingContext = {}): string {
  const day = context.day ?? formatDay;
  const short = `“${left.title}” is left out, ${minutes(left.minutes)} short`;
  switch (left.why.kind) {
    case 'noRoom':
      return `${short}: no room in the lessons there are.`;
    case 'noRoomBefore':
      return `${short}: no room before ${day(left.why.date)}.`;
    case 'notReady':
      return `${short}: the student is not ready for it.`;
    case 'setAside':
      return `${short}: set aside.`;
    case 'afterLeftOut':
      return `${short}: it comes after “${left.why.title}”, which is left out too.`;
  }
}

/** What is missing before a unit can start, and the shortest way to it. */
export function formatNotReady(entry: NotReady, context: WordingContext = {}): string {
  const skill = context.skillTitle ?? ((id: SkillId) => id);
  const unit = context.unitTitle ?? ((id: UnitId) => id);
  const missing = list(entry.missing.map((id) => `“${skill(id)}”`));
  return entry.way.length === 0
    ? `“${entry.title}” has to wait: it rests on ${missing}, which no unit in the library teaches.`
    : `“${entry.title}” has to wait: it rests on ${missing}. Shortest way: ${entry.way.map((id) => `“${unit(id)}”`).join(', then ')}.`;
}

/** A ring among prerequisites, and how to mend it. */
export function formatCycle(cycle: OrderCycle, context: WordingContext = {}): string {
  const skill = context.skillTitle ?? ((id: SkillId) => id);
  const names =
    cycle.kind === 'SkillCycle'
      ? cycle.skills.map((id) => `“${skill(id)}”`)
      : cycle.activities.map((a) => `“${a.title}”`);
  return cycle.kind === 'SkillCycle'
    ? `These skills rest on one another in a ring: ${list(names)}. Take off one of the links.`
    : `These activities need one another in a ring: ${list(names)}. The listed order is kept; let one of them develop fewer skills.`;
}

const percent = (share: number) => `${Math.round(share * 100)}%`;
const count = (n: number, what: string) => `${n} ${what}${n === 1 ? '' : 's'}`;
const minutes = (n: number) => count(n, 'minute');
const list = (items: readonly string[]) =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1) ?? ''}`;
