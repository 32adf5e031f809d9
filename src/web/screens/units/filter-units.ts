// The library narrowed down.

import type { UnitRow } from '#contract';
import { type Area, areas, type Stage, stages } from '#planning';

export interface UnitFilter {
  readonly area: Area | '';
  readonly stage: Stage | '';
  /** As typed; what is no whole number asks for nothing. */
  readonly age: string;
  readonly find: string;
}

const plain = (text: string) => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

/** Units that fit everything asked for, in the order given. */
export function filterUnits(units: readonly UnitRow[], filter: UnitFilter): readonly UnitRow[] {
  const age = /^\s*\d+\s*$/.test(filter.age) ? Number(filter.age) : null;
  const wanted = plain(filter.find)
    .split(/\s+/)
    .filter((word) => word !== '');
  return units.filter((unit) => {
    if (filter.area !== '' && unit.area !== filter.area) return false;
    if (filter.stage !== '' && !unit.stages.includes(filter.stage)) return false;
    if (age !== null && (age < unit.ages.from || age > unit.ages.to)) return false;
    const text = plain(`${unit.title} ${unit.goal}`);
    return wanted.every((word) => text.includes(word));
  });
}

/** By area in the areas' own order, from the easiest stage on; areas without units are left out. */
export function groupByArea(
  units: readonly UnitRow[],
): readonly { readonly area: Area; readonly units: readonly UnitRow[] }[] {
  const first = (unit: UnitRow) => Math.min(...unit.stages.map((stage) => stages.indexOf(stage)));
  return areas
    .map((area) => ({
      area,
      units: units.filter((unit) => unit.area === area).sort((a, b) => first(a) - first(b)),
    }))
    .filter((group) => group.units.length > 0);
}

/** What the address says of the filter; what it does not know is left open. */
export function readFilter(search: URLSearchParams): UnitFilter {
  return {
    area: areas.find((area) => area === search.get('area')) ?? '',
    stage: stages.find((stage) => stage === search.get('stage')) ?? '',
    age: search.get('age') ?? '',
    find: search.get('find') ?? '',
  };
}
