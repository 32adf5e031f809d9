// That a student also plays over the resolution, and changes sides with a band told the same: common practice, no source.
import { expect, test } from 'vitest';
import { present } from '#core';
import { arrange } from '../../backing/arrange.ts';
import { createBackingSpec } from '../../backing/backing-spec.ts';
import { parseChart } from '../../chart/parse-chart.ts';
import { barsOf, type Turns, turnsOver } from './turns.ts';

const usual: Turns = { play: [2], rest: [2], rounds: 4, isFixed: false, chart: null };

/** `p` for a bar to play, `-` for one to rest. */
function pattern(turns: Partial<Turns>): string {
  return turnsOver({ ...usual, ...turns })
    .map(({ play, rest }) => 'p'.repeat(play) + '-'.repeat(rest))
    .join('');
}

test('without a chart, bars to play and to rest go round', () => {
  expect(pattern({})).toBe('pp--pp--pp--pp--');
  expect(pattern({ play: [2, 1], rest: [1, 2] })).toBe('pp-p--pp-p--');
});

test('where the chart always comes round in step, the last turn goes on over its resolution', () => {
  expect(pattern({ chart: 4 })).toBe('pp--pp--pp--pppp');
  expect(pattern({ chart: 8 })).toBe('pp--pp--pp--pppp');
  expect(pattern({ play: [1], rest: [3], chart: 4 })).toBe('p---p---p---pppp');
});

test('turns that drift against the chart reach all of it anyway', () => {
  expect(pattern({ play: [1], rest: [2], chart: 4 })).toBe('p--p--p--p--');
});

test('the turns end with the chart, unless their number is fixed or the sheet would grow long', () => {
  expect(pattern({ chart: 12 })).toBe('pp--pp--pp--pp--pp--pppp');
  expect(pattern({ chart: 12, isFixed: true })).toBe('pp--pp--pp--pppp');
  expect(pattern({ play: [4], rest: [4], chart: 12 })).toHaveLength(32);
  expect(pattern({ chart: 32 })).toBe('pp--pp--pp--pp--pp--pp--pp--pppp');
  expect(pattern({ chart: 32, isFixed: true })).toBe('pp--pp--pp--pp--');
});

test('a single turn keeps its rest', () => {
  expect(pattern({ rounds: 1, isFixed: true, chart: 4 })).toBe('pp--');
});

test('a band whose gate is told the same numbers changes sides in the same bars', () => {
  for (const [play, rest] of [
    [2, 2],
    [1, 3],
    [3, 1],
    [1, 2],
  ] as const) {
    const read = parseChart('| Dm7 | G7 | Cmaj7 | % |');
    const chart = present(read.ok ? read.value : null, 'a chart');
    const turns = turnsOver({ ...usual, play: [play], rest: [rest], chart: 4 });
    const spec = createBackingSpec(chart, {
      gate: { play, rest },
      choruses: Math.ceil(barsOf(turns) / 4),
      countIn: 0,
    });
    const band = arrange(spec, 1).bars.map(({ role }) => (role === 'play' ? 'p' : '-'));
    const last = present(turns.at(-1), 'a last turn');
    const sheet = turns.map((turn) => 'p'.repeat(turn.play) + '-'.repeat(turn.rest)).join('');
    const apart = barsOf(turns) - last.goesOn;
    expect(sheet.slice(0, apart)).toBe(band.join('').slice(0, apart));
  }
});
