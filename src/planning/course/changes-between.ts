// What happened between two states of one course, as the context in which its moves are explained. For whoever has both
// states at hand: what-if, tests, the demo studio.

import type { CourseInput, CourseUnitInput } from './course-input.ts';
import type { MoveContext } from './course-plan.ts';

/** Compares two states of one course; `after` is the later one. */
export function changesBetween(before: CourseInput, after: CourseInput): MoveContext {
  const ids = (list: readonly { readonly id: string }[]) => new Set(list.map((item) => item.id));
  const taughtBefore = ids(before.taught);
  const taughtAfter = ids(after.taught);
  const lessonsAfter = new Map(after.lessons.map((lesson) => [lesson.id, lesson]));
  const seen = new Set(before.observations.map((o) => JSON.stringify(o)));
  return {
    gone: before.lessons.map((l) => l.id).filter((id) => !lessonsAfter.has(id) && !taughtAfter.has(id)),
    taught: after.taught.filter((lesson) => !taughtBefore.has(lesson.id)),
    observed: after.observations.filter((o) => !seen.has(JSON.stringify(o))),
    byHand: [
      ...differing(before.pins, after.pins).map((pin) =>
        pin.kind === 'revisit'
          ? { skill: pin.skill }
          : { courseUnit: pin.courseUnit, activity: pin.activity },
      ),
      ...differing(before.setAside, after.setAside).map(({ courseUnit, activity }) => ({
        courseUnit,
        activity,
      })),
      ...differing(before.units, after.units).flatMap(activitiesOf),
      ...before.lessons.flatMap((lesson) => {
        const now = lessonsAfter.get(lesson.id);
        const same = now === undefined || (now.barred === lesson.barred && now.minutes === lesson.minutes);
        return same ? [] : [{ lesson: lesson.id }];
      }),
    ],
  };
}

/** What stands in only one of two lists. */
function differing<T>(a: readonly T[], b: readonly T[]): readonly T[] {
  const key = (item: T) => JSON.stringify(item);
  const inA = new Set(a.map(key));
  const inB = new Set(b.map(key));
  return [...a.filter((item) => !inB.has(key(item))), ...b.filter((item) => !inA.has(key(item)))];
}

const activitiesOf = (unit: CourseUnitInput) =>
  [...unit.document.activities, ...unit.document.extensions].map(({ key }) => ({
    courseUnit: unit.id,
    activity: key,
  }));
