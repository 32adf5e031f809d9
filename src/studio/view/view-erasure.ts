// What erasing a student would come to, and where their name stands in what is not theirs.

import type { ErasureView, MentionView } from '#contract';
import { formatDay } from '#planning';
import { loadLearner } from '../course/course-records.ts';
import type { NameFound } from '../erase/erase-names.ts';
import { coursesOfGroups } from '../erase/find-traces.ts';
import { type Mention, planErasure } from '../erase/plan-erasure.ts';
import type { CourseId, LessonId, StudentId, TableName, Tables } from '../record/records.ts';
import type { Reader } from '../record/store.ts';

/** The view of an erasure, without what lies beside the studio; null when there is no such student. */
export async function viewErasure(
  reader: Reader,
  id: StudentId,
  called: readonly string[],
): Promise<Omit<ErasureView, 'copies'> | null> {
  const student = await reader.get('student', id);
  const erasure = student === null ? null : await planErasure(reader, { student: id, called, keep: [] });
  if (student === null || erasure === null) return null;
  const { traces, removes, words } = erasure;
  const goes = (table: TableName) => removes.filter((one) => one.table === table);
  const going = new Set(goes('lesson').map((one) => one.id));
  const lessons = (await reader.list('lesson')).filter((lesson) => going.has(lesson.id));
  const takes = await reader.list('take', { where: { student: id } });
  const groups = await reader.list('group');
  return {
    student: id,
    revision: student.revision,
    name: student.name,
    courses: goes('course').length,
    lessonsTaught: lessons.filter(({ status }) => status === 'taught').length,
    lessonsPlanned: lessons.filter(({ status }) => status === 'planned').length,
    levels: goes('observation').length,
    takes: takes.length,
    sounds: takes.filter(({ sound }) => sound !== null).length,
    groupsThatStay: traces.shared.map(({ name }) => name),
    groupsThatGo: groups.filter((group) => traces.groups.has(group.id)).map(({ name }) => name),
    ids: removes
      .filter(({ table }) => table === 'lesson' || table === 'segment' || table === 'courseUnit')
      .map((one) => one.id),
    words: words.map(({ text }) => text),
    mentions: await listMentions(reader, erasure.mentions, await coursesOfGroups(reader, traces.shared)),
  };
}

/** Tables in which people are written of. What is in others, units and days off, is more often a word than a name. */
const ofPeople: ReadonlySet<TableName> = new Set<TableName>([
  'student',
  'family',
  'group',
  'event',
  'lesson',
  'segment',
  'observation',
  'consent',
  'take',
  'lessonMaterial',
]);

async function listMentions(
  reader: Reader,
  mentions: readonly Mention[],
  sharedCourses: readonly { readonly id: CourseId }[],
): Promise<readonly MentionView[]> {
  const shared = new Set<string>(sharedCourses.map(({ id }) => id));
  const byPlace = new Map<string, Mention[]>();
  for (const mention of mentions)
    byPlace.set(mention.place, [...(byPlace.get(mention.place) ?? []), mention]);
  const views: MentionView[] = [];
  for (const [place, [first, ...others]] of byPlace) {
    if (first === undefined) continue;
    const texts = new Map([first, ...others].map((one) => [one.text, excerptOf(one)]));
    views.push({
      place,
      where: await describePlace(reader, first),
      texts: [...texts.values()].slice(0, mostTexts),
      isSure: isSure(first.found) && (ofPeople.has(first.table) || isOfShared(first, shared)),
    });
  }
  return views;
}

/** Versions and copies of a unit say much the same. */
const mostTexts = 4;

const isSure = (found: readonly NameFound[]): boolean => found.some(({ word }) => !word.isShared);

const isOfShared = ({ row }: Mention, shared: ReadonlySet<string>): boolean =>
  'course' in row && shared.has(String(row.course));

const aroundName = 60;

function excerptOf({ text, found: [first] }: Mention): MentionView['texts'][number] {
  const at = first?.at ?? 0;
  const end = first?.end ?? 0;
  const from = Math.max(0, at - aroundName);
  const to = Math.min(text.length, end + aroundName);
  return {
    before: `${from > 0 ? '… ' : ''}${text.slice(from, at)}`,
    name: text.slice(at, end),
    after: `${text.slice(end, to)}${to < text.length ? ' …' : ''}`,
  };
}

async function describePlace(reader: Reader, { table, row }: Mention): Promise<string> {
  const lessonOf = async (id: LessonId): Promise<string> => {
    const lesson = await reader.get('lesson', id);
    if (lesson === null) return 'A lesson';
    return `${await learnerOf(lesson.course)}’s lesson of ${formatDay(lesson.date)}`;
  };
  const learnerOf = async (id: CourseId): Promise<string> => {
    const course = await reader.get('course', id);
    return course === null ? 'A student' : (await loadLearner(reader, course)).name;
  };
  const of = <T extends TableName>(_: T) => row as unknown as Tables[T]; // asked for by the table it came from
  switch (table) {
    case 'lesson':
      return lessonOf(of('lesson').id);
    case 'segment':
      return `${of('segment').title}, in ${await lessonOf(of('segment').lesson)}`;
    case 'lessonMaterial':
      return `A sheet for ${await lessonOf(of('lessonMaterial').lesson)}`;
    case 'observation':
      return `A level on ${await learnerOf(of('observation').course)}’s course, ${formatDay(of('observation').date)}`;
    case 'event':
      return `An event on ${await learnerOf(of('event').course)}’s course, ${formatDay(of('event').date)}`;
    case 'course':
      return `${await learnerOf(of('course').id)}’s course`;
    case 'courseUnit':
      return `The unit ${of('courseUnit').document.title}`;
    case 'unitVersion':
      return `The unit ${of('unitVersion').document.title}`;
    case 'unit':
      return `The unit ${of('unit').title}`;
    case 'skill':
      return `The skill ${of('skill').title}`;
    case 'student':
      return `The page of ${of('student').name}`;
    case 'group':
      return `The group ${of('group').name}`;
    case 'family':
      return `The family ${of('family').name}`;
    case 'take':
      return `A take of ${(await reader.get('student', of('take').student))?.name ?? 'a student'}, ${formatDay(of('take').date)}`;
    case 'consent':
      return `The consent for ${(await reader.get('student', of('consent').student))?.name ?? 'a student'}`;
    case 'term':
      return `The term ${of('term').name}`;
    case 'holiday':
      return `The days off ${of('holiday').name}`;
    case 'studio':
      return 'The studio’s own name, or yours';
    case 'slot':
    case 'setAside':
    case 'sound':
    case 'soundData':
      return 'Elsewhere';
  }
}
