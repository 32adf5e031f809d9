import { expect, test } from 'vitest';
import type { PlainDate } from '#core';
import { parseProblem } from '../problem/parse-problem.ts';
import type { Level } from '../skill/skill.ts';
import type { CourseInput } from './course-input.ts';
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
import { formulateProblem } from './formulate-problem.ts';

const skills = [
  skill('pulse'),
  skill('echo', ['pulse']),
  skill('answer', ['echo']),
  skill('form', ['answer']),
];
const first = exampleUnit('first', [act('clap', 15, ['pulse']), act('walk', 10, ['pulse'])]);
const second = exampleUnit('second', [act('echoes', 20, ['echo']), act('answers', 12, ['answer'])]);
const course = (rest: Partial<CourseInput> = {}) =>
  exampleCourse({ skills, units: [onCourse('u1', first), onCourse('u2', second)], ...rest });
const seen = (name: string, level: Level, date: string = firstDay) => ({
  skill: skillId(name),
  level,
  date: date as PlainDate,
});
const activity = (input: CourseInput, id: string) => {
  const { problem } = formulateProblem(input);
  // The format's own reader is the judge of every problem made here.
  expect(parseProblem(JSON.parse(JSON.stringify(problem)))).toEqual({ ok: true, value: problem });
  return problem.activities.find((a) => a.id === id);
};
const taughtOnce = (work: CourseInput['taught'][number]['work']): Partial<CourseInput> => ({
  today: '2026-09-08' as PlainDate,
  lessons: weeklyLessons(11, 45, '2026-09-14' as PlainDate),
  taught: [{ id: 'lesson:2026-09-07', date: firstDay, minutes: 45, work, revisited: [] }],
});

test('[F1] an activity waits for the core work of the first unit that develops what it rests on', () => {
  expect(activity(course(), 'u2/echoes')?.preds).toEqual(['u1/clap', 'u1/walk']);
  expect(activity(course(), 'u2/answers')?.preds).toContain('u2/echoes');
  expect(activity(course(), 'u1/clap')?.preds).toEqual([]);
});

test('[F1] prerequisites win over the listed order of units', () => {
  const swapped = course({ units: [onCourse('u2', second), onCourse('u1', first)] });
  expect(activity(swapped, 'u2/echoes')?.preds).toEqual(['u1/clap', 'u1/walk']);
});

test('[F2] of two activities on one skill the later listed waits', () => {
  expect(activity(course(), 'u1/walk')?.preds).toEqual(['u1/clap']);
});

test('[F3] what is there already holds nothing up', () => {
  expect(activity(course({ observations: [seen('pulse', 2)] }), 'u2/echoes')?.preds).not.toContain('u1/walk');
  expect(activity(course({ observations: [seen('pulse', 1)] }), 'u2/echoes')?.preds).toContain('u1/walk');
  // The latest level counts, and the check's own level where it wants more.
  expect(
    activity(course({ observations: [seen('pulse', 3, '2026-09-01'), seen('pulse', 1)] }), 'u2/echoes')
      ?.preds,
  ).toContain('u1/walk');
  const strict = exampleUnit('first', first.activities, { checkLevel: 3 });
  const input = course({ units: [onCourse('u1', strict), onCourse('u2', second)] });
  expect(activity({ ...input, observations: [seen('pulse', 2)] }, 'u2/echoes')?.preds).toContain('u1/walk');
});

test('[F3] ongoing skills and skills of earlier stages count as there', () => {
  const only = { units: [onCourse('u2', second)] };
  expect(formulateProblem(course(only)).notReady).not.toEqual([]);
  expect(formulateProblem(course({ ...only, stage: 'elementary' })).notReady).toEqual([]);
  expect(
    formulateProblem(course({ ...only, stage: 'elementary', observations: [seen('pulse', 0)] })).notReady,
  ).not.toEqual([]);
  const ongoing = [skill('pulse', [], { ongoing: true }), ...skills.slice(1)];
  expect(formulateProblem(course({ ...only, skills: ongoing })).notReady).toEqual([]);
});

