// Backing tracks as an independent reader of MIDI files (@tonejs/midi) finds them, against the chart they were made from.
// Swing: Friberg & Sundström 2002, as ticks in the shared reference table of rhythm. Son and rumba clave: Toussaint and
// Gómez et al. 2005, in the same table. What a bass and a keyboard may play over a chord is common practice, no source.

import toneMidi from '@tonejs/midi';
import { expect, test } from 'vitest';
import {
  type Arrangement,
  allClasses,
  arrange,
  arrangementToMidi,
  type BackingSpec,
  bassClass,
  createBackingSpec,
  type FeelId,
  feelIds,
  movement,
  parseChart,
} from '#music';

const chart = (() => {
  const read = parseChart(
    '[A] Cm7 | F7 | Bbmaj7 | Ebmaj7 | [B] Am7b5 | D7 | Gm7 C7 | Cm7/F F7 | [C] Ebm7 Ab7 | Dbmaj7 | Gm7b5 C7alt | Fm6 |',
  );
  if (!read.ok) throw new Error(read.error.message);
  return read.value;
})();

interface Heard {
  readonly tick: number;
  readonly end: number;
  readonly midi: number;
}

function read(arrangement: Arrangement): (part: string) => readonly Heard[] {
  const { tracks, header } = new toneMidi.Midi(arrangementToMidi(arrangement, 'check'));
  expect(header.ppq).toBe(480);
  return (part) =>
    tracks
      .filter((track) => track.name === part)
      .flatMap((track) => track.notes)
      .map((note) => ({ tick: note.ticks, end: note.ticks + note.durationTicks, midi: note.midi }))
      .toSorted((a, b) => a.tick - b.tick);
}
const make = (feel: FeelId, rest: Partial<BackingSpec> = {}, seed = 3) =>
  arrange(createBackingSpec(chart, { feel, choruses: 6, countIn: 1, ...rest }), seed);

const near = 20; // ticks that a player may be off the grid, and a little more

/** Semitones that a voice moves on average from one chord to the next, at most. Our own choice; common practice is "little". */
const mostMovement = 1.5;

test.each(feelIds)('%s: bass on beat 1, keys within their chords, voices that move little', (feel) => {
  const arrangement = make(feel);
  const part = read(arrangement);
  const opening = arrangement.chords.flatMap((one) => {
    const bar = arrangement.bars[one.bar];
    return bar !== undefined && one.chord !== null && one.tick === bar.tick
      ? [{ ...one, chord: one.chord }]
      : [];
  });
  const bass = part('bass');
  let struck = 0;
  for (const { tick, chord } of opening) {
    const under = bass.filter((note) => note.tick <= tick + near && note.end > tick + near);
    expect(
      under.map((note) => note.midi % 12),
      `${feel} at ${tick}`,
    ).toEqual([bassClass(chord)]);
    if (under.some((note) => note.tick >= tick - near)) struck++;
  }
  const keys = part('keys');
  let outside = 0;
  let moved = 0;
  let moves = 0;
  let before: { readonly chord: number; readonly shape: readonly number[] } | null = null;
  for (const tick of new Set(keys.map((note) => note.tick))) {
    const shape = keys.filter((note) => note.tick === tick).map((note) => note.midi);
    // Struck on its chord, or up to a crotchet early.
    const fits = arrangement.chords.findIndex(
      (one) =>
        one.chord !== null &&
        tick >= one.tick - 480 - near &&
        tick < one.tick + one.ticks &&
        shape.every((midi) => one.chord !== null && allClasses(one.chord).has(midi % 12)),
    );
    if (fits < 0) outside++;
    if (before !== null && before.chord !== fits) {
      moved += movement(before.shape, shape) / Math.max(before.shape.length, shape.length);
      moves++;
    }
    before = { chord: fits, shape };
  }
  expect(outside, `${feel}: voicings outside their chord`).toBe(0);
  const mean = moved / moves;
  console.log(
    `${feel}: bass on beat 1 is root or bass 100 % of ${opening.length} (${((100 * struck) / opening.length).toFixed(0)} % struck there, else held over), voices move ${mean.toFixed(2)} semitones`,
  );
  expect(mean).toBeLessThanOrEqual(mostMovement);
});

// `offbeat_tick_at_480_ppq` of the table, by tempo: ratios 3.5, 2, 1.5 and 1.
test.each([
  [60, 373],
  [200, 320],
  [240, 288],
  [300, 240],
])('swung off-beats at %i stand at tick %i', (tempo, tick) => {
  const drums = read(make('swing', { tempo, humanise: 0 }))('drums').filter((note) => note.midi === 51);
  const places = new Set(drums.map((note) => note.tick % 480));
  expect([...places].sort((a, b) => a - b)).toEqual([0, tick]);
});

test.each([
  ['son', [0, 3, 6, 10, 12]],
  ['rumba', [0, 3, 7, 10, 12]],
] as const)('the %s clave is struck three and two, and never turns round', (feel, clave) => {
  const { bars } = make(feel);
  const from = bars.find((bar) => bar.chorus === 0)?.tick ?? 0;
  const strokes = read(make(feel, { humanise: 0 }))('drums').filter((note) => note.midi === 75);
  const twoBars = 16 * 240;
  const sets = new Map<number, number[]>();
  for (const { tick } of strokes) {
    const pair = Math.floor((tick - from) / twoBars);
    sets.set(pair, [...(sets.get(pair) ?? []), ((tick - from) % twoBars) / 240]);
  }
  const whole = [...sets.values()].slice(0, -1);
  expect(whole.length).toBeGreaterThan(30);
  for (const set of whole) expect(set).toEqual(clave);
});

test.each([
  ['a gate of 2 and 2', { gate: { play: 2, rest: 2 } }, [0, 1], 4, 'drums'],
  ['a gate of 3 and 1', { gate: { play: 3, rest: 1 } }, [0, 1, 2], 4, 'drums'],
  ['a silent gate of 3 and 1', { gate: { play: 3, rest: 1, isSilent: true } }, [0, 1, 2], 4, null],
  ['trading fours', { trade: 4 }, [0, 1, 2, 3], 8, null],
] as const)('%s leaves exactly the right bars', (_, mode, playing, round, goesOn) => {
  for (const feel of feelIds) {
    const arrangement = make(feel, mode);
    const part = read(arrangement);
    const played = arrangement.bars.filter((bar) => bar.chorus >= 0);
    played.forEach((bar, nth) => {
      const isOn = playing.some((one) => one === nth % round);
      const heard = (name: string) =>
        part(name).some((note) => note.tick < bar.tick + bar.ticks && note.end > bar.tick);
      for (const name of ['bass', 'keys']) expect(heard(name), `${feel} ${name} in bar ${nth}`).toBe(isOn);
      expect(heard('drums'), `${feel} drums in bar ${nth}`).toBe(isOn || goesOn === 'drums');
    });
  }
});
