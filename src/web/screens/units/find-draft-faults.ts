// What the library would refuse, said at the field where it is. The limits are those of the unit's published schema; a
// test holds the two against each other.

import { words } from '../../words/index.ts';
import { hasMinutes, readWhole, toLine, toProse } from './draft-to-document.ts';
import type { Handle } from './handle.ts';
import { findListenFaults } from './listen-draft.ts';
import {
  type ActivityDraft,
  linesOf,
  type MaterialDraft,
  type MinutesDraft,
  type UnitDraft,
  type VariantDraft,
} from './unit-draft.ts';

/** Sentences by field: `title`, `ages`, `12.minutes` for the row with the handle 12. */
export type DraftFaults = ReadonlyMap<string, string>;

const says = words.units.faults;
export const mostListenFor = 6;

/** Everything that must be mended before the library takes it; empty when it can be saved. */
export function findDraftFaults(draft: UnitDraft): DraftFaults {
  const faults = new Map<string, string>();
  const put = (field: string, fault: string | null) => {
    if (fault !== null && !faults.has(field)) faults.set(field, fault);
  };
  put('title', lineFault(draft.title, 120, says.titleMissing));
  put('goal', lineFault(draft.goal, 300, says.goalMissing));
  put('about', longFault(toProse(draft.about), 4000));
  if (draft.stages.length === 0) put('stages', says.stagesMissing);
  put('ages', agesFault(draft.ageFrom, draft.ageTo));
  if (draft.activities.length + draft.extensions.length > 60) put('activities', says.tooManyActivities);
  if (draft.checks.length > 60) put('checks', says.tooMany(60));
  if (draft.next.length > 30) put('next', says.tooMany(30));
  const skills = new Set([
    ...draft.alsoSkills,
    ...[...draft.activities, ...draft.extensions].flatMap((one) => one.develops),
    ...draft.checks.flatMap((one) => (one.skill === null ? [] : [one.skill])),
  ]);
  if (skills.size > 60) put('skills', says.tooMany(60));
  for (const one of [...draft.activities, ...draft.extensions]) findActivityFaults(one, put);
  for (const one of draft.checks) {
    if (one.skill === null) put(`${one.handle}.skill`, says.skillMissing);
    put(
      `${one.handle}.lookFor`,
      toProse(one.lookFor) === '' ? says.lookForMissing : longFault(toProse(one.lookFor), 1000),
    );
    if (one.listenFor.length > mostListenFor) put(`${one.handle}.listenFor`, says.tooMany(mostListenFor));
    for (const spec of one.listenFor)
      for (const [field, fault] of findListenFaults(spec)) put(`${spec.handle}.${field}`, fault);
  }
  return faults;
}

type Put = (field: string, fault: string | null) => void;

function findActivityFaults(one: ActivityDraft, put: Put): void {
  put(`${one.handle}.title`, lineFault(one.title, 120, says.activityTitleMissing));
  put(`${one.handle}.howTo`, longFault(toProse(one.howTo), 6000));
  put(`${one.handle}.minutes`, minutesFault(one.minutes));
  if (one.develops.length > 12) put(`${one.handle}.develops`, says.tooMany(12));
  put(`${one.handle}.bring`, linesFault(one.bring));
  if (one.variants.length > 12) put(`${one.handle}.variants`, says.tooMany(12));
  findMaterialFaults(one.handle, one.materials, put);
  for (const variant of one.variants) findVariantFaults(variant, put);
}

function findVariantFaults(one: VariantDraft, put: Put): void {
  if (one.ageFrom.trim() !== '' || one.ageTo.trim() !== '')
    put(`${one.handle}.ages`, agesFault(one.ageFrom || '3', one.ageTo || '99'));
  put(`${one.handle}.title`, longFault(toLine(one.title), 120));
  put(`${one.handle}.howTo`, longFault(toProse(one.howTo), 6000));
  if (hasMinutes(one.minutes)) put(`${one.handle}.minutes`, minutesFault(one.minutes));
  if (one.bring !== null) put(`${one.handle}.bring`, linesFault(one.bring));
  if (one.materials !== null) findMaterialFaults(one.handle, one.materials, put);
}

function findMaterialFaults(of: Handle, materials: readonly MaterialDraft[], put: Put): void {
  if (materials.length > 20) put(`${of}.materials`, says.tooMany(20));
  for (const material of materials) put(`${material.handle}.title`, longFault(toLine(material.title), 120));
}

function lineFault(text: string, most: number, missing: string): string | null {
  return toLine(text) === '' ? missing : longFault(toLine(text), most);
}

const longFault = (text: string, most: number): string | null =>
  text.length > most ? says.tooLong(most, text.length) : null;

function linesFault(text: string): string | null {
  const lines = linesOf(text);
  if (lines.length > 20) return says.tooMany(20);
  return lines.some((line) => line.length > 160) ? says.lineTooLong(160) : null;
}

function agesFault(from: string, to: string): string | null {
  const [young, old] = [readWhole(from), readWhole(to)];
  if (!(young >= 3 && young <= 99 && old >= 3 && old <= 99)) return says.agesWrong;
  return young > old ? says.agesSwapped : null;
}

function minutesFault(minutes: MinutesDraft): string | null {
  const [shortest, usual, longest] = [minutes.shortest, minutes.usual, minutes.longest].map(readWhole);
  if (shortest === undefined || usual === undefined || longest === undefined) return says.minutesWrong;
  if (![shortest, usual, longest].every((n) => n >= 1 && n <= 120)) return says.minutesWrong;
  return shortest <= usual && usual <= longest ? null : says.minutesOrder;
}
