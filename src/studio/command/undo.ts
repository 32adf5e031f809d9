// Takes a change back: its rows get their images from before, if they are still as the change left them. What came
// later on the same rows has to be taken back first. Undoing an undo does the change again.

import type { Fault } from '#contract';
import { err, ok } from '#core';
import { erasedType } from '../erase/plan-erasure.ts';
import type { CourseId, TableName, Tables } from '../record/records.ts';
import type { ChangedRow, ChangeRecord, Transactor } from '../record/store.ts';
import { studioId } from '../record/studio-id.ts';
import { remakeAll } from './calendar-commands.ts';
import { type Desk, type Handler, takeCourse, touchCourse } from './desk.ts';
import { notAllowed } from './fault.ts';
import { findInTheWay, type InTheWay, isPaceAlone, isUndone, openJournal } from './find-blockers.ts';
import { putBackTake, tendSound } from './take-sounds.ts';

export const undoChange: Handler<'undo'> = async (desk, { change: id }) => {
  const { tx } = desk;
  const change = await tx.getChange(id);
  if (change === null)
    return err({
      kind: 'NotFound',
      message: 'There is no such change in the list any more. Changes older than a year are not kept.',
    });
  if (change.type === erasedType)
    return notAllowed(
      'This change was about a student who was erased for good. It cannot be taken back, and nothing of it is kept.',
    );
  if (change.type === 'student.erase')
    return notAllowed('A student who was erased is gone for good, and cannot be brought back.');
  if (await isUndone(tx, change)) return notAllowed(`“${change.label}” is taken back already.`);
  if (change.type === 'take.eraseSounds')
    return notAllowed('A sound that was deleted is gone for good, and cannot be brought back.');
  if (
    change.type === 'studio.found' &&
    (await tx.list('student')).length + (await tx.list('term')).length > 0
  )
    return notAllowed('The studio is in use. Take back what was added to it first.');
  const rows = await tx.listChangedRows(id);
  const first = await findInTheWay(tx, rows);
  if (first !== null) return err(await refuse(desk, change, first));
  const courses = new Set<CourseId>();
  for (const row of rows) for (const course of coursesOf(row)) courses.add(course);
  for (const course of courses) await takeCourse(desk, course);
  await putAllBack(desk, rows);
  // A course that was gone is in hand only now.
  for (const course of courses) await takeCourse(desk, course);
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

/** Labels named one by one; what is beyond is counted. */
const mostNamed = 12;

/** A refusal that names all that has to be taken back first, in the order in which that can be done. */
async function refuse(desk: Desk, change: ChangeRecord, first: InTheWay): Promise<Fault> {
  const blockers = await listBlockers(desk, change);
  const kind = first.why === 'changed' ? 'ChangedElsewhere' : 'NotAllowedNow';
  const alone = `“${change.label}” cannot be taken back alone, because`;
  const [only, ...others] = blockers ?? [];
  if (blockers === null || only === undefined) {
    const last = await (await openJournal(desk.tx)).newestOn(first, change.id);
    if (last?.type === 'student.erase')
      return {
        kind: 'NotAllowedNow',
        message: `“${change.label}” cannot be taken back any more: a student was erased for good since, and what it changed was made anew without them.`,
      };
    return { kind, message: sayFirst(first, alone) };
  }
  const takeBack = [...blockers.map(({ id }) => id), change.id];
  const gone = first.why === 'gone' ? `what it hangs on is gone meanwhile (${described[first.table]})` : null;
  if (others.length === 0) {
    const why = gone ?? 'something later builds on it';
    return { kind, message: `${alone} ${why}. Take back “${only.label}” first.`, takeBack };
  }
  const countByLabel = new Map<string, number>();
  for (const { label } of blockers) countByLabel.set(label, 1 + (countByLabel.get(label) ?? 0));
  const named = [...countByLabel].map(([label, count]) =>
    count === 1 ? label : `${label} (${count} times)`,
  );
  const rest = named.length - mostNamed;
  return {
    kind,
    message: `${alone} ${gone ?? `${blockers.length} later changes build on it`}. Take these back first, in this order:`,
    details: rest > 0 ? [...named.slice(0, mostNamed), `and ${rest} more`] : named,
    takeBack,
  };
}

function sayFirst({ why, table }: InTheWay, alone: string): string {
  const what = described[table];
  switch (why) {
    case 'changed':
      return `${alone} something later builds on it. Take back what was done after it first.`;
    case 'hanging':
      return `Something made since hangs on it (${what}). Take that back first.`;
    case 'gone':
      return `It hangs on something that is gone meanwhile (${what}). Bring that back first.`;
  }
}

const neverTakenBack: ReadonlySet<string> = new Set(['take.eraseSounds', 'studio.found', 'student.erase']);

/** More than a person would take back to reach one change. */
const mostBlockers = 200;

/**
 * What has to be taken back before a change, in order; null where something among it can never be. It is found by doing
 * it: the refusal that follows leaves nothing of it.
 */
async function listBlockers(desk: Desk, change: ChangeRecord): Promise<readonly ChangeRecord[] | null> {
  const { tx } = desk;
  const journal = await openJournal(tx);
  const done: ChangeRecord[] = [];
  const clear = async (one: ChangeRecord): Promise<boolean> => {
    if (done.length > mostBlockers || neverTakenBack.has(one.type)) return false;
    const rows = await tx.listChangedRows(one.id);
    for (let way = await findInTheWay(tx, rows); way !== null; way = await findInTheWay(tx, rows)) {
      const blocker = await journal.newestOn(way, one.id);
      if (blocker === null || !(await clear(blocker))) return false;
    }
    await putAllBack(desk, rows);
    journal.takeBack(one.id);
    done.push(one);
    return true;
  };
  return (await clear(change)) ? done.slice(0, -1) : null;
}

/** Backwards, so that what hangs on a row goes before it and comes back after it. */
async function putAllBack(desk: Desk, rows: readonly ChangedRow[]): Promise<void> {
  for (const row of [...rows].reverse()) await putBack(desk, row);
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
