// Takes a change back: its rows get their images from before, if they are still as the change left them. What came
// later on the same rows has to be taken back first. Undoing an undo does the change again.

import type { Fault } from '#contract';
import { err, ok } from '#core';
import type { ChangeId, CourseId, TableName, Tables } from '../record/records.ts';
import { findMissing, findPointing } from '../record/row-links.ts';
import { isSameRow } from '../record/same-row.ts';
import type { ChangedRow, ChangeRecord, Reader, Transactor } from '../record/store.ts';
import { studioId } from '../record/studio-id.ts';
import { remakeAll } from './calendar-commands.ts';
import { type Desk, type Handler, takeCourse, touchCourse } from './desk.ts';
import { notAllowed, notFound } from './fault.ts';
import { putBackTake, tendSound } from './take-sounds.ts';

export const undoChange: Handler<'undo'> = async (desk, { change: id }) => {
  const { tx } = desk;
  const change = await tx.getChange(id);
  if (change === null) return notFound('change');
  if (await isUndone(tx, change)) return notAllowed(`“${change.label}” is taken back already.`);
  if (change.type === 'take.eraseSounds')
    return notAllowed('A sound that was deleted is gone for good, and cannot be brought back.');
  if (
    change.type === 'studio.found' &&
    (await tx.list('student')).length + (await tx.list('term')).length > 0
  )
    return notAllowed('The studio is in use. Take back what was added to it first.');
  const rows = await tx.listChangedRows(id);
  const refused = await findConflict(tx, change, rows);
  if (refused !== null) return err(refused);
  const courses = new Set<CourseId>();
  for (const row of rows) for (const course of coursesOf(row)) courses.add(course);
  for (const course of courses) await takeCourse(desk, course);
  // Backwards, so that what hangs on a row goes before it and comes back after it.
  for (const row of [...rows].reverse()) await putBack(desk, row);
  // A course that was gone is in hand only now.
  for (const course of courses) await takeCourse(desk, course);
  const broken = await findBroken(tx, rows);
  if (broken !== null) return err(broken);
  for (const course of courses) touchCourse(desk, course, { replan: false });
  // Courses opened since have lessons of their own on these days.
  if (rows.some(({ table }) => table === 'term' || table === 'holiday')) await remakeAll(desk);
  await tx.markUndone(id, desk.change);
  return ok(labelUndo(change));
};

const tookBack = 'Took back: ';
const didAgain = 'Did again: ';

/** `Closed …` → `Took back: Closed …` → `Did again: Closed …` → `Took back: Closed …` */
function labelUndo({ type, label }: Pick<ChangeRecord, 'type' | 'label'>): string {
  if (type !== 'undo') return `${tookBack}${label}`;
  return label.startsWith(tookBack)
    ? `${didAgain}${label.slice(tookBack.length)}`
    : `${tookBack}${label.slice(didAgain.length)}`;
}

/** Whether a change is taken back as things stand: an undo that was itself undone does not count. */
export async function isUndone(reader: Reader, change: ChangeRecord): Promise<boolean> {
  let undone = false;
  let at: ChangeRecord | null = change;
  while (at !== null && at.undoneBy !== null) {
    undone = !undone;
    at = await reader.getChange(at.undoneBy);
  }
  return undone;
}

/** What the plan and the counters write into a row makes no conflict. */
function withoutCounters(table: TableName, row: unknown): unknown {
  if (row === null || typeof row !== 'object') return row;
  const { revision: _, ...rest } = row as Readonly<Record<string, unknown>>; // any row read as its columns
  const { moved: _moved, plan: _plan, pace: _pace, ...own } = rest;
  return table === 'course' || table === 'studio' ? own : rest;
}

/** A closing may learn the studio's pace anew: only that goes back then, whatever else was changed there since. */
const isPaceAlone = ({ table, before, after }: ChangedRow): boolean =>
  table === 'studio' && isSameRow(withoutCounters(table, before), withoutCounters(table, after));

