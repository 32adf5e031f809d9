// Where a unit stands among those of its strand, as a choice a person can make: first, after this one, last.

import type { CourseUnitView } from '#contract';
import { words } from '../../words/index.ts';

type Placed = Pick<CourseUnitView, 'id' | 'title' | 'strand' | 'position'>;

/** The units of a strand in order, but for `except`. */
export function unitsOnStrand<U extends Placed>(
  units: readonly U[],
  strand: string,
  except?: string,
): readonly U[] {
  return units
    .filter((unit) => unit.strand === strand && unit.id !== except)
    .sort((a, b) => a.position - b.position);
}

/** `first`, the id of the unit it comes after, or `last`. */
export function positionOptions(units: readonly Placed[], strand: string, except?: string) {
  const there = unitsOnStrand(units, strand, except);
  if (there.length === 0) return [{ value: 'last', label: words.student.give.first }];
  return [
    { value: 'first', label: words.student.give.first },
    ...there
      .slice(0, -1)
      .map((unit) => ({ value: unit.id as string, label: words.student.give.after(unit.title) })),
    { value: 'last', label: words.student.give.last },
  ];
}

/** The position on the strand, counted from 0 among the units there; null for the end. */
export function positionToNumber(
  units: readonly Placed[],
  strand: string,
  choice: string,
  except?: string,
): number | null {
  if (choice === 'last') return null;
  if (choice === 'first') return 0;
  const at = unitsOnStrand(units, strand, except).findIndex((unit) => unit.id === choice);
  return at === -1 ? null : at + 1;
}

/** The choice that says where a unit stands now. */
export function positionChoice(units: readonly Placed[], unit: Placed): string {
  const all = unitsOnStrand(units, unit.strand);
  const at = all.findIndex((one) => one.id === unit.id);
  if (at === all.length - 1) return 'last';
  return at <= 0 ? 'first' : (all[at - 1]?.id ?? 'first');
}
