// What is heard, against what was written: levels by BS.1770, strokes on their ticks, tuning by ISO 16 (see README.md).

import { expect, test } from 'vitest';
import { type Arrangement, arrange, createBackingSpec, feelIds, midiToFrequency, parseChart } from '#music';
import { createTimeMap } from '#sound';
import { openBand } from './bank.ts';
import { levelTrack } from './whole-track.ts';

const rate = 44_100;

const band = openBand(rate);

const chart = (() => {
  const read = parseChart('[A] Am7 | D7 | Gmaj7 | E7 |');
  if (!read.ok) throw new Error('a chart');
  return read.value;
})();
const played = async (arrangement: Arrangement) => {
  const track = await band.play(arrangement);
  return track.next(track.length);
};

test('every feel stands at -16 LUFS within 0.5 LU, peaks at or under -1 dBTP, and nothing clips', async () => {
  for (const feel of feelIds) {
    const { loudness, peak, pieces } = levelTrack(
      await played(arrange(createBackingSpec(chart, { feel }), 11)),
    );
    expect(Math.abs(loudness + 16), `${feel}: ${loudness} LUFS`).toBeLessThanOrEqual(0.5);
    expect(peak, feel).toBeLessThanOrEqual(-1);
    for (const { left, right } of pieces)
      expect([...left, ...right].every((sample) => Math.abs(sample) < 1)).toBe(true);
  }
});

test('cut into pieces of any size a track is the same, sample by sample', async () => {
  const arrangement = arrange(createBackingSpec(chart, { feel: 'swing' }), 4);
  const whole = await played(arrangement);
  const track = await band.play(arrangement);
  let at = 0;
  let furthest = 0;
  for (let size = 1; at < track.length; size = (size * 7 + 13) % 9973) {
    const piece = track.next(size);
    piece.left.forEach((sample, n) => {
      furthest = Math.max(furthest, Math.abs(sample - (whole.left[at + n] ?? 9)));
    });
    at += piece.left.length;
  }
  expect(at).toBe(track.length);
  expect(furthest).toBe(0);
});

test.each(['swing', 'ballad', 'rock'] as const)(
  'a loop of %s goes on over its seam as continuous playing does, within -60 dBFS',
  async (feel) => {
    const arrangement = arrange(createBackingSpec(chart, { feel, choruses: 3, countIn: 0, tempo: 133 }), 6);
    const [from, to] = [arrangement.bars[4]?.tick ?? 0, arrangement.bars[8]?.tick ?? 0];
    const seconds = createTimeMap(arrangement);
    const [start, end] = [from, to].map((tick) => Math.round(seconds(tick) * rate));
    const length = (end ?? 0) - (start ?? 0);
    const track = await band.play(arrangement, { from, to });
    const { left, right } = track.next((end ?? 0) + 3 * length);
    // A player that repeats one time round (the second) against the band going on into the third and fourth.
    const reach = Math.round(0.05 * rate);
    let furthest = 0;
    for (const samples of [left, right])
      for (let at = -reach; at < reach; at++)
        furthest = Math.max(
          furthest,
          Math.abs((samples[(end ?? 0) + length + at] ?? 9) - (samples[(end ?? 0) + 2 * length + at] ?? 0)),
        );
    const level = 20 * Math.log10(Math.max(furthest, 1e-9));
    console.log(`${feel}: seam ${level.toFixed(1)} dBFS`);
    expect(level).toBeLessThan(-60);
  },
);

test('each drum stroke sounds within 3 ms of its tick', async () => {
  const full = arrange(createBackingSpec(chart, { feel: 'rock', tempo: 96, humanise: 0, countIn: 1 }), 2);
  const seconds = createTimeMap(full);
  let furthest = 0;
  // One drum at a time, so that the ring of another does not hide it: rim, kick, snare, closed hat.
  for (const drum of [37, 36, 38, 42]) {
    const parts = full.parts
      .filter((part) => part.channel === 9) // drums and count
      .map((part) => ({
        ...part,
        notes: part.notes.filter((note) => note.midi === drum && note.velocity > 60),
      }));
    const { left, right } = await played({ ...full, parts });
    const strokes = parts.flatMap((part) => part.notes.map((note) => seconds(note.tick)));
    expect(strokes.length, `strokes of ${drum}`).toBeGreaterThan(1);
    for (const stroke of strokes) {
      const from = Math.round((stroke - 0.02) * rate);
      const loud = (n: number) => Math.abs(left[n] ?? 0) + Math.abs(right[n] ?? 0);
      let most = 0;
      for (let n = from; n < from + 0.08 * rate; n++) most = Math.max(most, loud(n));
      const before = Math.max(
        0,
        ...Array.from({ length: Math.round(0.018 * rate) }, (_, n) => loud(from + n)),
      );
      let n = Math.max(0, from);
      while (loud(n) < Math.max(0.05 * most, 1.5 * before)) n++;
      furthest = Math.max(furthest, Math.abs(n / rate - stroke));
    }
  }
  expect(furthest, `${(furthest * 1000).toFixed(2)} ms`).toBeLessThanOrEqual(0.003);
});

test.each([
  ['piano', 0],
  ['electric piano', 4],
  ['held tone', 20],
] as const)('A4 of the %s is 440 Hz within 3 cents', async (_, program) => {
  const bare = arrange(createBackingSpec(chart, { humanise: 0 }), 1);
  const note = { tick: 0, grid: 0, ticks: 480 * 6, midi: 69, velocity: 90, chord: null };
  const { left } = await played({ ...bare, parts: [{ name: 'keys', channel: 1, program, notes: [note] }] });
  const found = strongestNear(
    left.subarray(Math.round(0.3 * rate), Math.round(2.3 * rate)),
    midiToFrequency(69),
  );
  expect(Math.abs(1200 * Math.log2(found / 440)), `${found} Hz`).toBeLessThanOrEqual(3);
});

/** The frequency within 40 cents with the most energy, by correlation with windowed sines. */
function strongestNear(samples: Float32Array, hertz: number): number {
  let best = { power: -1, hertz };
  for (let cents = -40; cents <= 40; cents += 0.5) {
    const tried = hertz * 2 ** (cents / 1200);
    let re = 0;
    let im = 0;
    samples.forEach((sample, at) => {
      const window = 0.5 - 0.5 * Math.cos((2 * Math.PI * at) / samples.length);
      const angle = (2 * Math.PI * tried * at) / rate;
      re += sample * window * Math.cos(angle);
      im += sample * window * Math.sin(angle);
    });
    const power = re * re + im * im;
    if (power > best.power) best = { power, hertz: tried };
  }
  return best.hertz;
}
