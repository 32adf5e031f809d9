// Sources: ISO 16:1975 and the definition of the cent; Friberg & Sundberg 1995 for what listeners can tell; see README.md.
import { expect, test } from 'vitest';
import { hearNotes } from '#listening';
import { midiToFrequency } from '#music';
import { listeningTable } from './reference.ts';

const rate = 44_100;

/** Tones of six partials, each with a soft start, one after another at the given seconds. */
function tones(
  list: readonly { readonly at: number; readonly seconds: number; readonly hz: number }[],
): Float32Array {
  const end = Math.max(...list.map((tone) => tone.at + tone.seconds)) + 0.3;
  const samples = new Float32Array(Math.ceil(end * rate));
  for (const { at, seconds, hz } of list) {
    const start = Math.round(at * rate);
    const length = Math.round(seconds * rate);
    for (let i = 0; i < length; i++) {
      const t = i / rate;
      const level = Math.min(1, t / 0.01, (length / rate - t) / 0.02);
      let sum = 0;
      for (let h = 1; h <= 6; h++) sum += Math.sin(2 * Math.PI * hz * h * t) / h;
      samples[start + i] = 0.2 * level * sum;
    }
  }
  return samples;
}

test.each(listeningTable.cents)('$hz Hz is heard $cents cents from A4', ({ hz, cents }) => {
  const { notes } = hearNotes(tones([{ at: 0.3, seconds: 1, hz }]), rate);
  expect(notes).toHaveLength(1);
  const heard = ((notes[0]?.midi ?? 0) - 69) * 100 + (notes[0]?.cents ?? 0);
  expect(Math.abs(heard - cents)).toBeLessThan(3);
});

test('every key from E2 to C7 is heard as itself', () => {
  for (let midi = 40; midi <= 96; midi += 4) {
    const { notes } = hearNotes(tones([{ at: 0.2, seconds: 0.6, hz: midiToFrequency(midi) }]), rate);
    expect(
      notes.map((note) => note.midi),
      `key ${midi}`,
    ).toEqual([midi]);
    expect(Math.abs(notes[0]?.cents ?? 99)).toBeLessThan(5);
  }
});

// what a listener can just tell at 500 ms between onsets is 12.5 ms: a clean onset has to be heard at least as finely
test('clean onsets are heard as finely as listeners tell time', () => {
  const jnd = listeningTable.timing_jnd.table.find((row) => row.ioi_ms === 500)?.jnd_ms ?? 0;
  const truth = Array.from({ length: 8 }, (_, i) => ({
    at: 0.4 + i * 0.5 + (i % 3) * 0.004,
    seconds: 0.4,
    hz: midiToFrequency(60 + i),
  }));
  const { notes } = hearNotes(tones(truth), rate);
  expect(notes).toHaveLength(8);
  const errors = notes.map((note, i) => Math.abs(note.onset - (truth[i]?.at ?? 0)) * 1000);
  expect(Math.max(...errors)).toBeLessThan(jnd);
});
