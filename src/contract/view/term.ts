// Terms, holidays and the week.

import type { Id, PlainDate, PlainTime, Weekday } from '#core';

export interface TermView {
  readonly terms: readonly {
    readonly id: Id<'term'>;
    readonly name: string;
    readonly starts: PlainDate;
    readonly ends: PlainDate;
    readonly lessons: number;
  }[];
  readonly holidays: readonly {
    readonly id: Id<'holiday'>;
    readonly name: string;
    readonly starts: PlainDate;
    readonly ends: PlainDate;
    readonly source: string;
  }[];
  readonly week: readonly {
    readonly slot: Id<'slot'>;
    readonly course: Id<'course'>;
    readonly courseRevision: number;
    readonly learner: string;
    /** Who comes: one, or the members of a group. */
    readonly students: readonly Id<'student'>[];
    readonly instrumentName: string;
    readonly weekday: Weekday;
    readonly time: PlainTime;
    readonly minutes: number;
    readonly clash: boolean;
  }[];
}
