// What a teacher changes in a student's copy of a unit, as typed: the goal, and of each activity its title, minutes and
// how-to, or leaving it out. Everything else in the document stays as it is.

import { err, ok, type Result } from '#core';
import type { UnitDocument } from '#planning';

export interface ActivityDraft {
  readonly key: string;
  readonly title: string;
  readonly shortest: string;
  readonly usual: string;
  readonly longest: string;
  readonly howTo: string;
  readonly leftOut: boolean;
}
export interface CopyDraft {
  readonly goal: string;
  readonly activities: readonly ActivityDraft[];
}
/** Which field is wrong; `all` when no activity would be left. */
export interface DraftFault {
  readonly activity: string | null;
  readonly field: 'title' | 'minutes' | 'all';
}

export const documentToDraft = (document: UnitDocument): CopyDraft => ({
  goal: document.goal,
  activities: document.activities.map(({ key, title, minutes, howTo }) => ({
    key,
    title,
    shortest: String(minutes.shortest),
    usual: String(minutes.usual),
    longest: String(minutes.longest),
    howTo,
    leftOut: false,
  })),
});

/** The document with the draft in it, or every fault of the draft. */
export function draftToDocument(
  document: UnitDocument,
  draft: CopyDraft,
): Result<UnitDocument, readonly DraftFault[]> {
  const kept = draft.activities.filter((one) => !one.leftOut);
  const faults: DraftFault[] = kept.length === 0 ? [{ activity: null, field: 'all' }] : [];
  const activities = kept.flatMap((one) => {
    const before = document.activities.find((activity) => activity.key === one.key);
    if (!before) return [];
    const minutes = {
      shortest: Number(one.shortest),
      usual: Number(one.usual),
      longest: Number(one.longest),
    };
    if (one.title.trim() === '') faults.push({ activity: one.key, field: 'title' });
    if (!isAscending([minutes.shortest, minutes.usual, minutes.longest]))
      faults.push({ activity: one.key, field: 'minutes' });
    return [{ ...before, title: one.title.trim(), minutes, howTo: one.howTo }];
  });
  if (faults.length > 0) return err(faults);
  return ok({ ...document, goal: draft.goal.trim() || document.goal, activities });
}

const isAscending = (minutes: readonly number[]) =>
  minutes.every((n, i) => Number.isInteger(n) && n >= 1 && n >= (minutes[i - 1] ?? 1));
