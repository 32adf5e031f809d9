import { expect, test } from 'vitest';
import type { CourseView } from '#contract';
import type { PlainDate } from '#core';
import { tellingMoves } from './telling-moves.ts';

type Move = CourseView['moves'][number];
const move = (sentence: string, from: string | null, to: string | null): Move => ({
  key: sentence,
  sentence,
  from: from as PlainDate | null,
  to: to as PlainDate | null,
});
const told = (...moves: readonly Move[]) => tellingMoves(moves).map((one) => one.sentence);

test('the soonest comes first, on one day the longest way, and what comes or goes before both', () => {
  expect(
    told(
      move('late', '2026-12-16', '2026-12-09'),
      move('near', '2026-12-02', '2026-12-09'),
      move('far', '2026-12-16', '2026-12-02'),
      move('new', null, '2026-12-02'),
    ),
  ).toEqual(['new', 'far', 'near', 'late']);
});

test('the second tells of another reason, and no move is lost', () => {
  expect(
    told(
      move('“A” moved: no lesson on 2 December.', '2026-12-02', '2026-12-09'),
      move('“B: two” moved: no lesson on 2 December.', '2026-12-02', '2026-12-09'),
      move('“C” moved: time came free.', '2026-12-16', '2026-12-09'),
    ),
  ).toEqual([
    '“A” moved: no lesson on 2 December.',
    '“C” moved: time came free.',
    '“B: two” moved: no lesson on 2 December.',
  ]);
  expect(told(move('one', null, null))).toEqual(['one']);
  expect(told()).toEqual([]);
});
