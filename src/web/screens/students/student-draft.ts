// A student as the form holds them, half filled in, and the step from there to commands.

import { type CommandOf, isLessonLength, type Step, type StudentView } from '#contract';
import { ageOn, type Id, isDate, isTime, type PlainDate, type Weekday, weekdays } from '#core';
import { findInstrument, type InstrumentId } from '#music';
import type { Stage } from '#planning';
import { words } from '../../words/index.ts';
import { listContacts, type SiblingParts, siblingCommands } from './sibling-draft.ts';

const form = words.students.form;

export interface InstrumentDraft {
  /** '' while nothing is chosen. */
  readonly instrument: InstrumentId | '';
  readonly stage: Stage;
}

export interface CourseDraft {
  readonly open: boolean;
  /** Of a student's several the one it is for; '' for the first. */
  readonly instrument: InstrumentId | '';
  readonly strands: readonly string[];
  /** '' for lessons by arrangement. */
  readonly weekday: '' | `${Weekday}`;
  readonly time: string;
  readonly minutes: string;
  readonly starts: string;
}

export interface StudentDraft extends SiblingParts {
  readonly born: string;
  readonly birthYear: string;
  readonly since: string;
  readonly instruments: readonly InstrumentDraft[];
  readonly note: string;
  readonly course: CourseDraft;
}

/** A course about to be opened from `starts` on. */
export function newCourseDraft(open: boolean, starts: PlainDate): CourseDraft {
  return {
    open,
    instrument: '',
    strands: words.students.defaultStrands,
    weekday: '',
    time: '',
    minutes: '30',
    starts,
  };
}

/** A new student, with a course to open. */
export function newStudentDraft(today: PlainDate): StudentDraft {
  return {
    name: '',
    born: '',
    birthYear: '',
    since: today,
    instruments: [{ instrument: '', stage: 'beginner' }],
    siblings: [],
    family: null,
    contacts: [],
    note: '',
    course: newCourseDraft(true, today),
  };
}

/** A student already here, to be changed. */
export function draftOfStudent(student: StudentView, today: PlainDate): StudentDraft {
  return {
    name: student.name,
    born: student.born ?? '',
    birthYear: student.birthYear === null ? '' : String(student.birthYear),
    since: student.since,
    instruments:
      student.instruments.length > 0 ? student.instruments : [{ instrument: '', stage: 'beginner' }],
    siblings: student.family?.siblings ?? [],
    family: student.family,
    contacts: [
      ...(student.family?.contacts ?? []).map((contact) => ({ ...contact, shared: true })),
      ...student.contacts.map((contact) => ({ ...contact, shared: false })),
    ],
    note: student.note,
    course: { ...newCourseDraft(false, today), instrument: withoutCourse(student) },
  };
}

/** The first instrument that no course of the student's own is for; '' where each has one. */
function withoutCourse({ instruments, courses }: StudentView): InstrumentId | '' {
  const taught = new Set(courses.filter((c) => c.group === null).map((c) => c.instrumentName));
  return instruments.find((i) => !taught.has(findInstrument(i.instrument)?.name ?? ''))?.instrument ?? '';
}

export type DraftFaults = Readonly<
  Partial<
    Record<'name' | 'born' | 'birthYear' | 'instruments' | 'strands' | 'time' | 'minutes' | 'course', string>
  >
>;

function isYear(text: string, today: PlainDate): boolean {
  return /^\d{4}$/.test(text) && Number(text) >= 1900 && Number(text) <= Number(today.slice(0, 4));
}

/** What is wrong with the course part; `{}` when it can be opened or is not wanted. */
export function findCourseFaults(course: CourseDraft): DraftFaults {
  if (!course.open) return {};
  return {
    ...(course.strands.some((s) => s.trim() !== '') ? {} : { strands: form.strandMissing }),
    ...(course.weekday === '' || isTime(course.time) ? {} : { time: form.timeMissing }),
    ...(course.weekday === '' || isLessonLength(Number(course.minutes))
      ? {}
      : { minutes: form.minutesWrong }),
  };
}

