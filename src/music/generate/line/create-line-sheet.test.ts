// What makes a study over chords one that a student can take in: common practice, no source.
import { describe, expect, test } from 'vitest';
import { present, type Stage, stages } from '#core';
import { chordTones } from '../../chord/chord.ts';
import { isInOnePosition } from '../../fingering/finger-line.ts';
import { plus, zero } from '../../fraction/fraction.ts';
import { findInstrument, listInstruments } from '../../instrument/instrument.ts';
import { pitchClass, pitchToMidi, staffStep, type WrittenPitch } from '../../pitch/pitch.ts';
import type { PartBar, Score } from '../../score/score.ts';
import { parseMaterialSpec } from '../../spec/material-spec.ts';
import { createSheet } from '../create-sheet.ts';

function line(
  fields: Readonly<Record<string, unknown>>,
  { instrument: id = 'flute', stage = 'intermediate' as Stage, seed = 1 } = {},
): Score {
  const spec = parseMaterialSpec({ kind: 'line', ...fields });
  if (!spec.ok) throw new Error(spec.error.message);
  const made = createSheet(spec.value, {
    instrument: present(findInstrument(id), id),
    stage,
    age: null,
    seed,
  });
  if (!made.ok) throw new Error(made.error.message);
  return made.value.score;
}

const barsOf = (score: Score): readonly PartBar[] => present(score.parts[0], 'a part').bars;
const pitchesIn = (bar: PartBar): readonly WrittenPitch[] =>
  present(bar.voices[0], 'a voice').events.flatMap((event) =>
    event.kind === 'note' ? event.heads.map(({ pitch }) => pitch) : [],
  );
const seeds = Array.from({ length: 40 }, (_, i) => i + 1);
const chart = '| Dm7 | G7 | Cmaj7 | % |';

test.each([
  ['| Dm7 | G7 | Cmaj7 | % |', 12, [4, 8]],
  ['| C | F |', 12, [4, 8]],
  ['| C | Am | Dm7 | G7 | C | F | G7 | C |', 16, [8]],
  [`|${' C | F |'.repeat(7)}`, 14, []],
])('%s fills a page by itself, a double bar after each chorus', (typed, count, doubles) => {
  const { bars } = line({ chart: typed });
  expect(bars.length).toBe(count);
  const found = bars.flatMap(({ barline, number }) => (barline === 'double' ? [number] : []));
  expect(found).toEqual(doubles);
  for (const number of doubles) expect(bars[number]?.startsSystem).toBe(true);
});

test.each(['chord_tones', 'motif', 'approach_notes', 'enclosures'])(
  '%s: in a last bar of two chords each of them is heard',
  (content) => {
    for (const end of ['G7sus4 G7', 'Gm7 C7'])
      for (const seed of seeds) {
        const typed = { chart: `| Dm7 | G7 | Cmaj7 | ${end} |`, content, key: 'fit' };
        const last = present(barsOf(line(typed, { seed })).at(-1), 'a last bar');
        expect(last.chords).toHaveLength(2);
        const second = present(last.chords[1], 'a second chord');
        let at = zero;
        const struck = present(last.voices[0], 'a voice').events.flatMap((event) => {
          const start = at;
          at = plus(at, event.duration);
          return start.n * second.at.d === second.at.n * start.d && event.kind === 'note' ? event.heads : [];
        });
        const [head] = struck;
        const tones = chordTones(present(second.chord, 'a chord')).map(pitchClass);
        expect(tones, `seed ${seed}`).toContain(pitchClass(present(head, `seed ${seed}: a note`).pitch));
      }
  },
);

describe('a pianist’s first lines', () => {
  const charts = [
    chart,
    '| C | Am | F | G |',
    '| C | F | G7 | C |',
    '| Am | Dm | E7 | Am |',
    '| G | Em | C | D7 |',
    '| Fmaj7 | Bb | C7 | F |',
  ];
  test.each(['chord_tones', 'motif', 'approach_notes', 'call_and_response'])(
    '%s lie under one hand that stays where it is',
    (content) => {
      for (const typed of charts)
        for (const seed of seeds.slice(0, 20)) {
          const score = line(
            { chart: typed, content, key: 'fit' },
            { instrument: 'piano', stage: 'beginner', seed },
          );
          const pitches = barsOf(score).flatMap(pitchesIn);
          expect(isInOnePosition('piano', pitches, 'beginner'), `${typed} seed ${seed}`).toBe(true);
        }
    },
  );
});

/** Whether a bar goes the way of another, up and down as it does. */
function goesAlong(bar: readonly WrittenPitch[], model: readonly WrittenPitch[]): boolean {
  const way = (pitches: readonly WrittenPitch[]) =>
    pitches
      .slice(1)
      .map((pitch, i) => Math.sign(staffStep(pitch) - staffStep(present(pitches[i], 'a note'))))
      .join();
  return way(bar) === way(model);
}

