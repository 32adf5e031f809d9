import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitTitle } from './fit-title.ts';

const measure = (text: string, size: number) => text.length * size;
const fitWords = (title: string, characters: number, lines: number) =>
  fitTitle(title, characters, lines, 1, measure);

describe('fitTitle', () => {
  it.each([
    ['Long notes', 10, 1, ['Long notes'], true],
    ['Long notes', 9, 2, ['Long', 'notes'], true],
    ['Two-bar answers over a drone', 16, 2, ['Two-bar answers', 'over a drone'], true],
    ['Two-bar answers over a drone', 16, 1, ['Two-bar answers…'], false],
    ['Herring song: second verse', 14, 1, ['Herring song…'], false],
    ['Improvisation', 8, 1, ['Improv.'], false],
    ['The walking game', 9, 1, ['walking…'], false],
    ['Ribbon and pebbles', 12, 1, ['Ribbon…'], false],
    ['The long road home', 11, 1, ['The long…'], false],
    ['Ear', 3, 1, ['Ear'], true],
  ] as const)('%s in %d characters on %d lines', (title, characters, lines, expected, whole) => {
    const fitted = fitWords(title, characters, lines);
    expect(fitted?.lines).toEqual(expected);
    expect(fitted?.whole).toBe(whole);
  });

  it.each([
    ['The engine in the long note', 5],
    ['The walking game', 6],
    ['Near and far', 10],
    ['Let it breathe', 6],
  ] as const)('%s in %d characters leaves no stump', (title, characters) => {
    expect(fitWords(title, characters, 1)).toBeNull();
  });

  it('leaves fewer letters where a name must stand', () => {
    expect(fitTitle('Technique', 6, 1, 1, measure, 3)?.lines).toEqual(['Techn.']);
  });

  it('gives up rather than run over', () => {
    expect(fitWords('Improvisation', 3, 2)).toBeNull();
    expect(fitWords('   ', 30, 2)).toBeNull();
  });

  it('never runs over its width or its lines', () => {
    fc.assert(
      fc.property(
        fc.string(),
        fc.integer({ min: -5, max: 40 }),
        fc.integer({ min: 1, max: 3 }),
        (title, width, lines) => {
          const fitted = fitWords(title, width, lines);
          if (fitted === null) return;
          expect(fitted.lines.length).toBeLessThanOrEqual(lines);
          for (const line of fitted.lines) expect(line.length).toBeLessThanOrEqual(width);
        },
      ),
    );
  });
});
