// Whose lessons stand where one is to be moved to.

import type { DayLesson, DayView } from '#contract';
import { minutesOf, type PlainTime } from '#core';

export interface MovedTo {
  readonly time: PlainTime;
  readonly minutes: number;
}

/** The day's other lessons that share a minute with the place; those that fall out stand in nobody's way. */
export const standInTheWay = (
  { lessons }: Pick<DayView, 'lessons'>,
  moved: DayLesson['id'],
  { time, minutes }: MovedTo,
): readonly DayLesson[] =>
  lessons.filter(
    (other) =>
      other.id !== moved &&
      (other.status === 'planned' || other.status === 'taught') &&
      minutesOf(other.time) < minutesOf(time) + minutes &&
      minutesOf(time) < minutesOf(other.time) + other.minutes,
  );
