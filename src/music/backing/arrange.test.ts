import { expect, test } from 'vitest';
import { present } from '#core';
import { parseChart } from '../chart/parse-chart.ts';
import { arrange } from './arrange.ts';
import { fuzzArrangements } from './arrangement-laws.contract.ts';
import { arrangementToMidi } from './arrangement-to-midi.ts';
import { createBackingSpec } from './backing-spec.ts';
import { feelById, feelIds, offBeatTick, swingRatioAt } from './feel.ts';

const chartOf = (text: string) => {
  const read = parseChart(text);
  if (!read.ok) throw new Error(JSON.stringify(read.error));
  return read.value;
};
const twelve = chartOf(
  '[A] Bb7 | Eb7 | Bb7 | Fm7 Bb7 | Eb7 | Edim7 | Bb7 | G7 | [B] Cm7 | F7 | Dm7 G7 | Cm7 F7 |',
);

const seed = 20261125;
test(`500 random charts with seed ${seed}: chords kept, free bars free, notes sound`, () => {
  expect(fuzzArrangements(500, seed)).toBeNull();
});

test('the same spec and seed give the same bytes, another seed others', () => {
  const spec = createBackingSpec(twelve, { choruses: 3 });
  const bytes = (with_: number) => [...arrangementToMidi(arrange(spec, with_), 'Twelve bars')];
  expect(bytes(7)).toEqual(bytes(7));
  expect(bytes(7)).not.toEqual(bytes(8));
});

test('muting a part changes nothing in the others', () => {
  const notes = (keys: number) =>
    arrange(createBackingSpec(twelve, { balance: { bass: 1, keys, drums: 1 } }), 3).parts.filter(
      (part) => part.name !== 'keys',
    );
  expect(notes(0)).toEqual(notes(1));
});

test('every feel has a bass note and a chord in every bar, and drums that keep time', () => {
  for (const feel of feelIds) {
    const { bars, parts } = arrange(createBackingSpec(twelve, { feel, choruses: 2, humanise: 0 }), 5);
    for (const name of ['bass', 'keys', 'drums'] as const) {
      const part = present(
        parts.find((one) => one.name === name),
        `${name} of ${feel}`,
      );
      for (const bar of bars.filter((one) => one.role === 'play'))
        expect(
          part.notes.some((note) => note.tick < bar.tick + bar.ticks && note.tick + note.ticks > bar.tick),
          `${name} of ${feel} in bar ${bar.written}`,
        ).toBe(true);
    }
  }
});

// Source: Friberg & Sundström 2002, Music Perception 19(3), as in the shared reference table of rhythm; ticks are the table's
// `offbeat_tick_at_480_ppq`.
test('the swing ratio narrows as the tempo rises, and the off-beat stands where the table has it', () => {
  expect([100, 140, 200, 240, 320].map((tempo) => Number(swingRatioAt(tempo).toFixed(3)))).toEqual([
    3.5, 3.286, 2, 1.5, 1,
  ]);
  expect([1, 1.3, 1.4, 1.5, 5 / 3, 2, 3, 3.5].map(offBeatTick)).toEqual([
    240, 271, 280, 288, 300, 320, 360, 373,
  ]);
  const { parts, bars } = arrange(createBackingSpec(twelve, { tempo: 200, humanise: 0, countIn: 0 }), 1);
  const ride = present(
    parts.find((part) => part.name === 'drums'),
    'drums',
  ).notes.filter((note) => note.midi === 51);
  const within = new Set(ride.map((note) => (note.tick - (bars[0]?.tick ?? 0)) % 480));
  expect([...within].sort((a, b) => a - b)).toEqual([0, 320]);
});

test('tempo steps stop at their limit, keys go round, a gate of 2 and 2 plays two bars and rests two', () => {
  const { tempos, bars, chords } = arrange(
    createBackingSpec(chartOf('C | F | G7 | C |'), {
      tempo: 100,
      choruses: 4,
      tempoStep: { by: 8, limit: 110 },
      keys: [0, 5],
      gate: { play: 2, rest: 2 },
      countIn: 1,
      feel: 'straight',
    }),
    1,
  );
  expect(tempos.map((tempo) => tempo.perMinute)).toEqual([100, 108, 110]);
  expect(bars.map((bar) => bar.role)).toEqual([
    'count-in',
    ...Array.from({ length: 4 }, () => ['play', 'play', 'time', 'time']).flat(),
  ]);
  const roots = chords.filter((_, at) => at % 4 === 0).map((one) => `${one.chord?.root.letter}`);
  expect(roots).toEqual(['C', 'F', 'C', 'F']);
  expect(feelById('straight').isSwung).toBe(false);
});

