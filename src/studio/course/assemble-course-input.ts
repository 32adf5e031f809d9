// From the records of a course to what planning asks for. Lessons that wait to be closed count as if they went as
// planned (rule R-UNCLOSED), so that the plan does not jump while a teacher has not yet pressed "close".

import type { PlainDate } from '#core';
import type {
  CourseInput,
  Level,
  LevelObservation,
  PacePrior,
  Pin,
  Skill,
  TaughtLesson,
  UnitDocument,
  Work,
} from '#planning';
import { expectedPace, reckonCovered, usualMinutesLeft } from '../lesson/reckon.ts';
import { workOf } from '../lesson/work-segment.ts';
import type { LessonRecord, ObservationRecord, SegmentRecord } from '../record/records.ts';
import { ageOfLearner, type CourseRecords, isSettled, segmentsOf } from './course-records.ts';

export interface LibraryRecords {
  readonly skills: readonly Skill[];
  readonly units: readonly UnitDocument[];
  readonly pacePrior: PacePrior;
}

/** What planning needs to know of a course on a day. */
export function assembleCourseInput(
  records: CourseRecords,
  library: LibraryRecords,
  today: PlainDate,
): CourseInput {
  const { course, units } = records;
  const open = records.lessons.filter(
    (l) => l.status === 'planned' && l.date >= today && !isSettled(records, l, today),
  );
  return {
    course: course.id,
    today,
    age: ageOfLearner(records.learner.students, today),
    stage: course.stage,
    skills: library.skills,
    library: library.units,
    strands: course.strands.map(({ id, name, priority, deadline }) => ({ id, name, priority, deadline })),
    units: units.map(({ id, strand, document, notBefore, notAfter }) => ({
      id,
      strand,
      document,
      notBefore,
      notAfter,
    })),
    lessons: open.map(({ id, date, minutes, barred }) => ({ id, date, minutes, barred })),
    taught: listTaught(records, today),
    observations: listObservations(records.observations),
    pins: open.flatMap((lesson) => segmentsOf(records, lesson.id).flatMap((s) => pinOf(lesson, s))),
    setAside: records.setAside.map(({ courseUnit, activity, since, backFrom }) => ({
      courseUnit,
      activity,
      since,
      backFrom,
    })),
    pacePrior: library.pacePrior,
    settings: course.settings,
  };
}

/** Taught lessons with their work, and lessons waiting to be closed as if all went as planned. */
function listTaught(records: CourseRecords, today: PlainDate): readonly TaughtLesson[] {
  const taught: TaughtLesson[] = [];
  for (const lesson of records.lessons) {
    if (lesson.status === 'taught')
      taught.push(taughtLesson(lesson, segmentsOf(records, lesson.id).flatMap(workDone), records));
    else if (isSettled(records, lesson, today))
      taught.push(taughtLesson(lesson, assumedWork(records, lesson, taught), records));
  }
  return taught;
}

/** One taught lesson as planning sees it. */
export function taughtLesson(
  lesson: LessonRecord,
  work: readonly Work[],
  records: CourseRecords,
): TaughtLesson {
  const revisited = segmentsOf(records, lesson.id).flatMap((s) =>
    s.kind === 'revisit' &&
    s.skill !== null &&
    (lesson.status === 'taught' ? s.outcome !== null && s.outcome !== 'skipped' : true)
      ? [s.skill]
      : [],
  );
  return { id: lesson.id, date: lesson.date, minutes: lesson.minutes, work, revisited };
}

/** The work a closed segment stands for; none when it was skipped or covered nothing. */
export function workDone(segment: SegmentRecord): readonly Work[] {
  const { outcome, covered } = segment;
  const work = workOf(segment);
  if (work === null || outcome === null || outcome === 'skipped') return [];
  if (outcome !== 'finished' && !((covered ?? 0) > 0) && !((segment.seconds ?? 0) > 0)) return [];
  // Without a clock there is nothing to learn of pace: no minutes.
  return [{ ...work, actual: (segment.seconds ?? 0) / 60, covered: covered ?? 0, outcome }];
}

function assumedWork(
  records: CourseRecords,
  lesson: LessonRecord,
  before: readonly TaughtLesson[],
): readonly Work[] {
  const pace = expectedPace(records);
  const work: Work[] = [];
  for (const segment of segmentsOf(records, lesson.id)) {
    const of = workOf(segment);
    if (of === null || segment.outcome === 'skipped') continue;
    const left = usualMinutesLeft(records, of, [...before.flatMap((t) => t.work), ...work]);
    if (left === null) continue;
    const outcome = segment.outcome ?? (segment.completes ? 'finished' : 'partly');
    // Nothing said yet: all of the chunk.
    const share = segment.outcome === null ? 1 : null;
    const covered = segment.covered ?? reckonCovered({ segment: { ...segment, outcome }, left, pace, share });
    work.push({ ...of, actual: 0, covered, outcome });
  }
  return work;
}

function pinOf(lesson: LessonRecord, segment: SegmentRecord): readonly Pin[] {
  if (!segment.pinned) return [];
  const { skill, minutes } = segment;
  if (segment.kind === 'revisit')
    return skill === null ? [] : [{ kind: 'revisit', lesson: lesson.id, skill, minutes }];
  const work = workOf(segment);
  return work === null ? [] : [{ kind: 'activity', lesson: lesson.id, ...work, minutes }];
}

/** Levels by day; where members of a group differ on one day, the group stands where the lowest of them does. */
function listObservations(observations: readonly ObservationRecord[]): readonly LevelObservation[] {
  const lowest = new Map<string, LevelObservation>();
  const levelByPerson = new Map<string, Level>();
  for (const { skill, date, level, student } of observations) {
    // A second level for the same person on the same day corrects the first.
    levelByPerson.set(`${skill} ${date} ${student ?? ''}`, level);
  }
  for (const { skill, date, student } of observations) {
    const level = levelByPerson.get(`${skill} ${date} ${student ?? ''}`) ?? 0;
    const key = `${skill} ${date}`;
    const known = lowest.get(key);
    if (known === undefined || level < known.level) lowest.set(key, { skill, date, level });
  }
  return [...lowest.values()];
}
