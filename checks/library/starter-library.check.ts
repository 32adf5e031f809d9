import { describe, expect, test } from 'vitest';
import {
  type Activity,
  applyVariant,
  areas,
  formatUnitFinding,
  readUnitText,
  stages,
  type UnitDocument,
  unitToMarkdown,
  validateUnit,
  writeUnitYaml,
} from '#planning';
import { readLibraryFile, starterMap, starterSkills, starterUnits } from './starter-library.ts';

const units = starterUnits.map((one) => one.unit);
const allActivities = (unit: UnitDocument): readonly Activity[] => [...unit.activities, ...unit.extensions];
const developedBy = (unit: UnitDocument) => new Set(allActivities(unit).flatMap((one) => one.develops));
const developedInCore = (unit: UnitDocument) => new Set(unit.activities.flatMap((one) => one.develops));

describe('the skill map', () => {
  test('holds 90 to 120 skills, 6 to 10 of them ongoing, over all areas and stages', () => {
    expect(starterSkills.length).toBeGreaterThanOrEqual(90);
    expect(starterSkills.length).toBeLessThanOrEqual(120);
    const ongoing = starterSkills.filter((skill) => skill.ongoing);
    expect(ongoing.length).toBeGreaterThanOrEqual(6);
    expect(ongoing.length).toBeLessThanOrEqual(10);
    expect(new Set(starterSkills.map((skill) => skill.area))).toEqual(new Set(areas));
    expect(new Set(starterSkills.map((skill) => skill.stage))).toEqual(new Set(stages));
  });

  test('never lets a skill rest on one that is met at a later stage', () => {
    const rank = (id: (typeof starterSkills)[number]['id']) =>
      stages.indexOf(starterMap.skillsById.get(id)?.stage ?? 'advanced');
    const wrong = starterSkills.flatMap((skill) =>
      skill.restsOn
        .filter((id) => rank(id) > rank(skill.id))
        .map((id) => `${skill.id} rests on the later ${id}`),
    );
    expect(wrong).toEqual([]);
  });

  test('names no link twice over: none rests on what a neighbour already rests on', () => {
    const spare = starterSkills.flatMap((skill) =>
      skill.restsOn
        .filter((id) =>
          skill.restsOn.some((other) => other !== id && starterMap.restsOnAll(other).includes(id)),
        )
        .map((id) => `${skill.id} need not name ${id}`),
    );
    expect(spare).toEqual([]);
  });

  test('holds no skill that no unit teaches: each is developed by an activity or reinforced in every lesson', () => {
    const developed = new Set(units.flatMap((unit) => [...developedBy(unit)]));
    const orphans = starterSkills.filter((skill) => !skill.ongoing && !developed.has(skill.id));
    expect(orphans.map((skill) => skill.id)).toEqual([]);
  });

  test('has no two titles alike', () => {
    expect(new Set(starterSkills.map((skill) => skill.title)).size).toBe(starterSkills.length);
  });
});

