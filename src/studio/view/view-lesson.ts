// One lesson for teaching from: each segment with its how-to, its skills and what to look for, and what is at hand.

import { type LessonSegmentView, type LessonSkillView, type LessonView, suggestPractice } from '#contract';
import { formatReason, type Level, type Skill, type SkillId } from '#planning';
import { type CourseRecords, loadCourse, segmentsOf, studentsOn } from '../course/course-records.ts';
import { listAbsent, loadAbsent } from '../lesson/absence.ts';
import { numberLessons } from '../lesson/lesson-numbers.ts';
import { workOf } from '../lesson/work-segment.ts';
import type { LessonId, LessonRecord, SegmentRecord } from '../record/records.ts';
import type { Reader } from '../record/store.ts';
import { type CourseActivities, listCourseActivities } from './course-activity.ts';
import { latestLevels } from './latest-level.ts';
import { toLearnerView, toStrandViews } from './learner-view.ts';
import { toListenable } from './listenable-check.ts';
import { practiceLine } from './practice-line.ts';

/** The view of a lesson, or null when there is none of this id. */
export async function viewLesson(reader: Reader, id: LessonId): Promise<LessonView | null> {
  const row = await reader.get('lesson', id);
  const records = row === null ? null : await loadCourse(reader, row.course);
  const lesson = records?.lessons.find((l) => l.id === id);
  if (records === null || lesson === undefined) return null;
  const { course, learner, lessons } = records;
  const skills = new Map((await reader.list('skill')).map((s) => [s.id, s]));
  const activities = listCourseActivities(course, learner, records.units, lesson.date);
  const segments = segmentsOf(records, id);
  const given = lessons.filter((l) => l.status === 'planned' || l.status === 'taught');
  const previous = lessons.findLast((l) => l.status === 'taught' && isBefore(l, lesson)) ?? null;
  const next = lessons.find((l) => l.status === 'planned' && isBefore(lesson, l)) ?? null;
  const shown = { records, lesson, skills, activities, levels: latestLevels(records.observations), previous };
  const absentById = await loadAbsent(reader, learner, [lesson, ...(previous === null ? [] : [previous])]);
  const segmentViews = segments.map((s) => toSegment(s, shown));
  return {
    id,
    course: course.id,
    courseRevision: course.revision,
    learner: toLearnerView(course, learner, lesson.date),
    number: numberLessons(lessons).get(id) ?? 1 + given.filter((l) => isBefore(l, lesson)).length,
    date: lesson.date,
    time: lesson.time,
    minutes: lesson.minutes,
    status: lesson.status,
    reason: lesson.reason,
    overrun: lesson.overrun,
    note: lesson.note,
    practice: lesson.practice,
    toKnow: studentsOn(learner.students, lesson.date).flatMap(({ id: student, name, note }) =>
      note.trim() === '' ? [] : [{ student, name, note }],
    ),
    absent: listAbsent(lesson, absentById),
    strands: toStrandViews(course),
    segments: segmentViews,
    ongoing: lesson.ongoing.flatMap((skill) => {
      const found = skills.get(skill);
      return found === undefined ? [] : [{ skill, title: found.title, description: found.description }];
    }),
    previous:
      previous === null
        ? null
        : {
            lesson: previous.id,
            date: previous.date,
            note: previous.note,
            practice: previous.practice,
            absent: listAbsent(previous, absentById),
          },
    next: next === null ? null : { lesson: next.id, date: next.date, time: next.time },
    onHand: listOnHand(records, lesson, activities),
    kept: await listKept(reader, id),
    suggestedPractice: suggestPractice(segmentViews),
  };
}

/** In the order in which they were kept. */
async function listKept(reader: Reader, lesson: LessonId): Promise<LessonView['kept']> {
  const rows = await reader.list('lessonMaterial', { where: { lesson }, orderBy: ['keptAt'] });
  return rows.map(({ id, title, spec, seed }) => ({ id, title, spec, seed }));
}

interface Shown {
  readonly records: CourseRecords;
  readonly lesson: LessonRecord;
  readonly skills: ReadonlyMap<SkillId, Skill>;
  readonly activities: CourseActivities;
  readonly levels: ReadonlyMap<SkillId, Level>;
  readonly previous: LessonRecord | null;
}

function toSegment(segment: SegmentRecord, shown: Shown): LessonSegmentView {
  const found = shown.activities.ofSegment(segment);
  const isRevisit = segment.kind === 'revisit';
  const skills = isRevisit
    ? segment.skill === null
      ? []
      : [segment.skill]
    : (found?.activity.develops ?? (segment.kind === 'recap' ? recapSkills(shown) : []));
  return {
    id: segment.id,
    key: segment.key,
    kind: segment.kind,
    title: segment.title,
    start: segment.start,
    minutes: segment.minutes,
    strand: segment.strand,
    courseUnit: segment.courseUnit,
    unitTitle: found?.unit.document.title ?? '',
    activity: segment.activity,
    howTo: howTo(segment, shown, found?.activity.howTo ?? ''),
    bring: isRevisit ? [] : (found?.activity.bring ?? []),
    materials: (found?.activity.materials ?? []).map(({ key, title, spec, seed, takeHome }) => ({
      key,
      title,
      spec: spec ?? null,
      seed: seed ?? null,
      takeHome: takeHome ?? null,
    })),
    skills: skills.map((skill) => toSkill(skill, shown)),
    completes: segment.completes,
    pinned: segment.pinned,
    reasons: segment.reasons.map((reason) =>
      formatReason(reason, { skillTitle: (id) => shown.skills.get(id)?.title ?? id }),
    ),
    seconds: segment.seconds,
    outcome: segment.outcome,
    covered: segment.covered,
    note: segment.note,
    practice: practiceLine(segment, shown.activities, shown.skills),
  };
}

