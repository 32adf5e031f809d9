import { expect, test } from 'vitest';
import { present, stages } from '#core';
import { listInstruments } from '../../instrument/instrument.ts';
import { parseMaterialSpec } from '../../spec/material-spec.ts';
import { createSheet } from '../create-sheet.ts';

test('no breath parts the last bar from what leads to it: common practice, no source', () => {
  let breaths = 0;
  for (const instrument of listInstruments().filter(
    ({ family }) => family === 'woodwind' || family === 'brass',
  ))
    for (const stage of stages)
      for (const [seed, metre] of ['2/4', '3/4', '4/4', '2/4'].entries()) {
        const spec = parseMaterialSpec({ kind: 'reading', metre, bars: 4 });
        if (!spec.ok) throw new Error(spec.error.message);
        const made = createSheet(spec.value, { instrument, stage, age: null, seed });
        if (!made.ok) continue;
        for (const [b, bar] of present(made.value.score.parts[0], 'a part').bars.entries()) {
          const events = bar.voices.flatMap((voice) => voice.events);
          const breathes = events.some(
            (event) => event.kind === 'note' && event.articulations.includes('breath'),
          );
          if (breathes) breaths++;
          expect(breathes && b % 4 === 2, `${instrument.id} ${stage} ${metre} bar ${b + 1}`).toBe(false);
        }
      }
  expect(breaths).toBeGreaterThan(50);
});
