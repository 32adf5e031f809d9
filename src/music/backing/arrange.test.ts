import { expect, test } from 'vitest';
import { createSeededRandom, present, randomInteger } from '#core';
import { parseChart } from '../chart/parse-chart.ts';
import { listChordQualities } from '../chord/quality.ts';
import { arrange } from './arrange.ts';
import type { Arrangement } from './arrangement.ts';
import { arrangementToMidi } from './arrangement-to-midi.ts';
import { type BackingSpec, createBackingSpec } from './backing-spec.ts';
import { allClasses, bassClass } from './chord-sound.ts';
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
const random = createSeededRandom(seed);
const pick = <T>(list: readonly T[]): T => {
  const at = randomInteger(random, 0, list.length - 1);
  for (const one of list.slice(at)) return one;
  throw new Error('nothing to pick from');
};
function randomSpec(): BackingSpec {
  const suffixes = listChordQualities().map((quality) => quality.suffix);
  const roots = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];
  const chord = () => pick(roots) + pick(suffixes) + (random.next() < 0.1 ? `/${pick(roots)}` : '');
  const bars = Array.from({ length: randomInteger(random, 1, 16) }, (_, at) => {
    const chords = Array.from({ length: pick([1, 1, 1, 2, 2, 3, 4]) }, chord).join(' ');
    return (
      (at % 8 === 0 ? `[${'ABC'.charAt(at / 8)}] ` : '') + (random.next() < 0.1 && at > 0 ? '%' : chords)
    );
  });
  return createBackingSpec(chartOf(`${bars.join(' | ')} |`), {
    feel: pick(feelIds),
    tempo: randomInteger(random, 40, 300),
    choruses: randomInteger(random, 1, 4),
    countIn: pick([null, 0, 1, 2]),
    gate:
      random.next() < 0.3 ? { play: randomInteger(random, 1, 4), rest: randomInteger(random, 1, 4) } : null,
    trade: random.next() < 0.2 ? randomInteger(random, 1, 4) : null,
    keys: pick([[], [0, 5, 10, 3], [0, 1, 2]]),
    click: pick(['none', 'every', 'back', 'first', 'vanishing']),
    drone: pick([null, 45]),
    grows: random.next() < 0.3,
    humanise: pick([0, 0.5, 1]),
    tempoStep: pick([null, { by: 8, limit: 200 }, { by: -5, limit: 60 }]),
  });
}

test(`500 random charts with seed ${seed}: chords kept, free bars free, notes sound`, () => {
  for (let nth = 0; nth < 500; nth++)
    expect(faultsOf(arrange(randomSpec(), nth)), `chart ${nth}`).toEqual([]);
});

/** What is wrong with an arrangement, in words. */
function faultsOf({ bars, chords, parts, end }: Arrangement): readonly string[] {
  const faults: string[] = [];
  const hold = (isTrue: boolean, what: string) => {
    if (!isTrue) faults.push(what);
  };
  const length = present(bars[0], 'a bar').ticks;
  for (const part of parts) {
    const endByMidi = new Map<number, number>();
    for (const note of part.notes) {
      const bar = present(bars[Math.min(bars.length - 1, Math.floor(note.tick / length))], 'a bar');
      const where = `${part.name} at ${note.tick}`;
      hold(
        Number.isInteger(note.tick) && Number.isInteger(note.ticks) && note.ticks > 0,
        `${where}: no whole ticks`,
      );
      hold(
        note.velocity >= 1 && note.velocity <= 127 && note.midi >= 0 && note.midi <= 127,
        `${where}: no MIDI`,
      );
      hold(note.tick >= (endByMidi.get(note.midi) ?? 0), `${where}: struck while it sounds`);
      endByMidi.set(note.midi, note.tick + note.ticks);
      hold(note.tick + note.ticks <= end, `${where}: rings beyond the end`);
      const isPitched = part.name === 'bass' || part.name === 'keys';
      hold(!isPitched || bar.role === 'play', `${where}: in a bar it leaves out`);
      hold(part.name !== 'drums' || bar.role !== 'free', `${where}: in a free bar`);
      if (note.chord === null) continue;
      const sounding = present(chords[note.chord], 'the chord of a note');
      const chord = present(sounding.chord, 'the chord of a note');
      if (part.name === 'keys') hold(allClasses(chord).has(note.midi % 12), `${where}: outside its chord`);
      if (part.name === 'bass' && note.grid === bar.tick && sounding.tick === bar.tick)
        hold(note.midi % 12 === bassClass(chord), `${where}: neither root nor bass`);
    }
    if (part.name !== 'bass' && part.name !== 'keys') continue;
    for (const bar of bars.filter((one) => one.role === 'free' || one.role === 'time'))
      hold(
        !part.notes.some((note) => note.tick < bar.tick + bar.ticks && note.tick + note.ticks > bar.tick),
        `${part.name} sounds on into bar ${bar.written}`,
      );
  }
  return faults;
}

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
