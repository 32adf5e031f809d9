// One day's lessons in order: what each holds, what to set up, and what wants a decision.

import type { DayLesson, DayView } from '#contract';
import { addDays, addMinutes, type PlainDate } from '#core';
import { formatDay } from '#planning';
import { findSpan } from '../calendar/lesson-dates.ts';
import { type Learner, loadLearner } from '../course/course-records.ts';
import { listAbsent, loadAbsent } from '../lesson/absence.ts';
import { numberLessons } from '../lesson/lesson-numbers.ts';
import type {
  CourseId,
  CourseRecord,
  CourseUnitRecord,
  LessonId,
  LessonRecord,
  SegmentRecord,
} from '../record/records.ts';
import type { Reader } from '../record/store.ts';
import { listCourseActivities } from './course-activity.ts';
import { toLearnerView } from './learner-view.ts';
import type { ViewOutside } from './view-studio.ts';

/** The view of a day. */
export async function viewDay(reader: Reader, date: PlainDate, { clock }: ViewOutside): Promise<DayView> {
  const lessons = await reader.list('lesson', { where: { date }, orderBy: ['time'] });
  const now = { today: clock.today(), time: clock.time() };
  const setUp = new Map<string, LessonId[]>();
  const shown: DayLesson[] = [];
  for (const lesson of lessons) {
    const loaded = await loadDayLesson(reader, lesson);
    if (loaded === null) continue;
    shown.push(toDayLesson(loaded, now));
    for (const item of itemsToSetUp(loaded)) setUp.set(item, [...(setUp.get(item) ?? []), lesson.id]);
  }
  return {
    date,
    holiday: findSpan(await reader.list('holiday'), date)?.name ?? null,
    lessons: shown,
    setUp: [...setUp].map(([item, ids]) => ({ item, lessons: ids })),
    before: await nearestDay(reader, date, -1),
    after: await nearestDay(reader, date, 1),
  };
}

interface LoadedLesson {
  readonly lesson: LessonRecord;
  readonly course: CourseRecord;
  readonly learner: Learner;
  /** All lessons of its course, by date and time. */
  readonly lessons: readonly LessonRecord[];
  readonly segments: readonly SegmentRecord[];
  readonly units: readonly CourseUnitRecord[];
  readonly absentById: Awaited<ReturnType<typeof loadAbsent>>;
}

async function loadDayLesson(reader: Reader, lesson: LessonRecord): Promise<LoadedLesson | null> {
  const course = await reader.get('course', lesson.course);
  if (course === null) return null;
  const where: { readonly course: CourseId } = { course: course.id };
  const learner = await loadLearner(reader, course);
  const lessons = await reader.list('lesson', { where, orderBy: ['date', 'time'] });
  return {
    lesson,
    course,
    learner,
    lessons,
    absentById: await loadAbsent(reader, learner, lessons),
    segments: await reader.list('segment', { where: { lesson: lesson.id }, orderBy: ['position'] }),
    units: await reader.list('courseUnit', { where }),
  };
}

interface Now {
  readonly today: PlainDate;
  readonly time: LessonRecord['time'];
}

function toDayLesson(loaded: LoadedLesson, now: Now): DayLesson {
  const { lesson, course, learner, lessons, segments, absentById } = loaded;
  const strands = new Map<string, CourseRecord['strands'][number]>(course.strands.map((s) => [s.id, s]));
  const previous = lessons.findLast((l) => l.status === 'taught' && isBefore(l, lesson));
  return {
    id: lesson.id,
    course: course.id,
    learner: toLearnerView(course, learner, lesson.date),
    // A lesson that is not given has the number that it would have had.
    number:
      numberLessons(lessons).get(lesson.id) ??
      1 +
        lessons.filter((l) => isBefore(l, lesson) && (l.status === 'planned' || l.status === 'taught'))
          .length,
    time: lesson.time,
    minutes: lesson.minutes,
    status: lesson.status,
    reason: lesson.reason,
    segments: segments.map((s) => ({
      kind: s.kind,
      title: s.title,
      minutes: s.minutes,
      ink: s.strand === null ? null : (strands.get(s.strand)?.ink ?? null),
    })),
    overrun: lesson.overrun,
    decisions: listDecisions(loaded, now),
    wantsUnit: wantsUnit(loaded),
    lastNote: previous?.note ?? '',
    absent: listAbsent(lesson, absentById),
    lastAbsent: previous === undefined ? [] : listAbsent(previous, absentById),
  };
}