async function findConflict(
  reader: Reader,
  change: ChangeRecord,
  rows: readonly ChangedRow[],
): Promise<Fault | null> {
  for (const row of rows) {
    const { table, rowId, after } = row;
    if (isPaceAlone(row)) continue;
    const now = await reader.get(table, rowId as Tables[typeof table]['id']);
    if (isSameRow(withoutCounters(table, now), withoutCounters(table, after))) continue;
    const later = await findLater(reader, change.id, table, rowId);
    const first = later === null ? 'what was done after it' : `“${later}”`;
    return {
      kind: 'ChangedElsewhere',
      message: `“${change.label}” cannot be taken back alone, because something later builds on it. Take back ${first} first.`,
    };
  }
  return null;
}

const changesSearched = 500;

/** The label of the newest change after one that touched a row, and still stands. */
async function findLater(
  reader: Reader,
  after: ChangeId,
  table: TableName,
  rowId: string,
): Promise<string | null> {
  for (const change of await reader.listChanges(changesSearched)) {
    if (change.id === after) return null;
    if (await isUndone(reader, change)) continue;
    const rows = await reader.listChangedRows(change.id);
    if (rows.some((r) => r.table === table && r.rowId === rowId)) return change.label;
  }
  return null;
}

async function putBack(desk: Desk, row: ChangedRow): Promise<void> {
  const { tx } = desk;
  const { table, rowId, before } = row;
  if (isPaceAlone(row)) return putBackPace(tx, before);
  const id = rowId as Tables[typeof table]['id'];
  if (before === null) {
    await tx.remove(table, id);
    return table === 'take' ? tendSound(desk, (row.after as Tables['take']).sound) : undefined;
  }
  const now = await tx.get(table, id);
  const fields = before as Readonly<Record<string, unknown>>; // any row read as its columns
  // The revision of a course rises when its courses are settled, as after any command.
  const counted =
    'revision' in fields && table !== 'course'
      ? { ...fields, revision: 1 + Math.max(revisionOf(now), revisionOf(fields)) }
      : fields;
  // The journal keeps rows exactly as the table had them.
  if (table === 'take') return putBackTake(desk, counted as unknown as Tables['take']);
  await tx.put(table, counted as unknown as Tables[typeof table]);
}

const revisionOf = (row: unknown): number =>
  typeof row === 'object' && row !== null && 'revision' in row && typeof row.revision === 'number'
    ? row.revision
    : 0;

/** Something else that was done meanwhile hangs on what would go, or what would come back hangs on what is gone. */
async function findBroken(reader: Reader, rows: readonly ChangedRow[]): Promise<Fault | null> {
  for (const { table, rowId, before, after } of rows) {
    const broken =
      before === null
        ? await findPointing(reader, table, rowId)
        : after === null
          ? await findMissing(reader, table, await reader.get(table, rowId as Tables[typeof table]['id']))
          : null;
    if (broken === null) continue;
    return {
      kind: 'NotAllowedNow',
      message:
        before === null
          ? `Something made since hangs on it (${describe(broken.from)}). Take that back first.`
          : `It hangs on something that is gone meanwhile (${describe(broken.to)}). Bring that back first.`,
    };
  }
  return null;
}

const described: { readonly [T in TableName]: string } = {
  studio: 'the studio',
  family: 'a family',
  student: 'a student',
  group: 'a group',
  course: 'a course',
  courseUnit: 'a unit on a course',
  unit: 'a unit',
  unitVersion: 'a version of a unit',
  skill: 'a skill',
  term: 'a term',
  holiday: 'a holiday',
  slot: 'a weekly lesson',
  event: 'an event',
  lesson: 'a lesson',
  segment: 'a part of a lesson',
  lessonMaterial: 'a sheet kept on a practice sheet',
  observation: 'a level',
  setAside: 'something set aside',
  consent: 'a consent',
  take: 'a take',
  sound: 'a sound',
  soundData: 'a sound',
};
const describe = (table: TableName) => described[table];

function coursesOf({ table, rowId, before, after }: ChangedRow): readonly CourseId[] {
  if (table === 'course') return [rowId as CourseId];
  return [before, after].flatMap((row) =>
    typeof row === 'object' && row !== null && 'course' in row && typeof row.course === 'string'
      ? [row.course as CourseId]
      : [],
  );
}

async function putBackPace(tx: Transactor, before: unknown): Promise<void> {
  const studio = await tx.get('studio', studioId);
  const { pace } = before as Tables['studio']; // the journal keeps rows exactly as the table had them
  if (studio !== null) await tx.put('studio', { ...studio, pace });
}
