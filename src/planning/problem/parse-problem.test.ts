import { expect, test } from 'vitest';
import { parseProblem } from './parse-problem.ts';
import { formatProblemFault } from './problem-fault.ts';

type Loose = Record<string, unknown>;

const lesson = (id: string, date: string): Loose => ({
  id,
  date,
  length: 30,
  fixed: 4,
  recap: 3,
  reviewMax: 6,
  maxBlocks: 4,
  maxStrands: 2,
});
const activity = (id: string, more: Loose = {}): Loose => ({
  id,
  strand: 'S',
  kind: 'core',
  demand: 12,
  minChunk: 4,
  maxChunk: 10,
  weight: 2,
  value: 0,
  preds: [],
  first: 0,
  last: 1,
  review: 0,
  recent: [1, 0],
  ...more,
});
const problem = (more: Loose = {}): Loose => ({
  id: 'p',
  alpha: 0.2,
  z: 0.841621,
  sigma: 0.3,
  tau: 0.15,
  maxRun: 3,
  parkGap: 2,
  reviewGapDays: 7,
  weights: { late: 1, solo: 1, split: 1 },
  lessons: [lesson('a', '2026-09-07'), lesson('b', '2026-09-14')],
  strands: [{ id: 'S', priority: 1, deadline: null }],
  activities: [activity('A'), activity('B', { preds: ['A'] })],
  reviews: [{ id: 'R', minutes: 3, due: 0, weight: 1 }],
  ...more,
});
const lessonsWith = (more: Loose): Loose => ({ lessons: [{ ...lesson('a', '2026-09-07'), ...more }] });
const activityWith = (more: Loose): Loose => ({ activities: [activity('A', more)] });

test('a good problem is read as it stands', () => {
  const parsed = parseProblem(problem());
  expect(parsed).toEqual({ ok: true, value: problem() });
});

test('what may be left out gets what the docstring says', () => {
  const {
    z: _z,
    id: _id,
    ...rest
  } = problem({
    strands: [{ id: 'S' }],
    activities: [(({ recent: _recent, value: _value, ...kept }) => kept)(activity('A'))],
  });
  const parsed = parseProblem(rest);
  if (!parsed.ok) throw new Error(formatProblemFault(parsed.error));
  expect(parsed.value.z).toBeCloseTo(0.8416212, 6);
  expect(parsed.value.id).toBe('problem');
  expect(parsed.value.strands).toEqual([{ id: 'S', priority: 1, deadline: null }]);
  expect(parsed.value.activities[0]?.recent).toEqual([]);
  const { alpha: _alpha, ...withoutAlpha } = problem();
  const other = parseProblem(withoutAlpha);
  expect(other.ok && other.value.alpha).toBeCloseTo(0.2, 5);
});

test('no lessons, no strands, no activities and no revisits make a problem too', () => {
  expect(parseProblem(problem({ lessons: [], strands: [], activities: [], reviews: [] })).ok).toBe(true);
});

