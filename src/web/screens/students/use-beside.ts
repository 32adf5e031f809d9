// Where in the week a lesson fits next to one of the siblings of those who come to it.

import { useStudents, useTerm } from '../../hooks/use-view.ts';
import { type Beside, findBeside } from './beside-sibling.ts';
import { weekToStands } from './first-lessons-draft.ts';

export interface BesideWish {
  /** Ids of those who come. */
  readonly students: readonly string[];
  /** How long the lesson is. */
  readonly minutes: number;
  /** The weekly lesson that is moved and so stands in nobody's way; null for a new one. */
  readonly slot: string | null;
}

export function useBeside({ students, minutes, slot }: BesideWish): Beside {
  const rows = useStudents().data?.students ?? [];
  const week = useTerm().data?.week ?? [];
  const siblings = rows.filter(({ id }) => students.includes(id)).flatMap((row) => row.siblings);
  return findBeside(
    // Who comes to this lesson, too, needs no other one beside it.
    siblings.map(({ id }) => id).filter((id) => !students.includes(id)),
    minutes,
    weekToStands(week.filter((one) => one.slot !== slot)),
  );
}
