// Source: ISO 16:1975, A4 = 440 Hz, twelve-tone equal temperament; see README.md.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { present } from '#core';
import { frequencyToMidi, midiToFrequency, parsePitch, pitchToMidi } from '#music';

interface Data {
  readonly notes: readonly { readonly midi: number; readonly name: string; readonly hz: number }[];
}
const data: Data = JSON.parse(
  readFileSync(new URL('./data/equal-temperament.json', import.meta.url), 'utf8'),
);

test('88 notes', () => expect(data.notes.length).toBe(88));

test.each(data.notes)('$name is MIDI $midi at $hz Hz', ({ midi, name, hz }) => {
  expect(pitchToMidi(present(parsePitch(name), name))).toBe(midi);
  expect(Math.abs(midiToFrequency(midi) - hz)).toBeLessThanOrEqual(0.00005 + 1e-9);
  // The table's hertz are rounded to four places: at the lowest note that is a third of a hundredth of a cent.
  expect(frequencyToMidi(hz)).toBeCloseTo(midi, 4);
});
