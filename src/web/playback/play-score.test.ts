import { expect, it } from 'vitest';
import { createSheet, findInstrument, parseMaterialSpec } from '#music';
import { scoreToTones } from './play-score.ts';

it('hears a scale as it sounds, evenly, bar by bar', () => {
  const spec = parseMaterialSpec({
    kind: 'scale',
    start: 'C',
    keys: 1,
    octaves: 1,
    value: 'crotchet',
    metre: '4/4',
    tempo: 60,
    direction: 'up',
  });
  const instrument = findInstrument('trumpet_bb');
  if (!spec.ok || instrument === null) throw new Error('the spec is sound');
  const sheet = createSheet(spec.value, { instrument, stage: 'intermediate', age: null, seed: 1 });
  if (!sheet.ok) throw new Error(sheet.error.message);
  const { tones, bars } = scoreToTones(sheet.value.score);
  // Written C4 sounds B flat 3 (58) on a trumpet in B flat; a major scale rises 2 2 1 2 2 2 1 semitones.
  expect(tones.slice(0, 8).map(({ midi }) => midi)).toEqual([58, 60, 62, 63, 65, 67, 69, 70]);
  expect(tones.slice(0, 4).map(({ at }) => at)).toEqual([0, 1, 2, 3]); // sixty crotchets a minute: one a second
  expect(bars.slice(0, 2)).toEqual([
    { at: 0, bar: 0 },
    { at: 4, bar: 1 },
  ]);
});
