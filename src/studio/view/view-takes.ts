// A student's takes: the list with the consent they rest on, and one take with everything that was heard.

import type { ListenableCheckView, TakeRow, TakesView, TakeView } from '#contract';
import type { Check } from '#planning';
import { ageOfStudent } from '../course/course-records.ts';
import type { CourseId, StudentId, TakeId, TakeRecord } from '../record/records.ts';
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
  const unit = take.playedFor === null ? null : await reader.get('courseUnit', take.playedFor.courseUnit);
  const played = [...(unit?.document.activities ?? []), ...(unit?.document.extensions ?? [])].find(
    ({ key }) => key === take.playedFor?.activity,
  );
  const develops = played?.develops ?? [];
  const checks = played ? (unit?.document.checks ?? []) : await checksOfProved(reader, take);
  const shown = played ? develops : row.proves.map(({ skill }) => skill);
  return {
    ...row,
    student,
    note,
    context,
    heard,
    evidence,
    develops,
    checks: await listListenable(
      reader,
      checks.filter(({ skill }) => shown.includes(skill)),
    ),
  };
}

/** Checks of every unit on the courses on which the take proves a level. */
async function checksOfProved(reader: Reader, take: TakeRecord): Promise<readonly Check[]> {
  const courses = new Set<CourseId>();
  for (const { course } of await reader.list('observation', { where: { take: take.id } }))
    courses.add(course);
  const checks: Check[] = [];
  for (const course of courses)
    for (const { document } of await reader.list('courseUnit', { where: { course } }))
      checks.push(...document.checks);
  return checks;
}

async function listListenable(
  reader: Reader,
  checks: readonly Check[],
): Promise<readonly ListenableCheckView[]> {
  const views: ListenableCheckView[] = [];
  for (const check of checks)
    views.push(...toListenable(check, (await reader.get('skill', check.skill))?.title ?? check.skill));
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