test('[F3] a skill that only counts as there by its stage keeps its place within the unit that teaches it', () => {
  const open = [skill('open strings'), skill('crossing', ['open strings'])];
  const unit = exampleUnit('strings', [act('open', 12, ['open strings']), act('cross', 15, ['crossing'])]);
  const input = exampleCourse({ skills: open, units: [onCourse('u1', unit)], stage: 'intermediate' });
  expect(activity(input, 'u1/cross')?.preds).toEqual(['u1/open']);
  // Seen, it holds nothing up.
  expect(activity({ ...input, observations: [seen('open strings', 2)] }, 'u1/cross')?.preds).toEqual([]);
});

test('[F4] a ring among skills is named and the plan goes on', () => {
  const ring = [skill('pulse', ['answer']), ...skills.slice(1)];
  const { cycles, problem } = formulateProblem(course({ skills: ring }));
  expect(cycles).toHaveLength(1);
  expect(cycles[0]).toMatchObject({ kind: 'SkillCycle' });
  expect(new Set(cycles[0]?.kind === 'SkillCycle' ? cycles[0].skills : [])).toEqual(
    new Set(['pulse', 'echo', 'answer'].map(skillId)),
  );
  expect(problem.activities).toHaveLength(4);
  expect(parseProblem(problem).ok).toBe(true);
});

test('[F4] a ring among activities alone is named by their titles', () => {
  const open = [skill('a'), skill('b', ['a']), skill('c'), skill('d', ['c'])];
  const one = exampleUnit('one', [act('x', 10, ['a', 'd'])]);
  const two = exampleUnit('two', [act('y', 10, ['c', 'b'])]);
  const { cycles, problem } = formulateProblem(
    exampleCourse({ skills: open, units: [onCourse('u1', one), onCourse('u2', two)] }),
  );
  expect(cycles).toMatchObject([{ kind: 'ActivityCycle' }]);
  expect(parseProblem(problem).ok).toBe(true);
  expect(problem.activities.map((a) => a.preds.length)).toEqual([0, 1]);
});

test('[F5] not ready, with the shortest way through the library', () => {
  const library = [first, exampleUnit('long-way', [act('march', 60, ['pulse'])])];
  const { notReady, leftOut } = formulateProblem(course({ units: [onCourse('u2', second)], library }));
  expect(notReady).toEqual([
    {
      courseUnit: 'u2',
      activity: 'echoes',
      title: 'Activity echoes',
      missing: [skillId('pulse')],
      way: [first.id],
    },
  ]);
  expect(leftOut.map((l) => [l.activity, l.why.kind])).toEqual([
    ['echoes', 'notReady'],
    ['answers', 'afterLeftOut'],
  ]);
});

test('[F5] work that was begun is never called not ready', () => {
  const begun = course({
    units: [onCourse('u2', second)],
    ...taughtOnce([logged('u2', 'echoes', 8, 'partly')]),
  });
  expect(formulateProblem(begun).notReady).toEqual([]);
});

test('[F6] the variant for stage and age sets the minutes', () => {
  const variants = [{ ages: { from: 5, to: 8 }, minutes: { shortest: 4, usual: 8, longest: 12 } }];
  const unit = exampleUnit('v', [act('clap', 15, ['pulse'], { variants })]);
  const of = (age: number) => activity(course({ age, units: [onCourse('u1', unit)] }), 'u1/clap');
  expect(of(7)).toMatchObject({ demand: 8, minChunk: 8 });
  expect(of(9)).toMatchObject({ demand: 15, minChunk: 6 });
});

test('[F7] what is known already shrinks to a short check or falls away', () => {
  const later = {
    today: '2026-12-01' as PlainDate,
    lessons: weeklyLessons(6, 45, '2026-12-01' as PlainDate),
  };
  const old = course({ ...later, observations: [seen('pulse', 3, '2026-09-01')] });
  expect(activity(old, 'u1/clap')).toMatchObject({ demand: 3, minChunk: 3, maxChunk: 3, review: 0 });
  const fresh = course({ ...later, observations: [seen('pulse', 4, '2026-11-28')] });
  expect(activity(fresh, 'u1/clap')).toBeUndefined();
  const withHelp = course({ ...later, observations: [seen('pulse', 2, '2026-11-28')] });
  expect(activity(withHelp, 'u1/clap')).toMatchObject({ demand: 15 });
});

