// What must hold of every arrangement, and random specs to hold it against; for the unit tests and for long runs.

import { chooseOne, createSeededRandom, present, type Random, randomInteger } from '#core';
import { parseChart } from '../chart/parse-chart.ts';
import { listChordQualities } from '../chord/quality.ts';
import { arrange } from './arrange.ts';
import type { Arrangement } from './arrangement.ts';
import { type BackingSpec, createBackingSpec } from './backing-spec.ts';
import { allClasses, bassClass } from './chord-sound.ts';
import { feelIds } from './feel.ts';

/** A chart of 1 to 16 bars of any chords, in any feel and mode. */
function randomSpec(random: Random): BackingSpec {
  const suffixes = listChordQualities().map((quality) => quality.suffix);
  const roots = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B'];
  const chord = () =>
    chooseOne(random, roots) +
    chooseOne(random, suffixes) +
    (random.next() < 0.1 ? `/${chooseOne(random, roots)}` : '');
  const bars = Array.from({ length: randomInteger(random, 1, 16) }, (_, at) => {
    const chords = Array.from({ length: chooseOne(random, [1, 1, 1, 2, 2, 3, 4]) }, chord).join(' ');
    return (
      (at % 8 === 0 ? `[${'ABC'.charAt(at / 8)}] ` : '') + (random.next() < 0.1 && at > 0 ? '%' : chords)
    );
  });
  const read = parseChart(`${bars.join(' | ')} |`);
  const chart = present(read.ok ? read.value : null, 'a chart that reads');
  return createBackingSpec(chart, {
    feel: chooseOne(random, feelIds),
    tempo: randomInteger(random, 40, 300),
    choruses: randomInteger(random, 1, 4),
    countIn: chooseOne(random, [null, 0, 1, 2]),
    gate:
      random.next() < 0.3
        ? {
            play: randomInteger(random, 1, 4),
            rest: randomInteger(random, 1, 4),
            isSilent: random.next() < 0.4,
          }
        : null,
    trade: random.next() < 0.2 ? randomInteger(random, 1, 4) : null,
    keys: chooseOne(random, [[], [0, 5, 10, 3], [0, 1, 2]]),
    click: chooseOne(random, ['none', 'every', 'back', 'first', 'vanishing']),
    drone: chooseOne(random, [null, 45]),
    grows: random.next() < 0.3,
    tuning: chooseOne(random, [null, null, 69]),
    humanise: chooseOne(random, [0, 0.5, 1]),
    tempoStep: chooseOne(random, [null, { by: 8, limit: 200 }, { by: -5, limit: 60 }]),
  });
}

/** Arranges so many random specs; the faults of the first that has any, with its number, or null. */
export function fuzzArrangements(count: number, seed: number): string | null {
  const random = createSeededRandom(seed);
  for (let nth = 0; nth < count; nth++) {
    const faults = faultsOf(arrange(randomSpec(random), nth));
    if (faults.length > 0) return `spec ${nth} of seed ${seed}: ${faults.join('; ')}`;
  }
  return null;
}

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
  const bass = parts.find((part) => part.name === 'bass')?.notes ?? [];
  for (const { chord, tick, bar } of chords) {
    const at = present(bars[bar], 'the bar of a chord');
    if (chord === null || at.role !== 'play' || tick !== at.tick) continue;
    const sounding = bass.filter((note) => note.tick <= tick + 30 && note.tick + note.ticks > tick + 30);
    hold(
      sounding.some((note) => note.midi % 12 === bassClass(chord)),
      `bar ${at.written} at ${tick}: the bass under beat 1 is not its root or bass`,
    );
  }
  return faults;
}
