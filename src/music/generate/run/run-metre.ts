// The metre a study falls into best, and its values there.

import { present } from '#core';
import type { Metre } from '../../rhythm/metre.ts';
import { createMetre, parseMetre } from '../../rhythm/metre.ts';
import { barTicks } from '../rhythm/beat-grid.ts';
import { type Cell, compoundCell, evenCells } from './time-run.ts';

export type RunValue = keyof typeof evenCells;

const sum = (cell: Cell) => cell.lengths.reduce((a, b) => a + b, 0);
const cellOf = (...lengths: readonly number[]): Cell => ({ lengths, isTriplet: false });
const times = (count: number, length: number) => cellOf(...Array.from({ length: count }, () => length));

/** The values of a run in a metre; null where they do not fill its beats. */
export function cellIn(metre: Metre, value: RunValue): Cell | null {
  const isCompound = metre.unit >= 8 && metre.groups.every((group) => group === 3);
  const bar = barTicks(metre);
  if (isCompound) {
    if (value === 'quaver' || value === 'triplet') return compoundCell;
    if (value === 'semiquaver') return times(6, 12);
    if (value === 'crotchet') return cellOf(72);
    return value === 'minim' && bar % 144 === 0 ? cellOf(144) : null;
  }
  if (metre.unit >= 8) {
    if (value === 'quaver') return times(metre.beats, 24);
    return value === 'semiquaver' ? times(metre.beats * 2, 12) : null;
  }
  const cell = evenCells[value];
  return bar % sum(cell) === 0 ? cell : null;
}

const candidates: Readonly<Record<RunValue, readonly string[]>> = {
  semibreve: ['4/4'],
  minim: ['4/4', '2/2'],
  crotchet: ['4/4', '3/4'],
  quaver: ['4/4', '3/4', '6/8', '2/4'],
  triplet: ['4/4', '2/4', '3/4'],
  semiquaver: ['4/4', '2/4', '3/4'],
};

/**
 * The usual metre in which a run of `count` notes in figures of `figure` notes ends best: on a note twice the running
 * value or more, with figures that begin on beats.
 */
export function chooseRunMetre(value: RunValue, count: number, figure: number): Metre {
  let best = createMetre(4, 4);
  let lowest = Number.POSITIVE_INFINITY;
  for (const [i, name] of candidates[value].entries()) {
    const metre = present(parseMetre(name), 'a usual metre');
    const cell = cellIn(metre, value);
    if (cell === null) continue;
    const length = present(cell.lengths[0], 'a cell has a value');
    const bar = barTicks(metre);
    const room = bar - ((count * length) % bar);
    let cost = i * 0.6;
    if (figure > 1 && bar % (figure * length) !== 0) cost += 2;
    if (figure === 3 && cell.lengths.length % 3 === 0) cost -= 1;
    if (figure === 1 && metre.unit === 8) cost += 1; // scales run in twos and fours unless the figure asks for threes
    if (count % cell.lengths.length !== 0) cost += 1.5;
    if (room === bar) cost += 0.4;
    else if (room < 2 * length) cost += 2.5;
    if (cost < lowest) [best, lowest] = [metre, cost];
  }
  return best;
}
