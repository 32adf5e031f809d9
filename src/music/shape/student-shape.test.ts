import { expect, test } from 'vitest';
import { present, stages } from '#core';
import { findInstrument, isInRange, listInstruments, rangeAtStage } from '../instrument/instrument.ts';
import { easyRegister } from './easy-register.ts';
import { metronomeMark, shapeFor, staffRange } from './student-shape.ts';

const flute = present(findInstrument('flute'), 'flute');

test('a child gets fewer lines, slower and simpler; age unknown shapes nothing', () => {
  const student = { instrument: flute, stage: 'intermediate', seed: 1 } as const;
  const [child, adult, unknown] = [7, 40, null].map((age) => shapeFor({ ...student, age }));
  expect(child).toMatchObject({ bars: 4, rhythmGrade: 2, keys: 2 });
  expect(present(child, 'a shape').tempo.reading).toBeLessThan(present(adult, 'a shape').tempo.reading);
  expect(unknown).toEqual(adult);
});

// The marks of a mechanical metronome: twos to 60, threes to 72, fours to 120, sixes to 144, eights beyond (standard).
test.each([
  [59, 60],
  [67, 66],
  [73.4, 72],
  [118, 120],
  [130, 132],
  [155, 152],
])('%d beats a minute is set at %d', (wanted, mark) => expect(metronomeMark(wanted)).toBe(mark));

test.each(stages)(
  'a staff’s range and an easy register lie inside the %s range of every instrument',
  (stage) => {
    for (const instrument of listInstruments()) {
      const range = rangeAtStage(instrument, stage);
      const easy = easyRegister(instrument, stage);
      for (const hand of ['right', 'left'] as const) {
        const staff = staffRange(instrument, stage, hand);
        expect(isInRange(range, staff.low) && isInRange(range, staff.high), `${instrument.id} ${hand}`).toBe(
          true,
        );
      }
      if (easy !== null)
        expect(isInRange(range, easy.low) && isInRange(range, easy.high), instrument.id).toBe(true);
    }
  },
);