function toSkill(skill: SkillId, shown: Shown): LessonSkillView {
  const checks = shown.activities.checksOf(skill);
  const here = shown.records.observations.findLast((o) => o.lesson === shown.lesson.id && o.skill === skill);
  const description = shown.skills.get(skill)?.description ?? '';
  return {
    skill,
    title: shown.skills.get(skill)?.title ?? skill,
    level: shown.levels.get(skill) ?? null,
    here: here === undefined ? null : { observation: here.id, level: here.level },
    // Where no unit of the course checks it, "with help" is where one moves on.
    wanted: checks[0]?.level ?? 2,
    lookFor: checks.length > 0 ? checks.map((c) => c.lookFor) : description === '' ? [] : [description],
    listenable: checks.flatMap((check) => toListenable(check, shown.skills.get(skill)?.title ?? skill)),
  };
}

/** What was worked on in the lesson before, which the recap takes up. */
function recapWork({ records, previous }: Shown): readonly SegmentRecord[] {
  if (previous === null) return [];
  return segmentsOf(records, previous.id).filter(
    (s) => workOf(s) !== null && s.outcome !== null && s.outcome !== 'skipped',
  );
}

const recapSkills = (shown: Shown): readonly SkillId[] => [
  ...new Set(recapWork(shown).flatMap((s) => shown.activities.ofSegment(s)?.activity.develops ?? [])),
];

function howTo(segment: SegmentRecord, shown: Shown, activity: string): string {
  if (segment.kind === 'revisit') {
    const checks = segment.skill === null ? [] : shown.activities.checksOf(segment.skill);
    const described = segment.skill === null ? '' : (shown.skills.get(segment.skill)?.description ?? '');
    return [
      'Ask for it without help first; only then remind.',
      ...(checks.length > 0 ? checks.map((c) => c.lookFor) : [described]),
    ]
      .filter((line) => line !== '')
      .join('\n\n');
  }
  if (segment.kind === 'recap') {
    const lines = recapWork(shown).map((s) => `- ${s.title}`);
    const practice = shown.previous?.practice.trim() ?? '';
    return [
      lines.length > 0 ? `From last time:\n${lines.join('\n')}` : '',
      practice === '' ? '' : `Practice that was set:\n\n${linesToList(practice)}`,
    ]
      .filter((part) => part !== '')
      .join('\n\n');
  }
  return activity;
}

/** One line a task, as a Markdown list. */
const linesToList = (text: string): string =>
  text
    .split('\n')
    .filter((line) => line.trim() !== '')
    .map((line) => `- ${line.replace(/^\s*[-–*]\s*/, '')}`)
    .join('\n');

/** Most "next" activities offered. */
const mostNext = 3;

function listOnHand(
  records: CourseRecords,
  lesson: LessonRecord,
  activities: CourseActivities,
): LessonView['onHand'] {
  const here = new Set(segmentsOf(records, lesson.id).map((s) => `${s.courseUnit} ${s.activity}`));
  const finished = new Set<string>();
  for (const l of records.lessons)
    if (l.status === 'taught')
      for (const s of segmentsOf(records, l.id))
        if (s.outcome === 'finished' && workOf(s) !== null) finished.add(`${s.courseUnit} ${s.activity}`);
  const onHand: LessonView['onHand'][number][] = [];
  const offer = (kind: 'extension' | 'setAside' | 'next', work: { courseUnit: string; activity: string }) => {
    const key = `${work.courseUnit} ${work.activity}`;
    const found = activities.all.find((a) => `${a.unit.id} ${a.activity.key}` === key);
    if (found === undefined || here.has(key) || finished.has(key)) return;
    here.add(key);
    onHand.push({
      courseUnit: found.unit.id,
      activity: found.activity.key,
      title: found.activity.title,
      minutes: found.activity.minutes.shortest,
      kind,
    });
  };
  for (const aside of records.setAside) offer('setAside', aside);
  for (const later of records.lessons) {
    if (later.status !== 'planned' || !isBefore(lesson, later)) continue;
    for (const s of segmentsOf(records, later.id)) {
      const work = workOf(s);
      if (work !== null && s.kind === 'work' && onHand.filter((o) => o.kind === 'next').length < mostNext)
        offer('next', work);
    }
  }
  // Extensions of units that have begun, here or before.
  const begun = new Set(
    records.lessons
      .filter((l) => l.status === 'taught' || l.id === lesson.id)
      .flatMap((l) => segmentsOf(records, l.id).map((s) => s.courseUnit)),
  );
  for (const a of activities.all)
    if (a.isExtension && begun.has(a.unit.id))
      offer('extension', { courseUnit: a.unit.id, activity: a.activity.key });
  return onHand;
}

const isBefore = (a: LessonRecord, b: LessonRecord): boolean =>
  a.date < b.date || (a.date === b.date && a.time < b.time);