test('[F8] demand is what is left of the usual minutes at this pace', () => {
  expect(activity(course(), 'u1/clap')?.demand).toBe(15);
  const partly = course(taughtOnce([logged('u1', 'clap', 9, 'partly')]));
  expect(activity(partly, 'u1/clap')?.demand).toBe(6);
  expect(activity(course(taughtOnce([logged('u1', 'clap', 9, 'finished')])), 'u1/clap')).toBeUndefined();
  const slow = course(taughtOnce([logged('u1', 'clap', 30, 'finished', 15)]));
  expect(activity(slow, 'u1/walk')?.demand).toBeGreaterThan(10);
  // Usual minutes done and not finished: one more useful go, until the longest minutes.
  expect(activity(course(taughtOnce([logged('u1', 'clap', 15, 'partly')])), 'u1/clap')?.demand).toBe(6);
  expect(activity(course(taughtOnce([logged('u1', 'clap', 30, 'partly')])), 'u1/clap')).toBeUndefined();
});

test('[F10] the frame of a lesson, and recap in every lesson but the very first', () => {
  const tone = [...skills, skill('tone', [], { ongoing: true })];
  const unit = exampleUnit('t', first.activities, { skills: ['pulse', 'tone'].map(skillId) });
  const { problem } = formulateProblem(course({ skills: tone, units: [onCourse('u1', unit)] }));
  expect(problem.lessons[0]).toMatchObject({ length: 45, fixed: 6, recap: 0, reviewMax: 5 });
  expect(problem.lessons[1]).toMatchObject({ fixed: 6, recap: 3 });
  const { problem: later } = formulateProblem(course(taughtOnce([])));
  expect(later.lessons[0]).toMatchObject({ fixed: 5, recap: 3 });
  const { problem: short } = formulateProblem(course({ lessons: weeklyLessons(2, 10) }));
  expect(short.lessons[0]).toMatchObject({ length: 10, fixed: 3 });
});

test('[F19] from the fourth lesson of a course on a moment is kept for revisits', () => {
  const fixed = (input: CourseInput) => formulateProblem(input).problem.lessons.map((lesson) => lesson.fixed);
  expect(fixed(course()).slice(0, 5)).toEqual([5, 5, 5, 10, 10]);
  expect(fixed(course(taughtOnce([]))).slice(0, 4)).toEqual([5, 5, 10, 10]);
  // A known revisit has the moment to itself.
  const known = course({ observations: [seen('pulse', 2, '2026-08-01')], units: [] });
  expect(fixed(known).slice(0, 5)).toEqual([5, 5, 5, 10, 10]);
  expect(fixed(course({ lessons: weeklyLessons(6, 20) }))[4]).toBe(5);
});

test('[F20] pace is taken in steps of 5 %', () => {
  const demands = (actual: number) =>
    formulateProblem(
      course(taughtOnce([logged('u1', 'clap', actual, 'finished', 15)])),
    ).problem.activities.map((a) => a.demand);
  expect(demands(16)).toEqual(demands(15));
  expect(demands(30)).not.toEqual(demands(15));
});

test('[F11] a barred lesson has no room', () => {
  const lessons = weeklyLessons(3, 45).map((lesson, at) => ({ ...lesson, barred: at === 1 }));
  const { problem } = formulateProblem(course({ lessons }));
  expect(problem.lessons[1]).toMatchObject({ length: 45, fixed: 45, recap: 0, reviewMax: 0, maxBlocks: 0 });
});

test('[F12] pins take their minutes off the lesson and off the demand, and hold back what rests on them', () => {
  const lessons = weeklyLessons(6, 45);
  const pin = { kind: 'activity', lesson: lessons[2]?.id ?? '', courseUnit: 'u1', activity: 'walk' } as const;
  const part = course({ lessons, pins: [{ ...pin, minutes: 4 }] });
  expect(activity(part, 'u1/walk')).toMatchObject({ demand: 6, minChunk: 6 });
  expect(formulateProblem(part).problem.lessons[2]).toMatchObject({ fixed: 9, maxBlocks: 3 });
  const whole = course({ lessons, pins: [{ ...pin, minutes: 10 }] });
  expect(activity(whole, 'u1/walk')).toBeUndefined();
  expect(activity(whole, 'u2/echoes')).toMatchObject({ first: 2, preds: ['u1/clap'] });
});

