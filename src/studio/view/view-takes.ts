// A student's takes: the list with the consent they rest on, and one take with everything that was heard.

import type { TakeRow, TakesView, TakeView } from '#contract';
import type { StudentId, TakeId, TakeRecord } from '../record/records.ts';
import type { Reader } from '../record/store.ts';
import { listConsents, mayBeMinor } from '../take/consent.ts';
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
  return {
    student: id,
    name: student.name,
    isMinor: mayBeMinor(student, clock.today()),
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
  return { ...(await toRow(reader, take)), student, note, context, heard, evidence };
}

async function toRow(reader: Reader, take: TakeRecord): Promise<TakeRow> {
  const sound = take.sound === null ? null : await reader.get('sound', take.sound);
  const levels = await reader.list('observation', { where: { take: take.id } });
  const proves: TakeRow['proves'][number][] = [];
  for (const { skill, level } of levels) {
    const title = (await reader.get('skill', skill))?.title;
    if (title !== undefined) proves.push({ title, level });
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
    activity: take.playedFor,
    proves,
  };
}