/** What is wrong with the form, field by field; `{}` when it can be sent. */
export function findDraftFaults(draft: StudentDraft, today: PlainDate): DraftFaults {
  const chosen = draft.instruments.map((i) => i.instrument).filter((i) => i !== '');
  return {
    ...(draft.name.trim() === '' ? { name: form.nameMissing } : {}),
    ...(draft.born !== '' && (!isDate(draft.born) || draft.born > today) ? { born: form.bornWrong } : {}),
    ...(draft.born === '' && draft.birthYear !== '' && !isYear(draft.birthYear, today)
      ? { birthYear: form.yearWrong }
      : {}),
    ...(new Set(chosen).size < chosen.length ? { instruments: form.twice } : {}),
    ...(draft.course.open && chosen.length === 0 ? { course: form.instrumentMissing } : {}),
    ...findCourseFaults(draft.course),
  };
}

/** Whether the draft is of someone under 18, as far as it says; unknown counts as under age. */
export function mayBeMinor(draft: Pick<StudentDraft, 'born' | 'birthYear'>, today: PlainDate): boolean {
  if (isDate(draft.born)) return ageOn(draft.born, today) < 18;
  if (isYear(draft.birthYear, today)) return Number(today.slice(0, 4)) - Number(draft.birthYear) <= 18;
  return true;
}

/** Ids to use, minted outside. */
export type MintId = <Prefix extends string>(prefix: Prefix) => Id<Prefix>;

/** The student record a draft without faults stands for; `family` is the one they are in already. */
function draftToStudent(
  draft: StudentDraft,
  id: Id<'student'>,
  family: Id<'family'> | null,
  today: PlainDate,
): CommandOf<'student.add'>['student'] {
  const born = isDate(draft.born) ? draft.born : null;
  return {
    id,
    name: draft.name.trim(),
    born,
    birthYear: born === null && draft.birthYear !== '' ? Number(draft.birthYear) : null,
    instruments: draft.instruments.flatMap(({ instrument, stage }) =>
      instrument === '' ? [] : [{ instrument, stage }],
    ),
    family: draft.siblings.length === 0 ? null : family,
    contacts: listContacts(draft, false),
    note: draft.note,
    since: isDate(draft.since) ? draft.since : today,
  };
}

/** The command that opens a course for a student or a group, with its weekly time where there is one. */
export function courseToOpen(
  course: CourseDraft,
  who: { readonly student: Id<'student'> | null; readonly group: Id<'group'> | null },
  plays: { readonly instrument: InstrumentId; readonly stage: Stage },
  today: PlainDate,
  mint: MintId,
): CommandOf<'course.open'> {
  const inks = [0, 1, 2, 3] as const;
  const names = course.strands.map((name) => name.trim()).filter((name) => name !== '');
  return {
    type: 'course.open',
    course: {
      id: mint('course'),
      ...who,
      ...plays,
      strands: names.map((name, n) => ({
        id: mint('strand'),
        name,
        ink: inks[n % 4] ?? 0,
        priority: Math.min(9, n + 1),
        deadline: null,
      })),
    },
    slot: draftToSlot(course, today, mint),
  };
}

/** The weekly lesson that a draft names; null by arrangement. */
export function draftToSlot(
  { weekday, time, minutes, starts }: Pick<CourseDraft, 'weekday' | 'time' | 'minutes' | 'starts'>,
  today: PlainDate,
  mint: MintId,
): CommandOf<'course.open'>['slot'] {
  const day = weekdays.find((one) => String(one) === weekday);
  return day === undefined || !isTime(time)
    ? null
    : {
        id: mint('slot'),
        weekday: day,
        time,
        minutes: Number(minutes),
        starts: isDate(starts) ? starts : today,
        ends: null,
      };
}

/** All that a draft without faults asks for: the student added or changed, and a course opened where wanted. */
export function draftToCommands(
  draft: StudentDraft,
  known: StudentView | null,
  today: PlainDate,
  mint: MintId,
): readonly Step[] {
  const student = draftToStudent(draft, known?.id ?? mint('student'), known?.family?.id ?? null, today);
  const first: Step = known
    ? { type: 'student.change', seen: known.revision, student }
    : { type: 'student.add', student };
  const plays =
    student.instruments.find((i) => i.instrument === draft.course.instrument) ?? student.instruments[0];
  const steps = [first, ...siblingCommands(draft, student.id, known, () => mint('family'))];
  if (!draft.course.open || !plays) return steps;
  return [...steps, courseToOpen(draft.course, { student: student.id, group: null }, plays, today, mint)];
}

/** Names of instruments without what only matters to their key and clef. `shortInstrument('tuba')` → `Tuba` */
export function shortInstrument(id: InstrumentId): string {
  return (findInstrument(id)?.name ?? id).replace(/ \(.*\)$/, '');
}
