// The library: units saved, retired and brought in from files; the skill map, which stays free of rings.

import type { Fault } from '#contract';
import { err, ok, type Result } from '#core';
import { createSkillMap, formatSkillMapFault, type Skill, type UnitDocument } from '#planning';
import { isSameRow } from '../record/same-row.ts';
import { formatCount, formatList } from '../sentence/amounts.ts';
import { addMissingSkills } from './add-missing-skills.ts';
import { type Desk, type Handler, takeCourse, touchCourse } from './desk.ts';
import { changedElsewhere, invalid, notAllowed, notFound } from './fault.ts';
import { readDocument } from './read-document.ts';
import { unitRows } from './unit-rows.ts';

export const saveUnit: Handler<'unit.save'> = async (desk, { seenVersion, document }) => {
  const { tx } = desk;
  const read = readDocument(document);
  if (!read.ok) return read;
  const unit = read.value;
  const now = await tx.get('unit', unit.id);
  if (!desk.imagining && (now?.version ?? 0) !== seenVersion)
    return now === null
      ? notFound('unit in the library')
      : changedElsewhere(tx, 'unit', unit.id, `The unit “${now.title}”`);
  await saveVersion(desk, unit, now?.retired ?? false);
  return ok(now === null ? `Added the unit “${unit.title}”` : `Saved the unit “${unit.title}”`);
};

export const retireUnit: Handler<'unit.retire'> = async (desk, { unit: id, retired }) => {
  const unit = await desk.tx.get('unit', id);
  if (unit === null) return notFound('unit');
  await desk.tx.put('unit', { ...unit, retired });
  return ok(retired ? `Retired the unit “${unit.title}”` : `Brought back the unit “${unit.title}”`);
};

export const importUnits: Handler<'unit.import'> = async (desk, { units, skills }) => {
  const { tx } = desk;
  if (units.length === 0 && skills.length === 0)
    return invalid('units', 'The file holds no units and no skills.');
  const documents: UnitDocument[] = [];
  for (const [at, given] of units.entries()) {
    const read = readDocument(given);
    if (!read.ok) return err({ ...read.error, field: `units[${at}]` });
    if (documents.some((d) => d.id === read.value.id))
      return invalid(`units[${at}]`, `The unit “${read.value.title}” is in the file twice.`);
    documents.push(read.value);
  }
  const merged = await mergeSkills(desk, skills);
  if (!merged.ok) return merged;
  for (const skill of merged.value) await tx.put('skill', skill);
  let same = 0;
  for (const document of documents) {
    const now = await tx.get('unit', document.id);
    if (now !== null && isSameRow({ ...now.document, version: 0 }, { ...document, version: 0 })) same++;
    else await saveVersion(desk, document, now?.retired ?? false);
  }
  if (same > 0)
    desk.notices.push(
      `${formatCount(same, 'unit')} in the file ${same === 1 ? 'is' : 'are'} in the library already, word for word.`,
    );
  if (merged.value.length > 0) await replanAll(desk);
  return ok(
    `Imported ${formatCount(documents.length, 'unit')} and ${formatCount(merged.value.length, 'new skill')}`,
  );
};

export const putSkill: Handler<'skill.put'> = async (desk, { skill: given }) => {
  const { tx } = desk;
  const skill = withDescription(given);
  const all = await tx.list('skill');
  const known = all.find((s) => s.id === skill.id);
  const fault = findMapFault([...all.filter((s) => s.id !== skill.id), skill]);
  if (fault !== null) return err({ ...fault, field: 'skill.restsOn' });
  await takeAll(desk);
  await tx.put('skill', skill);
  const changesPlans =
    known === undefined ||
    known.ongoing !== skill.ongoing ||
    known.stage !== skill.stage ||
    !isSameRow(known.restsOn, skill.restsOn);
  if (changesPlans) touchAll(desk);
  return ok(known === undefined ? `Added the skill “${skill.title}”` : `Changed the skill “${skill.title}”`);
};

