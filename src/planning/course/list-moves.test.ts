import { expect, test } from 'vitest';
import { addDays, type PlainDate } from '#core';
import { changesBetween } from './changes-between.ts';
import type { CourseInput, Work } from './course-input.ts';
import type { CoursePlan, Move } from './course-plan.ts';
import {
  exampleActivity as act,
  exampleCourse,
  exampleUnit,
  firstDay,
  logged,
  onCourse,
  exampleSkill as skill,
  skillId,
  weeklyLessons,
} from './example-course.contract.ts';
import { listMoves } from './list-moves.ts';
import { planCourse } from './plan-course.ts';

const skills = [
  skill('pulse'),
  skill('echo', ['pulse']),
  skill('answer', ['echo']),
  skill('form', ['answer']),
];
const unit = exampleUnit('u', [
  act('clap', 14, ['pulse']),
  act('echoes', 30, ['echo']),
  act('answers', 16, ['answer']),
  act('forms', 12, ['form']),
]);
const start = exampleCourse({ skills, units: [onCourse('u1', unit)], lessons: weeklyLessons(8, 45) });
const plan = planCourse(start, null);

/** The course after its first lesson was taught with this work. */
const afterFirst = (work: readonly Work[], rest: Partial<CourseInput> = {}): CourseInput => ({
  ...start,
  today: addDays(firstDay, 1),
  lessons: start.lessons.slice(1),
  taught: [{ id: start.lessons[0]?.id ?? '', date: firstDay, minutes: 45, work, revisited: [] }],
  ...rest,
});
const movesTo = (after: CourseInput, before: CoursePlan = plan, from: CourseInput = start) =>
  listMoves(before, planCourse(after, before), changesBetween(from, after));
const causes = (moves: readonly Move[]) =>
  Object.fromEntries(moves.map((m) => [m.key.replace('work:u1:', ''), m.because.kind]));
const firstWork = (plan.lessons[0]?.segments ?? [])
  .filter((s) => s.kind === 'work')
  .map((s) => ({ key: s.activity ?? '', minutes: s.planned, completes: s.completes }));

test('the scenario: one activity fits whole, the long one is split', () => {
  expect(firstWork.map((w) => [w.key, w.completes])).toEqual([
    ['clap', true],
    ['echoes', false],
  ]);
});

test('[M1] a lesson taught as planned moves nothing', () => {
  const asPlanned = firstWork.map((w) => logged('u1', w.key, w.minutes, w.completes ? 'finished' : 'partly'));
  expect(movesTo(afterFirst(asPlanned)).filter((m) => m.key.startsWith('work'))).toEqual([]);
});

test('[M3] what stood in a lesson that is gone says so, the rest makes room', () => {
  const gone = start.lessons[1];
  const after = { ...start, lessons: start.lessons.filter((lesson) => lesson !== gone) };
  const moves = movesTo(after);
  const stood = moves.filter((m) => m.from?.date === gone?.date);
  expect(stood.length).toBeGreaterThan(0);
  for (const move of stood) expect(move.because).toEqual({ kind: 'lessonGone', date: gone?.date });
  for (const move of moves.filter((m) => m.key.startsWith('work') && !stood.includes(m)))
    expect(['madeRoom', 'restsOnMoved']).toContain(move.because.kind);
});

test('[M4] what the lesson did not reach moves on, with the cause', () => {
  const moves = movesTo(afterFirst([logged('u1', 'clap', 14, 'finished')]));
  const echoes = moves.find((m) => m.key === 'work:u1:echoes:0');
  expect(echoes).toMatchObject({
    from: { date: firstDay },
    to: { date: addDays(firstDay, 7) },
    because: { kind: 'notReached' },
  });
  expect(causes(moves)['clap:0']).toBeUndefined();
});

test('[M4] less time for it than planned', () => {
  const echoes = firstWork.find((w) => w.key === 'echoes')?.minutes ?? 0;
  const moves = movesTo(
    afterFirst([logged('u1', 'clap', 14, 'finished'), logged('u1', 'echoes', echoes - 8, 'partly')]),
  );
  expect(causes(moves)['echoes:1']).toBe('notReached');
});

test('[M5] finished early: the rest of it falls away, and others come forward', () => {
  const echoes = firstWork.find((w) => w.key === 'echoes')?.minutes ?? 0;
  const moves = movesTo(
    afterFirst([logged('u1', 'clap', 14, 'finished'), logged('u1', 'echoes', echoes, 'finished', 30)]),
  );
  expect(moves.find((m) => m.key === 'work:u1:echoes:1')).toMatchObject({
    to: null,
    because: { kind: 'fasterThanPlanned' },
  });
  for (const move of moves.filter((m) => m.from !== null && m.to !== null && m.key.startsWith('work')))
    expect((move.to?.date ?? '') <= (move.from?.date ?? '')).toBe(true);
});