test('a motif is heard again: nearly all bars of a chorus go up and down as its first does', () => {
  let kept = 0;
  let all = 0;
  let others = 0;
  for (const [i, { id }] of listInstruments().entries())
    for (const stage of stages) {
      const made = line({ chart, content: 'motif', key: 'fit' }, { instrument: id, stage, seed: i });
      const bars = barsOf(made).map(pitchesIn);
      const choruses = [0, 4, 8].map((from) => bars.slice(from, Math.min(from + 4, bars.length - 1)));
      let along = 0;
      for (const [model = [], ...after] of choruses)
        along += after.filter((bar) => goesAlong(bar, model)).length;
      expect(along, `${id} ${stage} seed ${i}`).toBeGreaterThanOrEqual(4);
      kept += along;
      all += 8;
      const heard = choruses.map(([model = []]) => model.map(pitchToMidi).join());
      if (new Set(heard).size === 3) others++;
    }
  expect(kept / all).toBeGreaterThan(0.97);
  // Nearly every chorus has a motif of its own.
  expect(others / (listInstruments().length * stages.length)).toBeGreaterThan(0.8);
});

test.each([
  ['| Dm7 | % | Ebm7 | % |', ['D E F G A B C', 'Eb F Gb Ab Bb C Db']],
  ['| Dm7 | % | % | % |', ['D E F G A B C']],
])('%s: static minor sevenths are Dorian', (typed, scales) => {
  const classes = new Map(
    'C D E F G A B'.split(' ').map((name, i) => [name, [0, 2, 4, 5, 7, 9, 11][i] ?? 0]),
  );
  const dorians = scales.map(
    (scale) =>
      new Set(
        scale
          .split(' ')
          .map((name) => ((classes.get(name[0] ?? '') ?? 0) - (name.endsWith('b') ? 1 : 0) + 12) % 12),
      ),
  );
  let heard = 0;
  for (const seed of seeds) {
    const made = line({ chart: typed, content: 'motif', pitch: 'written' }, { stage: 'elementary', seed });
    for (const [b, bar] of barsOf(made).entries())
      for (const pitch of pitchesIn(bar)) {
        heard++;
        const scale = present(dorians[scales.length === 1 ? 0 : Math.floor((b % 4) / 2)], 'a scale');
        expect([...scale], `seed ${seed} bar ${b + 1}`).toContain(pitchClass(pitch));
      }
  }
  expect(heard).toBeGreaterThan(500);
});

test('an approach line goes somewhere: it hardly ever comes back to a note a third time in seven', () => {
  let circling = 0;
  let notes = 0;
  for (const [i, { id }] of listInstruments().entries()) {
    const typed = { chart, content: 'approach_notes', key: 'fit', choruses: 4 };
    const keys = barsOf(line(typed, { instrument: id, seed: i }))
      .flatMap(pitchesIn)
      .map(pitchToMidi);
    notes += keys.length;
    circling += keys.filter(
      (key, at) => keys.slice(Math.max(0, at - 6), at).filter((other) => other === key).length >= 2,
    ).length;
  }
  expect(circling / notes).toBeLessThan(0.01);
});

test('every other call is a new one with the rhythm of the first', () => {
  let same = 0;
  for (const seed of seeds) {
    const stage = seed % 2 === 0 ? 'beginner' : 'intermediate';
    const bars = barsOf(line({ chart: '| C | F | C | G7 |', content: 'call_and_response' }, { stage, seed }));
    const call = (at: number) =>
      bars
        .slice(at, at + 2)
        .flatMap(pitchesIn)
        .map(pitchToMidi);
    const rhythm = (at: number) =>
      bars
        .slice(at, at + 2)
        .flatMap((bar) => present(bar.voices[0], 'a voice').events.map(({ duration: d }) => `${d.n}/${d.d}`));
    expect(rhythm(4)).toEqual(rhythm(0));
    expect(call(8).length).toBe(call(0).length);
    if (call(4).join() === call(0).join()) same++;
  }
  expect(same).toBeLessThan(seeds.length / 8);
});

test('plain triads of a key keep to its notes: the fourth step is not raised over the dominant', () => {
  const gMajor = [7, 9, 11, 0, 2, 4, 6];
  for (const seed of seeds) {
    const typed = { chart: '| G | D | Em | Bm |', content: 'motif', pitch: 'written' };
    const made = line(typed, { stage: 'elementary', seed });
    for (const pitch of barsOf(made).flatMap(pitchesIn))
      expect(gMajor, `seed ${seed}`).toContain(pitchClass(pitch));
  }
});

test('a bass player’s chord tones begin on the root', () => {
  let roots = 0;
  let changes = 0;
  for (const id of ['bass_guitar', 'double_bass'])
    for (const seed of seeds.slice(0, 20))
      for (const bar of barsOf(line({ chart, key: 'fit' }, { instrument: id, seed })).slice(0, 3)) {
        changes++;
        const root = present(bar.chords[0]?.chord, 'a chord').root;
        if (pitchClass(present(pitchesIn(bar)[0], 'a note')) === pitchClass(root)) roots++;
      }
  expect(roots / changes).toBeGreaterThan(0.95);
});

test('over the dominant of a minor key a line keeps to harmonic minor', () => {
  for (const chord of ['E7', 'E'])
    for (const seed of seeds) {
      const typed = { chart: `| Am | Dm | ${chord} | Am |`, content: 'motif', pitch: 'written' };
      const bars = barsOf(line(typed, { stage: 'elementary', seed }));
      for (const pitch of [bars[2], bars[6]].flatMap((bar) => (bar === undefined ? [] : pitchesIn(bar))))
        expect([9, 11, 0, 2, 4, 5, 8], `${chord} seed ${seed}`).toContain(pitchClass(pitch));
    }
});