export const removeSkill: Handler<'skill.remove'> = async (desk, { skill: id }) => {
  const { tx } = desk;
  const skill = await tx.get('skill', id);
  if (skill === null) return notFound('skill');
  const resting = (await tx.list('skill')).filter((s) => s.restsOn.includes(id));
  if (resting.length > 0)
    return notAllowed(
      `${formatList(resting.map((s) => `“${s.title}”`))} rest on it. Take those links off first.`,
    );
  const inUnits = (await tx.list('unit')).filter((u) => u.document.skills.includes(id));
  if (inUnits.length > 0)
    return notAllowed(
      `${formatList(inUnits.map((u) => `“${u.title}”`))} teach it. Take it out of the units first.`,
    );
  const onCourses = (await tx.list('courseUnit')).filter((u) => u.document.skills.includes(id));
  const levels = await tx.list('observation', { where: { skill: id } });
  const revisits = await tx.list('segment', { where: { skill: id } });
  if (onCourses.length + levels.length + revisits.length > 0)
    return notAllowed(`“${skill.title}” is in use on courses, and what was noted of it stays on record.`);
  await tx.remove('skill', id);
  return ok(`Removed the skill “${skill.title}”`);
};

/** The document becomes the library's newest copy; earlier versions, and copies on courses, stay as they are. */
async function saveVersion(desk: Desk, unit: UnitDocument, retired: boolean): Promise<void> {
  await addMissingSkills(desk, unit);
  const versions = await desk.tx.list('unitVersion', { where: { unit: unit.id } });
  const newest = Math.max(0, ...versions.map((v) => v.version));
  const rows = unitRows(unit, newest + 1, desk.outside.clock.instant(), retired);
  await desk.tx.put('unit', rows.unit);
  await desk.tx.put('unitVersion', rows.version);
}

/** The skills that are new; refused when one is defined differently here, or when the map would get a ring. */
async function mergeSkills(desk: Desk, skills: readonly Skill[]): Promise<Result<readonly Skill[], Fault>> {
  const all = await desk.tx.list('skill');
  const byId = new Map(all.map((s) => [s.id, s]));
  const added: Skill[] = [];
  const conflicts: string[] = [];
  for (const skill of skills) {
    const known = byId.get(skill.id) ?? added.find((s) => s.id === skill.id);
    if (known === undefined) added.push(withDescription(skill));
    else conflicts.push(...findSkillConflict(known, skill));
  }
  if (conflicts.length > 0)
    desk.notices.push(
      `${formatCount(conflicts.length, 'skill')} in the file differ from yours; yours were kept: ${formatList(conflicts, 4)}.`,
    );
  const fault = findMapFault([...all, ...added]);
  return fault === null ? ok(added) : err({ ...fault, field: 'skills' });
}

/** A skill that travels in a file must say something of itself. */
const withDescription = (skill: Skill): Skill =>
  skill.description.trim() === '' ? { ...skill, description: 'Not described yet.' } : skill;

function findSkillConflict(mine: Skill, theirs: Skill): readonly string[] {
  const sets = (s: Skill) => ({ ...s, restsOn: [...s.restsOn].sort() });
  return isSameRow(sets(mine), sets(theirs)) ? [] : [`“${mine.title}”`];
}

function findMapFault(skills: readonly Skill[]): Fault | null {
  const map = createSkillMap(skills);
  if (map.ok) return null;
  const sentences = map.error.map((f) => formatSkillMapFault(f, skills));
  return {
    kind: 'Invalid',
    message: sentences[0] ?? 'The skill map does not hold together.',
    details: sentences.slice(0, 20),
  };
}

async function takeAll(desk: Desk): Promise<void> {
  for (const course of await desk.tx.list('course'))
    if (course.ended === null || course.ended >= desk.today) await takeCourse(desk, course.id);
}

function touchAll(desk: Desk): void {
  for (const id of desk.inHand.keys()) touchCourse(desk, id);
}

async function replanAll(desk: Desk): Promise<void> {
  await takeAll(desk);
  touchAll(desk);
}