describe('the twelve units', () => {
  test('are twelve, over every area and stage, for six-year-olds and adults', () => {
    expect(units.length).toBe(12);
    expect(new Set(units.map((unit) => unit.area))).toEqual(new Set(areas));
    expect(new Set(units.flatMap((unit) => unit.stages))).toEqual(new Set(stages));
    expect(Math.min(...units.map((unit) => unit.ages.from))).toBe(6);
    expect(units.every((unit) => unit.ages.to === 99)).toBe(true);
    expect(new Set(units.map((unit) => unit.id)).size).toBe(12);
  });

  test.each(starterUnits)('$name is named after its id and has no findings', ({ name, unit }) => {
    expect(`${unit.id}.yaml`).toBe(`unit:${name}`);
    expect(
      validateUnit(unit, starterMap.skillsById).map((one) => formatUnitFinding(one, starterMap.skillsById)),
    ).toEqual([]);
    expect(unit.next.filter((id) => !units.some((other) => other.id === id))).toEqual([]);
  });

  test.each(starterUnits)('$name reads back the same after writing', ({ unit }) => {
    expect(readUnitText(writeUnitYaml({ unit, skills: [] }), 'yaml')).toEqual({
      ok: true,
      value: { unit, skills: [] },
    });
    const page = unitToMarkdown(unit, starterMap.skillsById);
    for (const activity of allActivities(unit)) expect(page).toContain(activity.howTo);
  });

  test.each(starterUnits)('$name has the size of a unit of work', ({ unit }) => {
    expect(unit.activities.length).toBeGreaterThanOrEqual(5);
    expect(unit.activities.length).toBeLessThanOrEqual(10);
    expect(unit.extensions.length).toBeGreaterThanOrEqual(1);
    expect(unit.extensions.length).toBeLessThanOrEqual(3);
    expect(unit.checks.length).toBeGreaterThanOrEqual(3);
    expect(unit.checks.length).toBeLessThanOrEqual(7);
    const usual = unit.activities.map((activity) => activity.minutes.usual);
    expect(Math.min(...usual)).toBeGreaterThanOrEqual(6);
    expect(Math.max(...usual)).toBeLessThanOrEqual(25);
    const total = usual.reduce((sum, minutes) => sum + minutes, 0);
    expect(total).toBeGreaterThanOrEqual(60);
    expect(total).toBeLessThanOrEqual(140);
    expect(unit.checks.some((check) => check.level === 3)).toBe(true);
    expect(
      allActivities(unit)
        .flatMap((one) => one.variants)
        .filter((one) => one.howTo !== undefined).length,
    ).toBeGreaterThanOrEqual(2);
  });

  // A child of eight is taught otherwise, not only for fewer minutes. Common practice, no source.
  test.each(starterUnits)('$name has no variant that changes the minutes only', ({ unit }) => {
    const empty = allActivities(unit).flatMap((activity) =>
      activity.variants
        .filter((one) => one.howTo === undefined && one.materials === undefined)
        .map((one) => `${activity.key} ${one.ages?.from ?? ''} ${one.stages ?? ''}`),
    );
    expect(empty).toEqual([]);
  });

  test.each(starterUnits)('$name speaks to children otherwise in most of its activities', ({ unit }) => {
    const age = Math.max(unit.ages.from, 7);
    if (age >= 9) return;
    const told = unit.activities.filter((activity) =>
      unit.stages
        .filter((stage) => stage === 'beginner' || stage === 'elementary')
        .every((stage) => applyVariant(activity, { stage, age }).howTo !== activity.howTo),
    );
    expect(told.length / unit.activities.length).toBeGreaterThanOrEqual(0.6);
  });

  // A teacher's voice to a child, and the parent who is there: common practice, no source.
  test('every area has a unit for a beginner of seven', () => {
    const open = units.filter((unit) => unit.stages.includes('beginner') && unit.ages.from <= 7);
    expect(new Set(open.map((unit) => unit.area))).toEqual(new Set(areas));
  });

  test.each(starterUnits)('$name ends in something shown, with the musical work last', ({ unit }) => {
    const last = unit.activities.at(-1);
    expect(last?.character).toBe('musical');
    expect(last?.howTo).toMatch(/listener|perform|record|for someone|another plays|next student/i);
  });
});

/** Places of the activities that one at `at` waits for: those before it on the same skills or on what they rest on. */
function waitsFor(unit: UnitDocument, at: number): ReadonlySet<number> {
  const skills = (unit.activities[at]?.develops ?? []).filter(
    (id) => starterMap.skillsById.get(id)?.ongoing === false,
  );
  const needed = new Set(skills.flatMap((id) => [id, ...(starterMap.skillsById.get(id)?.restsOn ?? [])]));
  const direct = unit.activities
    .slice(0, at)
    .flatMap((one, i) => (one.develops.some((id) => needed.has(id)) ? [i] : []));
  return new Set(direct.flatMap((i) => [i, ...waitsFor(unit, i)]));
}

