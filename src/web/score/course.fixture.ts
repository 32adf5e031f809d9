// The pieces of an invented course, for tests to write one by hand.

import type { CourseView, LessonBarView, SegmentView } from '#contract';
import { addDays, type Id, type PlainDate, type PlainTime } from '#core';

/** A first day of lessons. */
export const monday = '2026-01-05' as PlainDate;

export const segmentOf = (given: Partial<SegmentView> & Pick<SegmentView, 'id'>): SegmentView => ({
  key: given.id,
  kind: 'work',
  strand: null,
  courseUnit: null,
  activity: null,
  skill: null,
  title: 'Long notes',
  start: 0,
  minutes: 10,
  completes: false,
  endsUnit: false,
  pinned: false,
  outcome: null,
  actualMinutes: null,
  reasons: [],
  moved: false,
  ...given,
});

export const lessonOf = (n: number, given: Partial<LessonBarView>): LessonBarView => ({
  kind: 'lesson',
  lesson: `lesson:${n}` as Id<'lesson'>,
  number: n,
  date: addDays(monday, 7 * (n - 1)),
  time: '16:00' as PlainTime,
  minutes: 30,
  status: 'planned',
  reason: '',
  barred: false,
  absent: [],
  overrun: 0.1,
  segments: [],
  ...given,
});

export const courseSettingsForTest = {
  overrun: 0.2,
  retention: 0.85,
  maxRun: 3,
  parkGap: 2,
  settlingIn: 2,
  settingPractice: 3,
  recap: 3,
  revisit: 5,
  mostBlocks: 4,
  mostStrands: 3,
};

export const courseOf = (given: Partial<CourseView>): CourseView => ({
  id: 'course:one' as Id<'course'>,
  revision: 1,
  learner: {
    student: 'student:one' as Id<'student'>,
    group: null,
    name: 'Ida Sund',
    age: 12,
    instrument: 'flute',
    instrumentName: 'Flute',
    stage: 'elementary',
    members: [],
  },
  strands: [0, 1].map((ink) => ({
    id: `strand:${ink}` as Id<'strand'>,
    name: ink ? 'Repertoire' : 'Technique',
    ink: ink === 0 ? 0 : 1,
    priority: ink + 1,
    deadline: null,
  })),
  settings: courseSettingsForTest,
  ended: null,
  today: monday,
  slots: [],
  events: [],
  bars: [],
  units: [],
  leftOut: [],
  notReady: [],
  setAside: [],
  moves: [],
  skills: [],
  pace: { percent: 100, low: 80, high: 125, observations: 0 },
  attendance: { taught: 0, missed: 0, cancelled: 0 },
  ...given,
});
