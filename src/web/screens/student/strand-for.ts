import type { UnitRow } from '#contract';
import { areaNames } from '../../words/student.ts';

/** The strand named like the unit's area, else the first. */
export function strandFor<S extends { readonly name: string }>(
  course: { readonly strands: readonly S[] },
  unit: Pick<UnitRow, 'area'> | null,
): S | undefined {
  const area = unit && areaNames[unit.area].toLocaleLowerCase();
  return course.strands.find((one) => one.name.toLocaleLowerCase() === area) ?? course.strands[0];
}
