// A first lesson as its row holds it, half filled in, and the step from there to commands.

import { type CourseRow, isLessonLength, type Step, type TermView, type UnitRow } from '#contract';
import { addMinutes, isTime, minutesOf, type PlainDate, type PlainTime, type Weekday } from '#core';
import type { InstrumentId } from '#music';
import type { Stage } from '#planning';
import type { Waiting } from '../../components/find-waiting.ts';
import { words } from '../../words/index.ts';
import { strandFor } from '../student/strand-for.ts';
import { courseToOpen, draftToSlot, type MintId, newCourseDraft } from './student-draft.ts';

const form = words.students.form;

export interface FirstLesson {
  /** '' while nothing is chosen; of a course that is there already it plays no part. */
  readonly instrument: InstrumentId | '';
  readonly stage: Stage;
  /** '' for not yet, `open` for lessons by arrangement. */
  readonly weekday: '' | 'open' | `${Weekday}`;
  readonly time: string;
  readonly minutes: string;
  /** The id of a unit; '' for not yet. */
  readonly unit: string;
}

export function newFirstLesson({ student, course }: Waiting): FirstLesson {
  const plays = student?.instruments[0];
  return {
    instrument: course?.instrument ?? plays?.instrument ?? '',
    stage: course?.stage ?? plays?.stage ?? 'beginner',
    weekday: '',
    time: '',
    minutes: '30',
    unit: '',
  };
}

/** Whether anything was chosen. */
export const isBegun = ({ weekday, unit }: FirstLesson): boolean => weekday !== '' || unit !== '';

export type FirstLessonFaults = Readonly<Partial<Record<'instrument' | 'time' | 'minutes', string>>>;

const isDay = (weekday: FirstLesson['weekday']): weekday is `${Weekday}` =>
  weekday !== '' && weekday !== 'open';

/** What is wrong with a row, field by field; `{}` when it can be sent or is left open. */
export function findFirstLessonFaults(lesson: FirstLesson): FirstLessonFaults {
  if (!isBegun(lesson)) return {};
  return {
    ...(lesson.instrument === '' ? { instrument: form.instrumentMissing } : {}),
    ...(isDay(lesson.weekday) && !isTime(lesson.time) ? { time: form.timeMissing } : {}),
    ...(isDay(lesson.weekday) && !isLessonLength(Number(lesson.minutes))
      ? { minutes: form.minutesWrong }
      : {}),
  };
}

/** A lesson that stands in the week, saved or about to be. */
export interface Stand {
  readonly name: string;
  readonly weekday: string;
  readonly time: PlainTime;
  readonly minutes: number;
  /** Ids of the students who come. */
  readonly who: readonly string[];
}

export const weekToStands = (week: TermView['week']): readonly Stand[] =>
  week.map(({ learner, students, weekday, time, minutes }) => ({
    name: learner,
    who: students,
    weekday: String(weekday),
    time,
    minutes,
  }));

/** Where a row stands in the week; null while it says no time. */
export function lessonToStand(
  { name, student }: Pick<Waiting, 'name' | 'student'>,
  { weekday, time, minutes }: FirstLesson,
): Stand | null {
  const length = Number(minutes);
  const who = student ? [student.id] : [];
  return isDay(weekday) && isTime(time) && length > 0 ? { name, who, weekday, time, minutes: length } : null;
}

/** The time at which the day's last lesson ends; '' for a day that has none, or is over by then. */
export function nextFree(weekday: string, stands: readonly Stand[]): PlainTime | '' {
  const ends = stands.filter((s) => s.weekday === weekday).map((s) => minutesOf(s.time) + s.minutes);
  const last = Math.max(0, ...ends);
  return last === 0 || last >= 24 * 60 ? '' : addMinutes('00:00' as PlainTime, last);
}

/** The first of `stands` that shares a minute with this one; null where none does. */
export function findClash(own: Stand, stands: readonly Stand[]): Stand | null {
  const from = minutesOf(own.time);
  return (
    stands.find(
      (s) =>
        s.weekday === own.weekday &&
        from < minutesOf(s.time) + s.minutes &&
        minutesOf(s.time) < from + own.minutes,
    ) ?? null
  );
}

/** Whether a unit suits this stage and age; an unknown age leaves it to the stage. */
export const isFitting = (unit: UnitRow, stage: Stage, age: number | null): boolean =>
  unit.stages.includes(stage) && (age === null || (unit.ages.from <= age && age <= unit.ages.to));

/** What a row without faults asks for: a course opened or given a time, and its first unit. */
export function firstLessonToCommands(
  { student, course }: Waiting,
  lesson: FirstLesson,
  units: readonly UnitRow[],
  today: PlainDate,
  mint: MintId,
): readonly Step[] {
  if (!isBegun(lesson)) return [];
  const { weekday, time, minutes, instrument, stage, unit } = lesson;
  const draft = {
    ...newCourseDraft(true, today),
    weekday: isDay(weekday) ? weekday : ('' as const),
    time,
    minutes,
  };
  const commands: Step[] = [];
  let held: Pick<CourseRow, 'id' | 'revision' | 'strands'> | null = course;
  if (course === null) {
    if (student === null || instrument === '') return [];
    const open = courseToOpen(
      draft,
      { student: student.id, group: null },
      { instrument, stage },
      today,
      mint,
    );
    commands.push(open);
    held = { id: open.course.id, revision: 0, strands: open.course.strands };
  } else {
    const slot = draftToSlot(draft, today, mint);
    if (slot) commands.push({ type: 'slot.put', seen: course.revision, course: course.id, slot });
  }
  const chosen = units.find(({ id }) => id === unit);
  const strand = held && chosen && strandFor(held, chosen);
  if (held && chosen && strand)
    commands.push({
      type: 'courseUnit.give',
      seen: held.revision,
      course: held.id,
      courseUnit: mint('course-unit'),
      unit: chosen.id,
      strand: strand.id,
    });
  return commands;
}
