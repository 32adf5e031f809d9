import { expect, test } from 'vitest';
import { present } from '#core';
import { parseChart } from '../chart/parse-chart.ts';
import { arrange } from './arrange.ts';
import { createBackingSpec } from './backing-spec.ts';
import { loopSpec, loopTicks } from './loop-bars.ts';

const read = parseChart('|: Dm7 | G7 | Cmaj7 | A7 :|');
const chart = present(read.ok ? read.value : null, 'a chart');

test('bars 2 to 3 go round four times and begin again where they began', () => {
  const spec = loopSpec(createBackingSpec(chart, { countIn: 1 }), 2, 3);
  const arrangement = arrange(spec, 1);
  const loop = present(loopTicks(spec, arrangement), 'a loop');
  const bar = 4 * 480;
  expect(loop).toEqual({ from: bar, to: bar + 4 * 2 * bar });
  expect(arrangement.bars.slice(1, 5).map((one) => one.written)).toEqual([2, 3, 2, 3]);
});

test('keys go round whole, and a band that changes tempo plays to its end', () => {
  const keys = loopSpec(createBackingSpec(chart, { keys: [0, 5, 10] }), 1, 2);
  expect(keys.choruses).toBe(4);
  const steps = loopSpec(createBackingSpec(chart, { tempoStep: { by: 4, limit: 200 } }), 1, 2);
  expect(loopTicks(steps, arrange(steps, 1))).toBeNull();
});