test('[F13] days limit the lessons', () => {
  const day = (text: string) => text as PlainDate;
  const units = [
    onCourse('u1', first, 'main', { notBefore: day('2026-09-15'), notAfter: day('2026-10-05') }),
    onCourse('u2', second),
  ];
  const strands = [{ id: 'main', name: 'Main', priority: 1, deadline: day('2026-11-02') }];
  const input = course({ units, strands });
  expect(activity(input, 'u1/clap')).toMatchObject({ first: 2, last: 4 });
  // The lesson on the day itself is too late.
  expect(activity(input, 'u2/echoes')).toMatchObject({ first: 0, last: 7 });
  const past = course({ strands: [{ id: 'main', name: 'Main', priority: 1, deadline: day('2026-09-01') }] });
  expect(activity(past, 'u2/echoes')).toMatchObject({ first: 0, last: 11 });
  const never = course({ units: [onCourse('u1', first, 'main', { notAfter: day('2026-09-01') })] });
  expect(formulateProblem(never).leftOut.map((l) => l.why)).toContainEqual({
    kind: 'noRoomBefore',
    date: '2026-09-01',
  });
});

test('[F14] important strands and deadlines cost more when left undone', () => {
  const strands = [
    { id: 'a', name: 'A', priority: 1, deadline: null },
    { id: 'b', name: 'B', priority: 3, deadline: '2026-11-02' as PlainDate },
    { id: 'c', name: 'C', priority: 9, deadline: null },
  ];
  const units = ['a', 'b', 'c'].map((strand) => onCourse(`u-${strand}`, first, strand));
  const { problem } = formulateProblem(course({ strands, units }));
  expect(problem.activities.filter((a) => a.id.endsWith('clap')).map((a) => a.weight)).toEqual([5, 6, 1]);
});

test('[F15] set aside stays out until its day, and so does what rests on it', () => {
  const aside = { courseUnit: 'u1', activity: 'walk', since: firstDay };
  const gone = formulateProblem(course({ setAside: [{ ...aside, backFrom: null }] }));
  expect(gone.problem.activities.map((a) => a.id)).toEqual(['u1/clap']);
  expect(gone.leftOut.map((l) => [l.activity, l.why.kind])).toEqual([
    ['walk', 'setAside'],
    ['echoes', 'afterLeftOut'],
    ['answers', 'afterLeftOut'],
  ]);
  const back = course({ setAside: [{ ...aside, backFrom: '2026-09-22' as PlainDate }] });
  expect(activity(back, 'u1/walk')).toMatchObject({ first: 3 });
});

test('[F16] an extension waits for all core work of its unit', () => {
  const unit = exampleUnit('e', first.activities, { extensions: [act('more', 10, ['pulse'])] });
  const ext = activity(course({ units: [onCourse('u1', unit)] }), 'u1/more');
  expect(ext).toMatchObject({ kind: 'ext', weight: 0, preds: ['u1/clap', 'u1/walk'] });
  expect(ext?.value).toBeGreaterThan(0);
});

test('[F17] a strand stays in teaching order with enough open to fill a lesson', () => {
  const open = Array.from({ length: 8 }, (_, i) => skill(`s${i}`));
  const unit = exampleUnit(
    'wide',
    open.map((_, i) => act(`a${i}`, 12, [`s${i}`])),
  );
  const { problem } = formulateProblem(exampleCourse({ skills: open, units: [onCourse('u1', unit)] }));
  const preds = problem.activities.map((a) => a.preds);
  const openAtOnce = preds.findIndex((p) => p.length > 0);
  expect(openAtOnce).toBeGreaterThanOrEqual(2);
  expect(preds.slice(openAtOnce)).toEqual(Array.from({ length: 8 - openAtOnce }, (_, i) => [`u1/a${i}`]));
});

test('recent lessons are told to the run limit, the last one first', () => {
  const taught = ['2026-08-17', '2026-08-24', '2026-08-31'].map((date, at) => ({
    id: `lesson:${date}`,
    date: date as PlainDate,
    minutes: 45,
    work: at === 1 ? [] : [logged('u1', 'clap', 4, 'partly')],
    revisited: [],
  }));
  expect(activity(course({ taught }), 'u1/clap')?.recent).toEqual([1, 0, 1]);
});
