// Units on a course: given, changed, taken off; and between a student's copy and the library.

import type { Fault } from '#contract';
import { err, ok, type PlainDate, type Result } from '#core';
import { compareUnits, formatUnitDifference, type UnitDocument } from '#planning';
import type { CourseRecords } from '../course/course-records.ts';
import type { CourseUnitId, CourseUnitRecord, StrandId } from '../record/records.ts';
import { formatCount, formatList } from '../sentence/amounts.ts';
import { addMissingSkills } from './add-missing-skills.ts';
import { type Desk, type Handler, takeSeenCourse, touchCourse } from './desk.ts';
import { invalid, notAllowed, notFound } from './fault.ts';
import { readDocument } from './read-document.ts';
import { unitRows } from './unit-rows.ts';

export const giveUnit: Handler<'courseUnit.give'> = async (desk, command) => {
  const { tx } = desk;
  const taken = await takeSeenCourse(desk, command.course, command.seen);
  if (!taken.ok) return taken;
  const records = taken.value;
  const unit = await tx.get('unit', command.unit);
  if (unit === null) return notFound('unit');
  if (unit.retired) return notAllowed(`“${unit.title}” is retired. Bring it back into the library first.`);
  if ((await tx.get('courseUnit', command.courseUnit)) !== null)
    return invalid('courseUnit', 'This unit was given already.');
  if (!records.course.strands.some((s) => s.id === command.strand)) return notFound('strand');
  const [notBefore, notAfter] = [command.notBefore ?? null, command.notAfter ?? null];
  const windowFault = findWindowFault(notBefore, notAfter);
  if (windowFault !== null) return err(windowFault);
  if (records.units.some((u) => u.unit === unit.id))
    desk.notices.push(`${records.learner.name} has “${unit.title}” already; now it is there twice.`);
  const row: CourseUnitRecord = {
    id: command.courseUnit,
    course: records.course.id,
    unit: unit.id,
    unitVersion: unit.version,
    document: unit.document,
    strand: command.strand,
    position: 0,
    notBefore,
    notAfter,
  };
  await placeInStrand(desk, records, row, command.position ?? null);
  touchCourse(desk, records.course.id, { given: [row.id] });
  return ok(`Gave ${records.learner.name} “${unit.title}”`);
};

export const changeCourseUnit: Handler<'courseUnit.change'> = async (desk, command) => {
  const taken = await takeUnit(desk, command.courseUnit, command.seen);
  if (!taken.ok) return taken;
  const { records, unit } = taken.value;
  const strand = command.strand ?? unit.strand;
  if (!records.course.strands.some((s) => s.id === strand)) return notFound('strand');
  let document = unit.document;
  if (command.document !== undefined) {
    const read = readDocument(command.document);
    if (!read.ok) return read;
    if (read.value.id !== unit.unit)
      return invalid('document.id', 'A student’s copy keeps the id of its unit. Undo that change of the id.');
    document = { ...read.value, version: unit.unitVersion };
    await addMissingSkills(desk, document);
  }
  const next: CourseUnitRecord = {
    ...unit,
    document,
    strand,
    notBefore: command.notBefore === undefined ? unit.notBefore : command.notBefore,
    notAfter: command.notAfter === undefined ? unit.notAfter : command.notAfter,
  };
  const windowFault = findWindowFault(next.notBefore, next.notAfter);
  if (windowFault !== null) return err(windowFault);
  if (command.position !== undefined || strand !== unit.strand)
    await placeInStrand(desk, records, next, command.position ?? null);
  else await desk.tx.put('courseUnit', next);
  touchCourse(desk, records.course.id);
  return ok(`Changed “${document.title}” for ${records.learner.name}`);
};

export const removeCourseUnit: Handler<'courseUnit.remove'> = async (desk, command) => {
  const { tx } = desk;
  const taken = await takeUnit(desk, command.courseUnit, command.seen);
  if (!taken.ok) return taken;
  const { records, unit } = taken.value;
  let kept = 0;
  for (const segments of records.segmentsByLesson.values())
    for (const segment of segments) {
      if (segment.courseUnit !== unit.id) continue;
      const lesson = records.lessons.find((l) => l.id === segment.lesson);
      const isHistory = lesson?.status === 'taught' || lesson === undefined || lesson.date < desk.today;
      // What was done stays readable in its lesson, by its title; what was only planned goes when the course is replanned.
      await tx.put('segment', { ...segment, courseUnit: null, activity: null, pinned: false });
      if (isHistory || segment.outcome !== null || segment.seconds !== null) kept++;
    }
  for (const aside of records.setAside)
    if (aside.courseUnit === unit.id) await tx.remove('setAside', aside.id);
  await tx.remove('courseUnit', unit.id);
  await renumber(desk, records, unit.strand, unit.id);
  if (kept > 0)
    desk.notices.push(
      `${formatCount(kept, 'segment')} of it that ${kept === 1 ? 'was' : 'were'} taught stay in their lessons; given again, the unit begins anew.`,
    );
  touchCourse(desk, records.course.id);
  return ok(`Took “${unit.document.title}” off ${records.learner.name}’s course`);
};

