import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { listInstruments } from '#music';
import { readUnitText } from '#planning';
import { howToFor } from './how-to-for.ts';

const howTo = `Make one sound.

- **Flute:** blow across.
- **Recorder and saxophone:** begin on B.
- **Brass:** buzz.
- **Bowed strings:** pluck first.
- **Guitar and ukulele:** the thumb.

**If it squeaks**, less.`;

const around = (own: string) => `Make one sound.\n\n${own}\n\n**If it squeaks**, less.`;

test.each([
  ['flute', '**Flute:** blow across.'],
  ['recorder_descant', '**Recorder and saxophone:** begin on B.'],
  ['alto_sax', '**Recorder and saxophone:** begin on B.'],
  ['trombone', '**Brass:** buzz.'],
  ['cello', '**Bowed strings:** pluck first.'],
  ['guitar', '**Guitar and ukulele:** the thumb.'],
  ['ukulele', '**Guitar and ukulele:** the thumb.'],
])('a player of %s sees that item alone', (instrument, own) => {
  expect(howToFor(howTo, instrument)).toBe(around(own));
});

test('a player of something else, or of nothing known, sees the list', () => {
  expect(howToFor(howTo, 'piano')).toBe(howTo);
  expect(howToFor(howTo, 'theremin')).toBe(howTo);
});

test('other lists and a single item stay as they are', () => {
  for (const text of [
    '- **Flute:** blow.\n- **Monday:** rest.',
    '- Three rungs\n- Four',
    '- **Flute:** blow across.',
    'Plain.',
  ])
    expect(howToFor(text, 'flute')).toBe(text);
});

const folder = new URL('../../../../library/units/', import.meta.url);

test('every list by instrument in the starter units names the ten instruments that the studio meets most', () => {
  const asked =
    'flute recorder_descant clarinet_bb alto_sax trumpet_bb violin viola cello guitar piano'.split(' ');
  expect(asked.filter((id) => !listInstruments().some((one) => one.id === id))).toEqual([]);
  let lists = 0;
  for (const file of readdirSync(folder)) {
    const read = readUnitText(readFileSync(new URL(file, folder), 'utf8'), 'yaml');
    if (!read.ok) throw new Error(file);
    for (const activity of [...read.value.unit.activities, ...read.value.unit.extensions]) {
      if (!activity.howTo.includes('\n- **')) continue;
      lists++;
      for (const id of asked)
        expect(howToFor(activity.howTo, id).length, `${activity.key} ${id}`).toBeLessThan(
          0.7 * activity.howTo.length,
        );
    }
  }
  expect(lists).toBeGreaterThanOrEqual(2);
});