describe('the units as a path', () => {
  // The planner keeps to prerequisites, not to the listed order: a concert must wait for what is played there.
  test.each(starterUnits)('$name cannot end before most of it was taught', ({ unit }) => {
    const last = unit.activities.length - 1;
    const free = unit.activities.filter((_, i) => i < last && !waitsFor(unit, last).has(i));
    expect(free.map((one) => one.key).length, free.map((one) => one.key).join(', ')).toBeLessThanOrEqual(3);
  });

  test('two or three need nothing, the others rest on skills that other units teach', () => {
    const free = units.filter((unit) => starterMap.missingFor(unit, () => false).length === 0);
    expect(free.length).toBeGreaterThanOrEqual(2);
    expect(free.length).toBeLessThanOrEqual(3);
    for (const unit of units) {
      const taught = new Set(
        units.filter((other) => other !== unit).flatMap((other) => [...developedInCore(other)]),
      );
      const beyond = starterMap.missingFor(unit, () => false).filter((id) => !taught.has(id));
      expect(beyond, unit.id).toEqual([]);
    }
  });

  test('taken one by one as they become ready, all twelve can be taught', () => {
    const has = new Set<string>();
    const waiting = new Set(units);
    for (let progress = true; progress; ) {
      progress = false;
      for (const unit of waiting)
        if (starterMap.missingFor(unit, (id) => has.has(id)).length === 0) {
          for (const id of developedInCore(unit)) has.add(id);
          waiting.delete(unit);
          progress = true;
        }
    }
    expect([...waiting].map((unit) => unit.id)).toEqual([]);
  });
});

// COMMON PRACTICE, no source: reference data lesson_shapes.activity_minutes_by_age, as [to age, most minutes at a stretch].
const mostAtAStretch = [
  [6, 4],
  [9, 7],
  [12, 10],
  [17, 15],
  [99, 20],
] as const;

test.each(starterUnits)('$name: the least useful time fits what each age can sit through', ({ unit }) => {
  // Who is intermediate is eight or more: common practice, no source.
  for (const activity of allActivities(unit))
    for (const stage of unit.stages)
      for (
        let age = Math.max(unit.ages.from, stages.indexOf(stage) >= 2 ? 8 : 0);
        age <= unit.ages.to;
        age++
      ) {
        const { minutes } = applyVariant(activity, { stage, age });
        const most = mostAtAStretch.find(([to]) => age <= to)?.[1] ?? 0;
        expect(minutes.shortest, `${activity.key} at ${age}`).toBeLessThanOrEqual(most);
        // The longest stretch is about as many minutes as years, 5 to 20 (common practice, no source); the usual time
        // must split into stretches between the shortest and that.
        const longest = Math.min(20, Math.max(5, age));
        const stretches = Math.ceil(minutes.usual / longest);
        expect(stretches * minutes.shortest, `${activity.key} at ${age} in ${stretches}`).toBeLessThanOrEqual(
          minutes.usual,
        );
      }
});

test('the README tells the truth about the library', () => {
  const readme = readLibraryFile('README.md').replaceAll(/ +\|/g, ' |');
  expect(readme).toContain(`${starterSkills.length} skills`);
  for (const unit of units) {
    const usual = unit.activities.reduce((sum, activity) => sum + activity.minutes.usual, 0);
    expect(readme).toMatch(
      new RegExp(`\\| ${unit.title} \\| ${unit.area} \\|[^|]*\\| ${unit.ages.from} \\| ${usual} \\|`),
    );
  }
  const example = /```yaml\n([\s\S]*?)```/.exec(readme)?.[1] ?? '';
  const read = readUnitText(example, 'yaml');
  expect(read.ok && validateUnit(read.value.unit, starterMap.skillsById)).toEqual([]);
});
