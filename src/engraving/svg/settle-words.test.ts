import { expect, test } from 'vitest';
import { settleWords } from './settle-words.ts';

const bar = (word: string, figure: string) =>
  `<g class="system"><g id="a-bar-1" class="measure" data-bar="1">${figure}${word}</g></g>`;
const word = (x: number, y: number) =>
  `<g class="dir" font-style="italic"><text x="${x}" y="${y}" font-size="0"><tspan class="rend"><tspan class="text"><tspan font-size="440">play</tspan></tspan></tspan></text></g>`;
const figure = (x: number, y: number) =>
  `<g class="tupletNum"><use href="#a-E883" transform="translate(${x}, ${y}) scale(0.7, 0.7)"/></g>`;
const xOf = (svg: string) => Number(/<text x="(\d+)"/.exec(svg)?.[1]);

test('words that would run into the figure of a triplet stand further left', () => {
  const settled = settleWords(bar(word(2000, 5300), figure(2600, 5350)));
  expect(xOf(settled)).toBeLessThan(2000);
  expect(xOf(settled) + 4 * 0.4 * 440).toBeLessThan(2600);
});

test('words above the figure, or beside it with room, stay', () => {
  for (const place of [figure(2600, 5900), figure(3200, 5300)]) {
    const drawing = bar(word(2000, 5300), place);
    expect(settleWords(drawing)).toBe(drawing);
  }
});
