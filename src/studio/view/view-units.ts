// The library: one row for each unit, and one unit in full.

import type { UnitRow, UnitView } from '#contract';
import { createSkillMap, formatUnitFinding, type SkillId, type UnitId, validateUnit } from '#planning';
import { unitVersionId } from '../command/unit-rows.ts';
import { loadLearner } from '../course/course-records.ts';
import type { UnitRecord } from '../record/records.ts';
import type { Reader } from '../record/store.ts';

/** All units by title, retired ones last. */
export async function viewUnits(reader: Reader): Promise<{ readonly units: readonly UnitRow[] }> {
  const units = await reader.list('unit', { orderBy: ['title'] });
  const used = new Map<UnitId, number>();
  for (const { unit } of await reader.list('courseUnit')) used.set(unit, (used.get(unit) ?? 0) + 1);
  const rows = units.map(
    ({ id, version, retired, document }): UnitRow => ({
      id,
      version,
      title: document.title,
      area: document.area,
      goal: document.goal,
      stages: document.stages,
      ages: document.ages,
      usualMinutes: document.activities.reduce((sum, a) => sum + a.minutes.usual, 0),
      activities: document.activities.length,
      usedBy: used.get(id) ?? 0,
      retired,
    }),
  );
  return { units: [...rows.filter((r) => !r.retired), ...rows.filter((r) => r.retired)] };
}

/** One unit, in its newest version or an earlier one; null when there is none. */
export async function viewUnit(reader: Reader, id: UnitId, version?: number): Promise<UnitView | null> {
  const newest = await reader.get('unit', id);
  if (newest === null) return null;
  const document =
    version === undefined || version === newest.version
      ? newest.document
      : (await reader.get('unitVersion', unitVersionId(id, version)))?.document;
  if (document === undefined) return null;
  const skills = await reader.list('skill');
  const skillsById = new Map(skills.map((s) => [s.id, s]));
  const library = await reader.list('unit', { orderBy: ['title'] });
  return {
    document,
    versions: (await reader.list('unitVersion', { where: { unit: id } }))
      .map((v) => ({ version: v.version, savedAt: v.savedAt }))
      .sort((a, b) => b.version - a.version),
    usedBy: await listUsers(reader, id),
    findings: validateUnit(document, skillsById).map((f) => formatUnitFinding(f, skillsById)),
    ...listNeighbours(newest, library, skills),
  };
}

async function listUsers(reader: Reader, unit: UnitId): Promise<UnitView['usedBy']> {
  const users: UnitView['usedBy'][number][] = [];
  for (const courseUnit of await reader.list('courseUnit', { where: { unit } })) {
    const course = await reader.get('course', courseUnit.course);
    if (course === null) continue;
    const { name } = await loadLearner(reader, course);
    users.push({
      courseUnit: courseUnit.id,
      course: course.id,
      learner: name,
      version: courseUnit.unitVersion,
    });
  }
  return users;
}

/** Units that teach what this one rests on, and units that rest on what it teaches. */
function listNeighbours(
  { id, document }: UnitRecord,
  library: readonly UnitRecord[],
  skills: Parameters<typeof createSkillMap>[0],
): Pick<UnitView, 'before' | 'after'> {
  const map = createSkillMap(skills);
  if (!map.ok) return { before: [], after: [] };
  const developedBy = (unit: UnitRecord) => new Set(unit.document.activities.flatMap((a) => a.develops));
  // Only the nearest: what the unit's skills rest on directly, not all the way down.
  const direct = (of: ReadonlySet<SkillId>) =>
    new Set([...of].flatMap((s) => map.value.skillsById.get(s)?.restsOn ?? []).filter((s) => !of.has(s)));
  const own = new Set(document.activities.flatMap((a) => a.develops));
  const rests = direct(own);
  const others = library.filter((u) => u.id !== id && !u.retired);
  const row = (u: UnitRecord) => ({ unit: u.id, title: u.title });
  return {
    before: others.filter((u) => [...developedBy(u)].some((s) => rests.has(s))).map(row),
    after: others
      .filter((u) => document.next.includes(u.id) || [...direct(developedBy(u))].some((s) => own.has(s)))
      .map(row),
  };
}