/** Sentences that want a decision, most pressing first. */
function listDecisions({ lesson, course, lessons, segments }: LoadedLesson, now: Now): readonly string[] {
  const decisions: string[] = [];
  if (lesson.status === 'planned') {
    const over =
      lesson.date < now.today ||
      (lesson.date === now.today &&
        addMinutes(lesson.time, lesson.minutes) <= now.time &&
        lesson.time < now.time);
    if (over) decisions.push('Not closed yet: say what was reached, and the plan follows.');
    for (const earlier of lessons)
      if (earlier.status === 'planned' && earlier.date < now.today && isBefore(earlier, lesson))
        decisions.push(`The lesson of ${formatDay(earlier.date)} is not closed yet.`);
    if (wantsUnit({ lesson, segments }))
      decisions.push('No new work is planned: give the course a unit, or use the open time.');
    if (lesson.overrun > course.settings.overrun + 0.01)
      decisions.push(
        `Likely to run over: ${Math.round(lesson.overrun * 100)}% against the ${Math.round(course.settings.overrun * 100)}% you allow.`,
      );
  }
  const isMoved = course.moved.some((m) => m.from?.date === lesson.date || m.to?.date === lesson.date);
  if (isMoved && lesson.status === 'planned' && lesson.date >= now.today)
    decisions.push('Its plan moved: look at what changed.');
  return decisions;
}

/** Whether a lesson still to be taught, and not kept free, has nothing new to work on. */
function wantsUnit({ lesson, segments }: Pick<LoadedLesson, 'lesson' | 'segments'>): boolean {
  return (
    lesson.status === 'planned' &&
    !lesson.barred &&
    segments.length > 0 &&
    segments.every((segment) => segment.kind !== 'work')
  );
}

/** What the lesson's activities ask to bring, print or set up. */
function itemsToSetUp({ lesson, course, learner, units, segments }: LoadedLesson): readonly string[] {
  if (lesson.status !== 'planned' && lesson.status !== 'taught') return [];
  const activities = listCourseActivities(course, learner, units, lesson.date);
  const items = segments.flatMap((s) => {
    const found = s.kind === 'revisit' ? null : activities.ofSegment(s);
    return found === null ? [] : [...found.activity.bring, ...found.activity.materials.map((m) => m.title)];
  });
  return [...new Set(items)];
}

const isBefore = (a: LessonRecord, b: LessonRecord): boolean =>
  a.date < b.date || (a.date === b.date && a.time < b.time);

/** Most lessons lie within a month; only beyond it is the whole calendar searched. */
const nearDays = 31;

async function nearestDay(reader: Reader, date: PlainDate, direction: 1 | -1): Promise<PlainDate | null> {
  const next = addDays(date, direction);
  const far = addDays(date, direction * nearDays);
  const near = direction === 1 ? { from: next, to: far } : { from: far, to: next };
  const all = direction === 1 ? { from: next } : { to: next };
  for (const span of [near, all]) {
    const lessons = await reader.list('lesson', { range: { column: 'date', ...span }, orderBy: ['date'] });
    const held = lessons.filter((l) => l.status === 'planned' || l.status === 'taught');
    const found = direction === 1 ? held[0] : held.at(-1);
    if (found !== undefined) return found.date;
  }
  return null;
}