export const takeIntoLibrary: Handler<'courseUnit.takeIntoLibrary'> = async (desk, command) => {
  const { tx, outside } = desk;
  const taken = await takeUnit(desk, command.courseUnit, command.seen);
  if (!taken.ok) return taken;
  const { records, unit } = taken.value;
  const library = await tx.get('unit', unit.unit);
  if (library !== null && compareUnits(library.document, unit.document).length === 0)
    return notAllowed(`The library’s “${library.title}” is the same as this copy already.`);
  if (library !== null && library.version !== unit.unitVersion)
    desk.notices.push(
      `The library had moved on to version ${library.version} since this copy was made from ${unit.unitVersion}; that one is kept among the versions.`,
    );
  const newest = Math.max(library?.version ?? 0, ...(await versionNumbers(desk, unit.unit)));
  const rows = unitRows(unit.document, newest + 1, outside.clock.instant(), library?.retired ?? false);
  await tx.put('unit', rows.unit);
  await tx.put('unitVersion', rows.version);
  await tx.put('courseUnit', { ...unit, unitVersion: newest + 1, document: rows.unit.document });
  touchCourse(desk, records.course.id, { replan: false });
  return ok(`Took ${records.learner.name}’s copy of “${unit.document.title}” into the library`);
};

export const takeFromLibrary: Handler<'courseUnit.takeFromLibrary'> = async (desk, command) => {
  const { tx } = desk;
  const taken = await takeUnit(desk, command.courseUnit, command.seen);
  if (!taken.ok) return taken;
  const { records, unit } = taken.value;
  const library = await tx.get('unit', unit.unit);
  if (library === null) return notFound('unit in the library');
  const differences = compareUnits(unit.document, library.document);
  await tx.put('courseUnit', { ...unit, unitVersion: library.version, document: library.document });
  const left = await dropUnknownAsides(desk, records, unit.id, library.document);
  if (left.length > 0)
    desk.notices.push(`No longer in the unit, so no longer set aside: ${formatList(left)}.`);
  if (differences.length > 0)
    desk.notices.push(
      `What changed for ${records.learner.name}: ${formatList(differences.map(formatUnitDifference), 4)}`,
    );
  touchCourse(desk, records.course.id);
  return ok(
    `Brought ${records.learner.name}’s “${library.title}” up to the library’s version ${library.version}`,
  );
};

/** A unit on a course with the course's records, when the revision is the one seen. */
async function takeUnit(
  desk: Desk,
  id: CourseUnitId,
  seen: number,
): Promise<Result<{ readonly records: CourseRecords; readonly unit: CourseUnitRecord }, Fault>> {
  const row = await desk.tx.get('courseUnit', id);
  if (row === null) return notFound('unit on the course');
  const taken = await takeSeenCourse(desk, row.course, seen);
  return taken.ok ? ok({ records: taken.value, unit: row }) : taken;
}

async function versionNumbers(desk: Desk, unit: UnitDocument['id']): Promise<readonly number[]> {
  return (await desk.tx.list('unitVersion', { where: { unit } })).map((v) => v.version);
}

/** Puts a unit at a place of its strand (null: last) and numbers the strand, and the one it came from, anew. */
async function placeInStrand(
  desk: Desk,
  records: CourseRecords,
  row: CourseUnitRecord,
  position: number | null,
): Promise<void> {
  const others = records.units.filter((u) => u.strand === row.strand && u.id !== row.id);
  const at = Math.min(position ?? others.length, others.length);
  const ordered = [...others.slice(0, at), row, ...others.slice(at)];
  for (const [place, unit] of ordered.entries())
    if (unit.id === row.id || unit.position !== place)
      await desk.tx.put('courseUnit', { ...unit, position: place });
  const cameFrom = records.units.find((u) => u.id === row.id);
  if (cameFrom !== undefined && cameFrom.strand !== row.strand)
    await renumber(desk, records, cameFrom.strand, row.id);
}

async function renumber(
  desk: Desk,
  records: CourseRecords,
  strand: StrandId,
  without: CourseUnitId,
): Promise<void> {
  const left = records.units.filter((u) => u.strand === strand && u.id !== without);
  for (const [place, unit] of left.entries())
    if (unit.position !== place) await desk.tx.put('courseUnit', { ...unit, position: place });
}

async function dropUnknownAsides(
  desk: Desk,
  records: CourseRecords,
  courseUnit: CourseUnitId,
  document: UnitDocument,
): Promise<readonly string[]> {
  const keys = new Set([...document.activities, ...document.extensions].map((a) => a.key));
  const gone = records.setAside.filter((a) => a.courseUnit === courseUnit && !keys.has(a.activity));
  for (const aside of gone) await desk.tx.remove('setAside', aside.id);
  return gone.map((a) => a.activity);
}

function findWindowFault(notBefore: PlainDate | null, notAfter: PlainDate | null): Fault | null {
  return notBefore !== null && notAfter !== null && notAfter < notBefore
    ? {
        kind: 'Invalid',
        field: 'notAfter',
        message: '“Not after” lies before “not before”. Swap or mend the days.',
      }
    : null;
}
