// A segment of a lesson for tests: ten minutes of work on an activity, nothing said of it yet.

import type { LessonSegmentView } from '#contract';

export const segmentOf = (id: string, change: Partial<LessonSegmentView> = {}): LessonSegmentView => ({
  id: `segment:${id}` as LessonSegmentView['id'],
  key: id,
  kind: 'work',
  title: id,
  start: 0,
  minutes: 10,
  strand: null,
  courseUnit: null,
  unitTitle: '',
  activity: id,
  howTo: '',
  bring: [],
  materials: [],
  skills: [],
  completes: true,
  pinned: false,
  reasons: [],
  seconds: null,
  outcome: null,
  covered: null,
  note: '',
  practice: null,
  ...change,
});
