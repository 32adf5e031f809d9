import { expect, test } from 'vitest';
import { arrangeLesson, type UnplacedSegment, type UnplacedWork } from './arrange-lesson.ts';
import { weeklyLessons } from './example-course.contract.ts';
import type { LessonFrame } from './lesson-frame.ts';

const frame = (minutes: number, rest: Partial<LessonFrame> = {}): LessonFrame => {
  const [lesson] = weeklyLessons(1, minutes);
  if (lesson === undefined) throw new Error('no lesson');
  return { lesson, settlingIn: 3, recap: 3, practice: 3, pins: [], reviewMax: 5, room: minutes - 6, ...rest };
};
const bare: UnplacedSegment = {
  key: '',
  kind: 'work',
  strand: null,
  courseUnit: 'u',
  activity: null,
  skill: null,
  title: '',
  planned: 0,
  completes: false,
  pinned: false,
  reasons: [],
};
let order = 0;
const work = (
  id: string,
  strand: string,
  character: UnplacedWork['character'],
  planned: number,
  rest: { readonly preds?: readonly string[]; readonly segment?: Partial<UnplacedSegment> } = {},
): UnplacedWork => ({
  id,
  character,
  preds: [],
  order: order++,
  ...rest,
  segment: { ...bare, key: `work:u:${id}:0`, activity: id, title: id, strand, planned, ...rest.segment },
});
const revisit = (planned: number): UnplacedSegment => ({ ...bare, kind: 'revisit', title: 'r', planned });
const titles = (segments: ReturnType<typeof arrangeLesson>) =>
  segments.map((s) => (s.kind === 'work' ? s.title : s.kind)).join(' ');

test('[A2] the order of a lesson', () => {
  const ext = work('x', 'a', 'easy', 6, { segment: { kind: 'extension' } });
  const segments = arrangeLesson(frame(60), [revisit(5)], [ext, work('n', 'a', 'new', 10)]);
  expect(titles(segments)).toBe('settlingIn recap revisit n extension open practice');
});

test('[A3] fresh work first, musical last, strands alternating', () => {
  const pieces = [
    work('m', 'c', 'musical', 5),
    work('a1', 'a', 'new', 5),
    work('a2', 'a', 'hard', 5),
    work('b1', 'b', 'new', 5),
    work('e', 'a', 'easy', 5),
  ];
  expect(titles(arrangeLesson(frame(45), [], pieces))).toContain('a1 b1 a2 e m');
});

test('[A3] what another piece rests on comes before it whatever its character', () => {
  const pieces = [work('new', 'a', 'new', 5, { preds: ['song'] }), work('song', 'a', 'musical', 5)];
  expect(titles(arrangeLesson(frame(30), [], pieces))).toContain('song new');
});

test('[A4] minutes to spare go to the frame up to half as long again, then they are open', () => {
  const minutes = (length: number, recap = 3) =>
    arrangeLesson(frame(length, { recap }), [], [work('a', 'a', 'new', 10)])
      .map((s) => `${s.kind}:${s.minutes}`)
      .join(' ');
  expect(minutes(19)).toBe('settlingIn:3 recap:3 work:10 practice:3');
  expect(minutes(20)).toBe('settlingIn:3 recap:4 work:10 practice:3');
  expect(minutes(24)).toBe('settlingIn:5 recap:5 work:10 practice:4');
  expect(minutes(25)).toBe('settlingIn:5 recap:5 work:10 practice:5');
  expect(minutes(26)).toBe('settlingIn:5 recap:6 work:10 practice:5');
  expect(minutes(27)).toBe('settlingIn:5 recap:5 work:10 open:2 practice:5');
  expect(minutes(31)).toBe('settlingIn:5 recap:5 work:10 open:6 practice:5');
  expect(minutes(21, 0)).toBe('settlingIn:6 work:10 practice:5');
  expect(minutes(24, 0)).toBe('settlingIn:5 work:10 open:4 practice:5');
});

test('[A5] work, revisits and what is pinned get exactly their planned minutes', () => {
  const segments = arrangeLesson(frame(30), [], [work('p', 'a', 'new', 9, { segment: { pinned: true } })]);
  expect(segments.find((s) => s.kind === 'work')?.minutes).toBe(9);
  expect(segments.reduce((sum, s) => sum + s.minutes, 0)).toBe(30);
});