test('a band that grows gets louder and busier: more strokes and chords in the last chorus than in the first', () => {
  for (const feel of feelIds) {
    const { parts, bars } = arrange(
      createBackingSpec(twelve, { feel, choruses: 5, grows: true, countIn: 0 }),
      9,
    );
    const inChorus = (chorus: number) => {
      const own = bars.filter((bar) => bar.chorus === chorus && !bar.isLast);
      const [from, to] = [own[0]?.tick ?? 0, (own.at(-1)?.tick ?? 0) + (own.at(-1)?.ticks ?? 0)];
      return parts.flatMap((part) => part.notes.filter((note) => note.grid >= from && note.grid < to));
    };
    const loud = (chorus: number) =>
      inChorus(chorus).reduce((sum, note) => sum + note.velocity, 0) / inChorus(chorus).length;
    expect(loud(4), feel).toBeGreaterThan(loud(0));
    // A clave and its congas are a fixed pattern: they only get louder.
    if (feel !== 'son' && feel !== 'rumba')
      expect(inChorus(4).length, feel).toBeGreaterThan(inChorus(0).length);
  }
});

test('a click that vanishes leaves out more bars from chorus to chorus; a tone to tune to comes before all', () => {
  const { parts, bars } = arrange(
    createBackingSpec(chartOf('C | F | G7 | C |'), {
      choruses: 4,
      click: 'vanishing',
      tuning: 69,
      drone: 48,
      tempo: 90,
    }),
    1,
  );
  const part = (name: string) => parts.find((one) => one.name === name)?.notes ?? [];
  const clicks = (chorus: number) =>
    bars
      .filter((bar) => bar.chorus === chorus)
      .map(
        (bar) =>
          part('click').filter((one) => one.tick >= bar.tick && one.tick < bar.tick + bar.ticks).length,
      );
  expect([0, 1, 2, 3].map(clicks)).toEqual([
    [4, 4, 4, 4],
    [4, 4, 4, 0],
    [4, 4, 0, 0],
    [4, 0, 0, 0],
  ]);
  const [tuning, held] = part('drone');
  const counted = present(
    bars.find((bar) => bar.role === 'count-in'),
    'a count-in',
  );
  expect(tuning).toMatchObject({ tick: 0, midi: 69 });
  expect((counted.tick * 60) / 90 / 480, 'seconds of it').toBeGreaterThanOrEqual(4);
  expect(held).toMatchObject({ tick: counted.tick, midi: 48 });
});

test('a chart that ends away from home gets a bar to end in, one that ends there does not', () => {
  const last = (text: string) =>
    arrange(createBackingSpec(chartOf(text)), 1).bars.filter((bar) => bar.chorus === 0);
  expect(last('Dm7 | G7 | Cmaj7 | A7 |').map((bar) => bar.isLast)).toEqual([
    false,
    false,
    false,
    false,
    true,
  ]);
  expect(last('C | F | G7 | C |').map((bar) => bar.isLast)).toEqual([false, false, false, true]);
});

test.each(feelIds)(
  '%s: no second blurs at the bottom of a voicing, and the voices stay around the middle',
  (feel) => {
    const { parts } = arrange(createBackingSpec(twelve, { feel, choruses: 4 }), 3);
    const struck = new Map<number, number[]>();
    for (const { tick, midi } of parts.find((part) => part.name === 'keys')?.notes ?? [])
      struck.set(
        tick,
        [...(struck.get(tick) ?? []), midi].sort((a, b) => a - b),
      );
    expect(struck.size).toBeGreaterThan(20);
    for (const [lowest = 0, next = 99] of struck.values())
      if (lowest < 52) expect(next - lowest).toBeGreaterThan(2); // E below middle C
    const all = [...struck.values()].flat();
    expect(all.reduce((sum, midi) => sum + midi, 0) / all.length).toBeGreaterThan(56.5);
  },
);

test.each(feelIds)('%s: the last stroke of the kit is no louder than those before it', (feel) => {
  const { parts, bars } = arrange(createBackingSpec(twelve, { feel, humanise: 0 }), 3);
  const drums = parts.find((part) => part.name === 'drums')?.notes ?? [];
  const end = present(
    bars.find((bar) => bar.isLast),
    'a bar to end in',
  ).tick;
  const loudest = (some: typeof drums) => Math.max(...some.map((note) => note.velocity));
  expect(loudest(drums.filter((note) => note.tick >= end))).toBeLessThanOrEqual(
    loudest(drums.filter((note) => note.tick < end)),
  );
});
