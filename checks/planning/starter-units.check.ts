// The twelve starter units on real courses: what is not ready says by what way it becomes ready, and that way works.
// Our own library; no outside source.

import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { PlainDate } from '#core';
import { addDays } from '#core';
import {
  type CourseInput,
  defaultCourseSettings,
  defaultPacePrior,
  formatLeftOut,
  formatNotReady,
  formatReason,
  planCourse,
  readSkillMapText,
  readUnitText,
  type Stage,
  type UnitDocument,
  type UnitId,
} from '#planning';

const folder = new URL('../../library/', import.meta.url);
const read = (path: string) => readFileSync(new URL(path, folder), 'utf8');
const units = readdirSync(new URL('units/', folder)).flatMap((name): UnitDocument[] => {
  const file = readUnitText(read(`units/${name}`), 'yaml');
  return file.ok ? [file.value.unit] : [];
});
const map = readSkillMapText(read('skills.yaml'), 'yaml');
const skills = map.ok ? map.value : [];
const today = '2026-09-07' as PlainDate;

const course = (
  documents: readonly UnitDocument[],
  stage: Stage,
  age: number,
  minutes: number,
): CourseInput => ({
  course: 'course:starter',
  today,
  age,
  stage,
  skills,
  library: units,
  strands: [{ id: 'one', name: 'One', priority: 1, deadline: null }],
  units: documents.map((document) => ({
    id: `cu-${document.id}`,
    strand: 'one',
    document,
    notBefore: null,
    notAfter: null,
  })),
  lessons: Array.from({ length: 20 }, (_, week) => ({
    id: `lesson:${week}`,
    date: addDays(today, 7 * week),
    minutes,
    barred: false,
  })),
  taught: [],
  observations: [],
  pins: [],
  setAside: [],
  pacePrior: defaultPacePrior,
  settings: defaultCourseSettings,
});

test('the library is there', () => {
  expect(units.length).toBeGreaterThanOrEqual(12);
  expect(skills.length).toBeGreaterThanOrEqual(60);
});

for (const unit of units)
  for (const stage of unit.stages)
    test(`${unit.title}, ${stage}`, { timeout: 60_000 }, () => {
      const age = Math.max(unit.ages.from, 10);
      const alone = planCourse(course([unit], stage, age, 45), null, { steps: 1000 });
      expect(alone.cycles).toEqual([]);
      const way = new Set<UnitId>(alone.notReady.flatMap((entry) => entry.way));
      for (const entry of alone.notReady) expect(entry.way, formatNotReady(entry)).not.toEqual([]);
      const before = units.filter((other) => way.has(other.id));
      const plan = planCourse(course([...before, unit], stage, age, 45), null, { steps: 1000 });
      expect(plan.notReady.map((entry) => formatNotReady(entry))).toEqual([]);
      for (const left of plan.leftOut)
        expect(left.why.kind, formatLeftOut(left)).toMatch(/noRoom|afterLeftOut/);
      const work = plan.lessons.flatMap((lesson) => lesson.segments.filter((s) => s.kind === 'work'));
      expect(work.length).toBeGreaterThan(0);
      for (const segment of work.filter((s) => s.completes))
        expect(segment.reasons.map((reason) => formatReason(reason)).join(' ')).not.toBe('');
    });
