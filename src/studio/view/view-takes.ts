// A student's takes: the list with the consent they rest on, and one take with everything that was heard.

import type { ListenableCheckView, TakeRow, TakesView, TakeView } from '#contract';
import type { Check, SkillId } from '#planning';
import { ageOfStudent } from '../course/course-records.ts';
import type { StudentId, TakeId, TakeRecord } from '../record/records.ts';
import type { Reader } from '../record/store.ts';
import { listConsents, minorityOf } from '../take/consent.ts';
import { toListenable } from './listenable-check.ts';
import type { ViewOutside } from './view-studio.ts';

/** The takes of a student, newest first; null when there is no such student. */
export async function viewTakes(
  reader: Reader,
  id: StudentId,
  { clock }: ViewOutside,
): Promise<TakesView | null> {
  const student = await reader.get('student', id);
  if (student === null) return null;
  const consents = await listConsents(reader, id);
  const standing = consents.findLast((consent) => consent.withdrawnOn === null) ?? null;
  const takes = await reader.list('take', { where: { student: id }, orderBy: ['date', 'keptAt'] });
  const rows: TakeRow[] = [];
  for (const take of takes) rows.unshift(await toRow(reader, take));
  const minority = minorityOf(student, clock.today());
  return {
    student: id,
    name: student.name,
    isMinor: minority !== null,
    minority,
    age: ageOfStudent(student, clock.today()),
    consent:
      standing === null
        ? null
        : {
            id: standing.id,
            givenBy: standing.givenBy,
            relation: standing.relation,
            on: standing.givenOn,
            note: standing.note,
          },
    withdrawnOn: standing === null ? (consents.at(-1)?.withdrawnOn ?? null) : null,
    takes: rows,
  };
}

/** One take; null when there is none of this id. */
export async function viewTake(reader: Reader, id: TakeId): Promise<TakeView | null> {
  const take = await reader.get('take', id);
  if (take === null) return null;
  const { student, note, context, heard, evidence } = take;
  const row = await toRow(reader, take);
  return { ...row, student, note, context, heard, evidence, checks: await listChecks(reader, take, row) };
}

/** Checks of the activity it was played for; without one, those of the skills it proves, wherever they are taught to them. */
async function listChecks(
  reader: Reader,
  take: TakeRecord,
  { proves }: TakeRow,
): Promise<readonly ListenableCheckView[]> {
  const title = async (skill: SkillId) => (await reader.get('skill', skill))?.title ?? skill;
  const found: { readonly skill: SkillId; readonly check: Check }[] = [];
  const unit = take.playedFor === null ? null : await reader.get('courseUnit', take.playedFor.courseUnit);
  const activity = [...(unit?.document.activities ?? []), ...(unit?.document.extensions ?? [])].find(
    ({ key }) => key === take.playedFor?.activity,
  );
  if (unit !== null && activity !== undefined) {
    for (const check of unit.document.checks)
      if (activity.develops.includes(check.skill)) found.push({ skill: check.skill, check });
  } else {
    const shown = new Set(proves.map(({ skill }) => skill));
    for (const { course } of await reader.list('observation', { where: { take: take.id } }))
      for (const { document } of await reader.list('courseUnit', { where: { course } }))
        for (const check of document.checks)
          if (shown.has(check.skill) && !found.some((one) => one.check.lookFor === check.lookFor))
            found.push({ skill: check.skill, check });
  }
  const views: ListenableCheckView[] = [];
  for (const { skill, check } of found) views.push(...toListenable(check, await title(skill)));
  return views;
}

async function toRow(reader: Reader, take: TakeRecord): Promise<TakeRow> {
  const sound = take.sound === null ? null : await reader.get('sound', take.sound);
  const levels = await reader.list('observation', { where: { take: take.id } });
  const proves: TakeRow['proves'][number][] = [];
  for (const { skill, level } of levels) {
    const title = (await reader.get('skill', skill))?.title;
    if (title !== undefined) proves.push({ skill, title, level });
  }
  return {
    id: take.id,
    date: take.date,
    title: take.title,
    instrument: take.instrument,
    seconds: take.heard.seconds,
    notes: take.heard.notes.length,
    soundBytes: sound?.bytes ?? null,
    lesson: take.takenIn,
    practiceOf: take.practiceOf,
    activity: take.playedFor,
    proves,
  };
}