test.each<readonly [string, Loose, string, string]>([
  ['a missing list', { lessons: undefined }, 'lessons', 'MissingField'],
  ['a list that is none', { activities: {} }, 'activities', 'WrongType'],
  ['an entry that is none', { reviews: [3] }, 'reviews[0]', 'WrongType'],
  ['weights missing', { weights: undefined }, 'weights', 'MissingField'],
  ['a weight as text', { weights: { late: '1', solo: 1, split: 1 } }, 'weights.late', 'WrongType'],
  ['a negative weight', { weights: { late: 1, solo: -1, split: 1 } }, 'weights.solo', 'OutOfRange'],
  ['alpha of one', { alpha: 1 }, 'alpha', 'OutOfRange'],
  ['z that is not alpha’s', { z: 1.6 }, 'z', 'Contradiction'],
  ['not a number', { sigma: Number.NaN }, 'sigma', 'WrongType'],
  ['a run of none', { maxRun: 0 }, 'maxRun', 'OutOfRange'],
  ['half a lesson of rest', { parkGap: 1.5 }, 'parkGap', 'OutOfRange'],
  ['30 February', lessonsWith({ date: '2026-02-30' }), 'lessons[0].date', 'NoSuchDate'],
  [
    'lessons out of order',
    { lessons: [lesson('a', '2026-09-14'), lesson('b', '2026-09-07')] },
    'lessons[1].date',
    'OutOfOrder',
  ],
  [
    'twin lessons',
    { lessons: [lesson('a', '2026-09-07'), lesson('a', '2026-09-14')] },
    'lessons[1].id',
    'DuplicateId',
  ],
  ['more fixed than length', lessonsWith({ fixed: 31 }), 'lessons[0].fixed', 'Contradiction'],
  ['a recap too long', lessonsWith({ recap: 26 }), 'lessons[0].recap', 'CannotFit'],
  ['a lesson of a day', lessonsWith({ length: 1440 }), 'lessons[0].length', 'OutOfRange'],
  ['an unknown strand', activityWith({ strand: 'T' }), 'activities[0].strand', 'UnknownId'],
  ['an unknown kind', activityWith({ kind: 'extra' }), 'activities[0].kind', 'WrongType'],
  ['an unknown predecessor', activityWith({ preds: ['Z'] }), 'activities[0].preds[0]', 'UnknownId'],
  ['itself as predecessor', activityWith({ preds: ['A'] }), 'activities[0].preds[0]', 'Cycle'],
  ['min over max', activityWith({ minChunk: 11 }), 'activities[0].minChunk', 'Contradiction'],
  ['min over demand', activityWith({ minChunk: 8, demand: 7 }), 'activities[0].minChunk', 'CannotFit'],
  ['first after last', activityWith({ first: 2 }), 'activities[0].first', 'Contradiction'],
  ['part of a minute', activityWith({ demand: 7.5 }), 'activities[0].demand', 'OutOfRange'],
  ['a strange mark', activityWith({ recent: [0, 2] }), 'activities[0].recent[1]', 'WrongType'],
  ['twin activities', { activities: [activity('A'), activity('A')] }, 'activities[1].id', 'DuplicateId'],
  [
    'a revisit due before',
    { reviews: [{ id: 'R', minutes: 3, due: -1, weight: 1 }] },
    'reviews[0].due',
    'OutOfRange',
  ],
])('%s is refused where it stands', (_what, more, path, kind) => {
  const parsed = parseProblem(JSON.parse(JSON.stringify(problem(more), keepNaN), reviveNaN));
  expect(parsed.ok).toBe(false);
  if (parsed.ok) return;
  expect([parsed.error.path, parsed.error.kind]).toEqual([path, kind]);
  expect(formatProblemFault(parsed.error)).toContain(path);
  expect(parsed.error.mend).not.toBe('');
});

test('a circle of predecessors is named', () => {
  const activities = [
    activity('A', { preds: ['C'] }),
    activity('B', { preds: ['A'] }),
    activity('C', { preds: ['B'] }),
  ];
  const parsed = parseProblem(problem({ activities }));
  expect(!parsed.ok && formatProblemFault(parsed.error)).toBe(
    'activities[0].preds: go round in a circle: "A" rests on "C" rests on "B" rests on "A"; take one of these out',
  );
});

test('a listed revisit may not have the id of one that a completion will bring', () => {
  const parsed = parseProblem(
    problem({
      activities: [activity('A', { review: 3 })],
      reviews: [{ id: 'rev:A', minutes: 3, due: 0, weight: 1 }],
    }),
  );
  expect(!parsed.ok && parsed.error.path).toBe('reviews[0].id');
});

test('anything at all is answered, never thrown', () => {
  for (const value of [
    undefined,
    null,
    3,
    'x',
    [],
    {},
    { lessons: [null] },
    Object.create(null),
    { __proto__: null, id: 1 },
  ])
    expect(parseProblem(value).ok).toBe(false);
});

const keepNaN = (_key: string, value: unknown): unknown => (Number.isNaN(value) ? 'not a number' : value);
const reviveNaN = (_key: string, value: unknown): unknown => (value === 'not a number' ? Number.NaN : value);
