// Random courses for laws and timing: any shape that the types allow, from a seed.

import { addDays, type PlainDate, type Random, randomInteger, stages } from '#core';
import { type Area, areas, type Level, type Skill } from '../skill/skill.ts';
import type { Activity } from '../unit/unit.ts';
import type { CourseInput, CourseUnitInput, LessonInput, Pin, TaughtLesson } from './course-input.ts';
import {
  exampleActivity,
  exampleCourse,
  exampleSkill,
  exampleUnit,
  firstDay,
  logged,
  onCourse,
  skillId,
  weeklyLessons,
} from './example-course.contract.ts';

export interface RandomCourseSize {
  readonly lessons: number;
  readonly strands: number;
  readonly units: number;
  /** Whether lessons were taught, and pins, barred lessons, days and set-aside work occur. */
  readonly history: boolean;
}

/** A course of about this size. */
export function randomCourse(random: Random, size: RandomCourseSize): CourseInput {
  const int = (low: number, high: number) => randomInteger(random, low, high);
  const chance = (share: number) => random.next() < share;
  const pick = <T>(list: readonly T[]): T => list[int(0, list.length - 1)] as T;

  const skills: Skill[] = [];
  const units: CourseUnitInput[] = [];
  const strands = Array.from({ length: size.strands }, (_, i) => ({
    id: `strand-${i}`,
    name: `Strand ${i}`,
    priority: i + 1,
    deadline: size.history && chance(0.2) ? addDays(firstDay, int(10, 7 * size.lessons)) : null,
  }));
  const lastOfArea = new Map<Area, string>();
  for (let u = 0; u < size.units; u++) {
    const area = pick(areas);
    const names: string[] = [];
    for (let s = 0; s < int(2, 5); s++) {
      const name = `s${u}-${s}`;
      const base = names.length > 0 && chance(0.7) ? pick(names) : lastOfArea.get(area);
      skills.push(
        exampleSkill(name, base !== undefined && chance(0.6) ? [base] : [], {
          area,
          stage: chance(0.9) ? 'beginner' : pick(stages),
          ongoing: chance(0.1),
        }),
      );
      names.push(name);
    }
    lastOfArea.set(area, names.at(-1) ?? '');
    const activity = (key: string): Activity => {
      const usual = int(4, 35);
      return exampleActivity(key, usual, chance(0.7) ? [pick(names)] : [pick(names), pick(names)], {
        minutes: { shortest: int(2, Math.min(10, usual)), usual, longest: usual + int(0, 30) },
        character: pick(['new', 'hard', 'easy', 'musical'] as const),
        variants: chance(0.3)
          ? [{ ages: { from: 5, to: 9 }, minutes: { shortest: 3, usual: int(4, 15), longest: 20 } }]
          : [],
      });
    };
    const document = exampleUnit(
      `unit-${u}`,
      Array.from({ length: int(1, 6) }, (_, i) => activity(`a${i}`)),
      {
        area,
        skills: names.map(skillId),
        extensions: chance(0.4) ? [activity('x0')] : [],
        checkLevel: chance(0.8) ? 2 : 3,
      },
    );
    units.push(
      onCourse(`cu-${u}`, document, pick(strands).id, {
        notBefore: size.history && chance(0.1) ? addDays(firstDay, int(0, 60)) : null,
        notAfter: size.history && chance(0.1) ? addDays(firstDay, int(0, 90)) : null,
      }),
    );
  }

  const minutes = pick([20, 30, 30, 45, 45, 60]);
  const before = size.history ? int(0, 6) : 0;
  const all = weeklyLessons(before + size.lessons, minutes);
  const lessons: readonly LessonInput[] = all
    .slice(before)
    .map((lesson) => ({ ...lesson, barred: size.history && chance(0.08) }));
  const work = units.flatMap((unit) => unit.document.activities.map((activity) => ({ unit, activity })));
  const taught: readonly TaughtLesson[] = all.slice(0, before).map(({ id, date }) => ({
    id,
    date,
    minutes,
    work: Array.from({ length: int(0, 3) }, () => {
      const { unit, activity } = pick(work);
      const covered = int(1, activity.minutes.usual);
      return logged(unit.id, activity.key, int(1, covered * 2), chance(0.4) ? 'finished' : 'partly', covered);
    }),
    revisited: chance(0.3) ? [pick(skills).id] : [],
  }));
  const observations = taught.flatMap(({ date }) =>
    Array.from({ length: int(0, 3) }, () => ({ skill: pick(skills).id, date, level: int(0, 4) as Level })),
  );
  const pins: readonly Pin[] = size.history
    ? Array.from({ length: int(0, 2) }, (): Pin => {
        const { unit, activity } = pick(work);
        const lesson = pick(lessons).id;
        return chance(0.7)
          ? { kind: 'activity', lesson, courseUnit: unit.id, activity: activity.key, minutes: int(2, 20) }
          : { kind: 'revisit', lesson, skill: pick(skills).id, minutes: int(2, 5) };
      })
    : [];
  const today = all[before]?.date ?? firstDay;
  const aside = size.history && chance(0.3) ? [pick(work)] : [];
  return exampleCourse({
    course: 'course:random',
    today,
    age: chance(0.3) ? null : int(5, 80),
    stage: chance(0.7) ? 'beginner' : pick(stages),
    skills,
    library: chance(0.5) ? units.map((unit) => unit.document) : [],
    strands,
    units,
    lessons,
    taught,
    observations,
    pins,
    setAside: aside.map(({ unit, activity }) => ({
      courseUnit: unit.id,
      activity: activity.key,
      since: today,
      backFrom: chance(0.5) ? (addDays(today, int(0, 50)) as PlainDate) : null,
    })),
  });
}