test('[M5] it took its time and left more than planned', () => {
  const echoes = firstWork.find((w) => w.key === 'echoes')?.minutes ?? 0;
  const moves = movesTo(
    afterFirst([logged('u1', 'clap', 14, 'finished'), logged('u1', 'echoes', echoes, 'partly', echoes / 3)]),
  );
  expect(causes(moves)['echoes:1']).toBe('slowerThanPlanned');
});

test('[M5] slower elsewhere: the pace of untouched work is seen differently', () => {
  const work = [logged('u1', 'clap', 35, 'finished', 14), logged('u1', 'echoes', 0, 'partly', 0)];
  const moves = movesTo(afterFirst(work));
  const later = moves.filter((m) => m.key.startsWith('work:u1:answers') || m.key.startsWith('work:u1:forms'));
  expect(later.map((m) => m.because.kind)).toContain('paceLearnt');
  expect(later.map((m) => m.because.kind)).not.toContain('slowerThanPlanned');
});

test('[M6] skills turned out to be there: the work falls away', () => {
  const observed = ['answer', 'form'].map((name) => ({
    skill: skillId(name),
    date: addDays(firstDay, 1) as PlainDate,
    level: 3 as const,
  }));
  const moves = movesTo({ ...start, observations: observed });
  expect(causes(moves)['answers:0']).toBe('knownAlready');
  expect(causes(moves)['forms:0']).toBe('knownAlready');
});

test('[M2] what the teacher touched moved by hand', () => {
  const pins = [
    {
      kind: 'activity',
      lesson: start.lessons[5]?.id ?? '',
      courseUnit: 'u1',
      activity: 'forms',
      minutes: 12,
    } as const,
  ];
  const pinned = { ...start, pins };
  const after = planCourse(pinned, plan);
  const forms = listMoves(plan, after, changesBetween(start, pinned)).find((m) => m.key.includes('forms'));
  expect(forms).toMatchObject({ to: { date: start.lessons[5]?.date }, because: { kind: 'byHand' } });
  const barred = start.lessons.map((lesson, at) => ({ ...lesson, barred: at === 0 }));
  const moves = movesTo({ ...start, lessons: barred });
  for (const move of moves.filter((m) => m.from?.date === firstDay)) expect(move.because.kind).toBe('byHand');
  expect(moves.some((m) => m.from?.date === firstDay)).toBe(true);
});

test('[M2] set aside by hand', () => {
  const setAside = [{ courseUnit: 'u1', activity: 'forms', since: firstDay, backFrom: null }];
  expect(causes(movesTo({ ...start, setAside }))['forms:0']).toBe('byHand');
});

test('[M7] a revisit that memory asks for', () => {
  const other = { ...start, skills: [...skills, skill('bow')] };
  const before = planCourse(other, null);
  const observed = { skill: skillId('bow'), date: '2026-09-01' as PlainDate, level: 3 as const };
  const moves = movesTo({ ...other, observations: [observed] }, before, other);
  expect(moves.find((m) => m.key === 'revisit:skill:bow:0')).toMatchObject({
    from: null,
    because: { kind: 'due' },
  });
});

test('[M8] it rests on what moved', () => {
  const work = [logged('u1', 'clap', 14, 'finished')];
  const moves = movesTo(afterFirst(work));
  const answers = moves.find((m) => m.key === 'work:u1:answers:0');
  if (answers !== undefined && (answers.to?.date ?? '') > (answers.from?.date ?? ''))
    expect(answers.because).toEqual({ kind: 'restsOnMoved', title: 'Activity echoes' });
  // Two lessons without the long activity push it past where the next one stood, for certain.
  const second = start.lessons[1];
  const twice: CourseInput = {
    ...afterFirst(work),
    lessons: start.lessons.slice(2),
    today: addDays(firstDay, 8),
    taught: [
      ...afterFirst(work).taught,
      { id: second?.id ?? '', date: second?.date ?? firstDay, minutes: 45, work: [], revisited: [] },
    ],
  };
  const later = movesTo(twice).filter((m) => m.key.startsWith('work:u1:forms'));
  expect(later.map((m) => m.because.kind)).toEqual(['restsOnMoved']);
});

test('[M9] a course that runs out of lessons leaves work out, for want of room', () => {
  const short = { ...start, lessons: start.lessons.slice(0, 2) };
  const after = planCourse(short, plan);
  expect(after.leftOut.length).toBeGreaterThan(0);
  const cause = listMoves(plan, after, { gone: [], taught: [], observed: [], byHand: [] });
  for (const move of cause.filter((m) => m.to === null && m.key.startsWith('work')))
    expect(['lessonGone', 'madeRoom']).toContain(move.because.kind);
});
