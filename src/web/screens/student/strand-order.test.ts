import { describe, expect, it } from 'vitest';
import type { Id } from '#core';
import { positionChoice, positionOptions, positionToNumber } from './strand-order.ts';

const unit = (id: string, strand: string, position: number) => ({
  id: `course-unit:${id}` as Id<'course-unit'>,
  title: id.toUpperCase(),
  strand: `strand:${strand}` as Id<'strand'>,
  position,
});
const units = [unit('c', 'x', 2), unit('a', 'x', 0), unit('b', 'x', 1), unit('z', 'y', 0)];

describe('the place of a unit on its strand', () => {
  it('offers first, after each but the last, and last', () => {
    expect(positionOptions(units, 'strand:x').map((one) => one.value)).toEqual([
      'first',
      'course-unit:a',
      'course-unit:b',
      'last',
    ]);
    expect(positionOptions(units, 'strand:none').map((one) => one.value)).toEqual(['last']);
  });

  it('leaves the unit itself out of the places it can go', () => {
    expect(positionToNumber(units, 'strand:x', 'course-unit:c', 'course-unit:a')).toBe(2);
    expect(positionToNumber(units, 'strand:x', 'course-unit:b', 'course-unit:a')).toBe(1);
    expect(positionToNumber(units, 'strand:x', 'first')).toBe(0);
    expect(positionToNumber(units, 'strand:x', 'last')).toBeNull();
  });

  it.each([
    ['a', 'first'],
    ['b', 'course-unit:a'],
    ['c', 'last'],
    ['z', 'last'],
  ])('says where %s stands', (id, choice) => {
    const found = units.find((one) => one.id === `course-unit:${id}`);
    expect(found && positionChoice(units, found)).toBe(choice);
  });
});
