// A small studio of invented people for the storage contract: one row of each table that others refer to.

import { ok } from '#core';
import { defaultCourseSettings } from '#planning';
import type { ChangeId, LessonRecord, SegmentRecord, Store, TableName, Tables, Transactor } from '#studio';

/** A record as the sample writes it: plain text where the record has a branded id or date. */
const record = <T extends TableName>(fields: { readonly [F in keyof Tables[T]]: unknown }): Tables[T] =>
  fields as unknown as Tables[T]; // every field is named; brands are all that is missing

const document = { format: 'levare-unit/1', title: 'Two-bar answers' };

export const sample = {
  family: record<'family'>({
    id: 'family:one',
    revision: 1,
    name: 'Marsh',
    contacts: [{ name: 'Ida Marsh', relation: 'mother', phone: '', email: '' }],
    note: '',
  }),
  student: record<'student'>({
    id: 'student:one',
    revision: 1,
    name: 'Noor Marsh',
    born: null,
    birthYear: 2015,
    instruments: [{ instrument: 'flute', stage: 'beginner' }],
    family: 'family:one',
    contacts: [],
    note: '',
    since: '2026-01-12',
    left: null,
  }),
  group: record<'group'>({ id: 'group:one', revision: 1, name: 'Friday four', members: ['student:one'] }),
  skill: record<'skill'>({
    id: 'skill:one',
    title: 'keeps a steady beat',
    area: 'rhythm',
    stage: 'beginner',
    description: '',
    restsOn: [],
    ongoing: true,
  }),
  unit: record<'unit'>({
    id: 'unit:one',
    version: 1,
    title: 'Two-bar answers',
    area: 'improvisation',
    document,
    retired: false,
  }),
  course: record<'course'>({
    id: 'course:one',
    revision: 0,
    student: 'student:one',
    group: null,
    instrument: 'flute',
    stage: 'beginner',
    strands: [{ id: 'strand:one', name: 'Technique', ink: 0, priority: 1, deadline: null }],
    settings: defaultCourseSettings,
    moved: [],
    plan: null,
    ended: null,
  }),
  courseUnit: record<'courseUnit'>({
    id: 'course-unit:one',
    course: 'course:one',
    unit: 'unit:one',
    unitVersion: 1,
    document,
    strand: 'strand:one',
    position: 0,
    notBefore: null,
    notAfter: null,
  }),
  slot: record<'slot'>({
    id: 'slot:one',
    course: 'course:one',
    weekday: 3,
    time: '16:30',
    minutes: 30,
    starts: '2026-01-12',
    ends: null,
  }),
  lesson: sampleLesson('one', { absent: ['student:one'] }),
  sound: record<'sound'>({ id: 'sound:one', type: 'audio/webm', bytes: 3, unheldSince: null }),
  take: record<'take'>({
    id: 'take:one',
    student: 'student:one',
    date: '2026-03-04',
    keptAt: '2026-03-04T16:40:00.000Z',
    title: 'Long notes',
    takenIn: 'lesson:one',
    practiceOf: null,
    playedFor: { courseUnit: 'course-unit:one', activity: 'long-notes' },
    instrument: 'flute',
    context: { tempo: 90 },
    heard: { seconds: 2.5, notes: [], alignment: null, problems: [], waveform: [] },
    evidence: {},
    note: '',
    sound: 'sound:one',
  }),
} as const;

/** Ids to refer to, by field. */
export const sampleReferences = Object.fromEntries(
  Object.entries(sample).map(([field, row]) => [field, row.id]),
);

export function sampleLesson(
  name: string,
  fields: { readonly [F in keyof LessonRecord]?: unknown },
): LessonRecord {
  return record<'lesson'>({
    id: `lesson:${name}`,
    course: 'course:one',
    date: '2026-03-04',
    time: '16:30',
    minutes: 30,
    status: 'planned',
    reason: '',
    slot: null,
    slotDate: null,
    barred: false,
    note: '',
    practice: '',
    overrun: 0.125,
    ongoing: ['skill:one'],
    absent: null,
    ...fields,
  });
}

export function sampleSegment(
  name: string,
  fields: { readonly [F in keyof SegmentRecord]?: unknown },
): SegmentRecord {
  return record<'segment'>({
    id: `segment:${name}`,
    lesson: 'lesson:one',
    course: 'course:one',
    position: 0,
    key: `work:course-unit:one:long-tones:${name}`,
    kind: 'work',
    strand: 'strand:one',
    courseUnit: 'course-unit:one',
    activity: 'long-tones',
    skill: null,
    title: 'Long tones',
    start: 2.5,
    minutes: 12.25,
    completes: false,
    pinned: false,
    reasons: [{ kind: 'nextInOrder' }, { kind: 'split', minutes: 10, upTo: 10, of: 25 }],
    seconds: null,
    covered: null,
    outcome: null,
    note: '',
    ...fields,
  });
}

/** A header for a change named in a test. */
export const headerOf = (name: string) => ({
  id: `change:${name}` as ChangeId,
  at: '2026-03-04T16:30:00.000Z',
  type: 'test.step',
});

/** Makes one change that must go well. */
export async function apply(
  store: Store,
  name: string,
  work: (transactor: Transactor) => Promise<void>,
): Promise<void> {
  await store.change(headerOf(name), async (transactor) => {
    await work(transactor);
    return ok({ label: `Step ${name}`, reply: name });
  });
}

/** Writes the sample studio as the change `sample`. */
export async function putSample(store: Store): Promise<void> {
  await apply(store, 'sample', async (transactor) => {
    for (const [table, row] of Object.entries(sample)) await transactor.put(table as TableName, row as never); // pairs of the object above
  });
}
