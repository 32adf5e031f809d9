// Of many moves, those a teacher wants to hear of first: what touches the next lessons, and not twice the same reason.

import type { CourseView } from '#contract';
import { daysBetween } from '#core';

type Move = CourseView['moves'][number];

/**
 * The moves with the most telling first: soonest first, on one day the longest way first; but the second of all tells of
 * another reason than the first, where there is one.
 */
export function tellingMoves(moves: readonly Move[]): readonly Move[] {
  const inOrder = moves.toSorted((a, b) => {
    const [one, other] = [soonest(a), soonest(b)];
    return one === other ? distance(b) - distance(a) : one < other ? -1 : 1;
  });
  const [first, ...rest] = inOrder;
  const second = first && rest.find((move) => reasonOf(move) !== reasonOf(first));
  return first && second ? [first, second, ...rest.filter((move) => move !== second)] : inOrder;
}

/** The first day that a move touches. */
const soonest = ({ from, to }: Move): string =>
  from !== null && to !== null ? (from < to ? from : to) : (from ?? to ?? '');

/** Days; coming new or going altogether is the longest way. */
const distance = ({ from, to }: Move): number =>
  from === null || to === null ? Number.MAX_SAFE_INTEGER : Math.abs(daysBetween(from, to));

/** A sentence tells its reason after its last colon. */
const reasonOf = ({ sentence }: Move): string => sentence.slice(sentence.lastIndexOf(': ') + 1);
