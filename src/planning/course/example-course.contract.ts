// A small invented course for tests and checks: skills, units and lessons by short hand.

import { addDays, type PlainDate } from '#core';
import type { Level, Skill, SkillId } from '../skill/skill.ts';
import type { Activity, UnitDocument, UnitId } from '../unit/unit.ts';
import type { CourseInput, CourseUnitInput, LessonInput, Work } from './course-input.ts';
import { defaultCourseSettings, defaultPacePrior } from './default-settings.ts';

export const firstDay = '2026-09-07' as PlainDate;
export const skillId = (name: string) => `skill:${name}` as SkillId;

/** `exampleSkill('answers', ['pulse'])`: a beginner's rhythm skill that rests on another. */
export function exampleSkill(
  name: string,
  restsOn: readonly string[] = [],
  rest: Partial<Skill> = {},
): Skill {
  return {
    id: skillId(name),
    title: `does ${name}`,
    area: 'rhythm',
    stage: 'beginner',
    description: `One hears ${name}.`,
    restsOn: restsOn.map(skillId),
    ongoing: false,
    ...rest,
  };
}

/** An activity of so many usual minutes that develops the named skills. */
export function exampleActivity(
  key: string,
  usual: number,
  develops: readonly string[],
  rest: Partial<Activity> = {},
): Activity {
  return {
    key,
    title: `Activity ${key}`,
    howTo: 'Play it together.',
    minutes: { shortest: Math.min(6, usual), usual, longest: usual * 2 },
    develops: develops.map(skillId),
    character: 'new',
    variants: [],
    materials: [],
    bring: [],
    ...rest,
  };
}

/** A unit of these activities; every skill they develop is checked at *with help* unless said otherwise. */
export function exampleUnit(
  name: string,
  activities: readonly Activity[],
  rest: Partial<UnitDocument> & { readonly checkLevel?: Exclude<Level, 0> } = {},
): UnitDocument {
  const { checkLevel = 2, ...fields } = rest;
  const skills = [...new Set(activities.flatMap((activity) => activity.develops))];
  return {
    format: 'levare-unit/1',
    id: `unit:${name}` as UnitId,
    version: 1,
    title: `Unit ${name}`,
    area: 'rhythm',
    goal: `play ${name}`,
    about: '',
    stages: ['beginner'],
    ages: { from: 5, to: 99 },
    families: [],
    skills,
    activities,
    extensions: [],
    checks: skills.map((skill, at) => ({
      key: `check-${at}`,
      skill,
      level: checkLevel,
      lookFor: 'It is there.',
    })),
    next: [],
    ...fields,
  };
}

/** A unit on a course, on a strand. */
export function onCourse(
  id: string,
  document: UnitDocument,
  strand = 'main',
  rest: Partial<CourseUnitInput> = {},
): CourseUnitInput {
  return { id, strand, document, notBefore: null, notAfter: null, ...rest };
}

/** So many weekly lessons of one length. */
export function weeklyLessons(
  count: number,
  minutes: number,
  from: PlainDate = firstDay,
): readonly LessonInput[] {
  return Array.from({ length: count }, (_, week) => {
    const date = addDays(from, 7 * week);
    return { id: `lesson:${date}`, date, minutes, barred: false };
  });
}

/** A logged piece of work; what it covered is what it took unless said otherwise. */
export function logged(
  courseUnit: string,
  activity: string,
  actual: number,
  outcome: Work['outcome'],
  covered = actual,
): Work {
  return { courseUnit, activity, actual, covered, outcome };
}

/** An adult beginner with nothing taught, one strand, no units and twelve weekly lessons of 45 minutes. */
export function exampleCourse(rest: Partial<CourseInput> = {}): CourseInput {
  return {
    course: 'course:example',
    today: firstDay,
    age: null,
    stage: 'beginner',
    skills: [],
    library: [],
    strands: [{ id: 'main', name: 'Main', priority: 1, deadline: null }],
    units: [],
    lessons: weeklyLessons(12, 45),
    taught: [],
    observations: [],
    pins: [],
    setAside: [],
    pacePrior: defaultPacePrior,
    settings: defaultCourseSettings,
    ...rest,
  };
}
