import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { breakSystems } from './break-systems.ts';

const lesson = (minutes: number) => ({ fixed: 15, minutes });
const bars = (count: number, minutes = 30) => Array.from({ length: count }, () => lesson(minutes));
const sizes = (count: number, width: number, wanted: number) =>
  breakSystems(bars(count), width, wanted).map((system) => system.to - system.from);

describe('breakSystems', () => {
  it('has no system for no bars', () => {
    expect(breakSystems([], 1000, 8)).toEqual([]);
  });

  it('puts as many bars on a system as the wanted width of a minute asks', () => {
    // Five bars of 30 minutes at 9 px and 15 px beside them: 5 × 285 = 1425.
    expect(sizes(10, 1425, 9)).toEqual([5, 5]);
  });

  it('prefers even systems to one crammed and one lone bar', () => {
    expect(Math.min(...sizes(11, 1425, 9))).toBeGreaterThan(1);
  });

  it('leaves a short last system short, with minutes as wide as above', () => {
    const systems = breakSystems(bars(7), 1425, 9);
    const [first, last] = [systems[0], systems.at(-1)];
    expect(last && last.to - last.from).toBeLessThan(5);
    expect(last?.perMinute).toBeCloseTo(first?.perMinute ?? 0);
  });

  it('squeezes a bar that is longer than the page rather than lose it', () => {
    const [system] = breakSystems([lesson(1000)], 300, 9);
    expect(system && 15 * system.stretch + 1000 * system.perMinute).toBeCloseTo(300);
  });

  it('is no worse than any other way of breaking, for up to nine bars', () => {
    // All 2^(n-1) ways, with the badness of the full systems worked out here from its definition.
    const cost = (
      parts: readonly (readonly { fixed: number; minutes: number }[])[],
      width: number,
      wanted: number,
    ) =>
      parts.slice(0, -1).reduce((sum, part) => {
        const fixed = part.reduce((s, bar) => s + bar.fixed, 0);
        const minutes = part.reduce((s, bar) => s + bar.minutes, 0);
        if (part.length > 1 && fixed + minutes * 1.6 > width) return Number.POSITIVE_INFINITY;
        return sum + Math.log((width - fixed) / minutes / wanted) ** 2;
      }, 0);
    fc.assert(
      fc.property(
        fc.array(fc.constantFrom(20, 30, 45, 60), { minLength: 2, maxLength: 9 }),
        fc.integer({ min: 400, max: 1500 }),
        (minutes, width) => {
          const all = minutes.map(lesson);
          const found = breakSystems(all, width, 8).map((s) => all.slice(s.from, s.to));
          const last = found.at(-1)?.length ?? 0;
          for (let mask = 0; mask < 2 ** (all.length - 1); mask++) {
            const parts: { fixed: number; minutes: number }[][] = [[]];
            for (const [i, bar] of all.entries()) {
              parts.at(-1)?.push(bar);
              if (i < all.length - 1 && mask & (1 << i)) parts.push([]);
            }
            // The last system has a badness of its own, so only ways with the same one are comparable here.
            if (parts.at(-1)?.length === last)
              expect(cost(found, width, 8)).toBeLessThanOrEqual(cost(parts, width, 8) + 1e-9);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});
