// Source: data/fingerings.json (brass computed from the harmonic series there, independently; piano scales from standard
// manuals, common practice; recorder against a public chart; flute, clarinet, saxophone from memory). See README.md.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { present } from '#core';
import {
  type Fingering,
  findInstrument,
  fingeringOf,
  fingerLine,
  type InstrumentId,
  openStrings,
  parsePitch,
  parsePitchName,
  pitchToMidi,
  sounding,
  soundingToWritten,
  spellScale,
  type WrittenPitch,
  written,
} from '#music';

interface BrassRow {
  readonly written?: string;
  readonly sounding?: string;
  readonly fingering?: string;
  readonly position?: number;
  readonly partial: number;
  readonly alternates: readonly string[];
  readonly note?: string;
}
const data = JSON.parse(readFileSync(new URL('./data/fingerings.json', import.meta.url), 'utf8'));
const pitch = (text: string) => written(present(parsePitch(text), text));
const ways = (fingering: Fingering) => [fingering.usual, ...fingering.alternates];

describe('trumpet, cornet, flugelhorn and treble-clef euphonium: 31 written notes', () => {
  const rows: readonly BrassRow[] = data.trumpet_written;
  test('the table is whole', () => expect(rows.length).toBe(31));
  test.each(rows.map((row) => [row.written ?? '', row] as const))('%s', (note, row) => {
    for (const id of ['trumpet_bb', 'cornet_bb', 'flugelhorn_bb', 'euphonium_tc'] as const) {
      const found = ways(present(fingeringOf(id, pitch(note)), note)).flatMap((way) =>
        way.kind === 'valves' && way.partial <= 8 && !way.valves.includes(4)
          ? [`${way.valves.join('') || '0'} (partial ${way.partial})`]
          : [],
      );
      expect(found).toEqual([`${row.fingering} (partial ${row.partial})`, ...row.alternates]);
    }
  });
});

describe('trombone: 31 sounding notes', () => {
  const rows: readonly BrassRow[] = data.trombone_sounding;
  test('the table is whole', () => expect(rows.length).toBe(31));
  test.each(rows.map((row) => [row.sounding ?? '', row] as const))('%s', (note, row) => {
    const { usual, alternates } = present(fingeringOf('trombone', pitch(note)), note);
    expect(usual).toMatchObject({
      kind: 'slide',
      position: row.position,
      partial: row.partial,
      trigger: false,
    });
    expect(usual).toMatchObject({ raised: row.note?.startsWith('slide shortened') ?? false });
    const others = alternates.flatMap((way) =>
      way.kind === 'slide' && way.partial <= 8 && !way.trigger
        ? [`${way.position} (partial ${way.partial})`]
        : [],
    );
    expect(others.toSorted()).toEqual(row.alternates.toSorted());
  });
});

test('partials and valve combinations lie as far out of tune as the tables say', () => {
  for (const [partial, { cents_vs_equal_temperament: cents }] of Object.entries<{
    cents_vs_equal_temperament: number;
  }>(data.harmonic_partials)) {
    if (Number(partial) < 2 || Number(partial) > 12) continue;
    // An open note's cents are the partial's own: trombone in first position, B flat 1 the fundamental.
    const midi = 34 + Math.round(12 * Math.log2(Number(partial)));
    const all = ways(present(fingeringOf('trombone', midiPitch(midi)), `partial ${partial}`));
    const way = all.find((w) => w.kind === 'slide' && w.partial === Number(partial) && w.position === 1);
    expect(way?.kind === 'slide' && way.cents).toBeCloseTo(cents, 2);
  }
  for (const [valves, { sharp_cents: sharp }] of Object.entries<{ sharp_cents: number }>(
    data.valve_combination_sharpness.table,
  )) {
    const notes: Readonly<Record<string, string>> = { '12': 'A3', '23': 'Ab3', '13': 'G3', '123': 'Gb3' };
    const { usual } = present(fingeringOf('trumpet_bb', pitch(notes[valves] ?? '')), valves);
    expect(usual.kind === 'valves' && usual.cents).toBeCloseTo(sharp, 2);
  }
});

function midiPitch(midi: number): WrittenPitch {
  const names = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'Gb', 'G', 'Ab', 'A', 'Bb', 'B'];
  return pitch(`${names[midi % 12]}${Math.floor(midi / 12) - 1}`);
}

describe('tunings', () => {
  const ours: readonly InstrumentId[] = [
    'violin',
    'viola',
    'cello',
    'double_bass',
    'guitar',
    'bass_guitar',
    'ukulele',
  ];
  test.each(ours)('%s', (id) => {
    const rows: readonly { readonly note: string; readonly midi: number }[] = data.strings[id];
    const instrument = present(findInstrument(id), id);
    expect(openStrings(instrument).map(pitchToMidi)).toEqual(rows.map((row) => row.midi));
    rows.forEach((row, i) => {
      const open = soundingToWritten(instrument, sounding(present(parsePitch(row.note), row.note)));
      const all = ways(present(fingeringOf(id, open), row.note));
      expect(all).toContainEqual(expect.objectContaining({ finger: 0, stop: 0, string: rows.length - i }));
    });
  });
});

describe('piano scales, both hands', () => {
  const table: Readonly<Record<string, { rh: number[]; lh: number[] }>> = data.piano_scales.table;
  test('24 scales', () => expect(Object.keys(table).length).toBe(24));

  function scaleUp(name: string, octaves: number): readonly WrittenPitch[] {
    const [tonicName = '', ...mode] = name.split(' ');
    const tonic = present(parsePitchName(tonicName), tonicName);
    const names = spellScale(tonic, mode.join(' ') === 'major' ? 'major' : 'harmonic_minor');
    const up: WrittenPitch[] = [];
    for (const next of [...Array.from({ length: octaves }, () => names).flat(), tonic]) {
      let octave = 2;
      while (up.length > 0 && pitchToMidi({ ...next, octave }) <= pitchToMidi(present(up.at(-1), name)))
        octave++;
      up.push(written({ ...next, octave }));
    }
    return up;
  }
  const fingers = (pitches: readonly WrittenPitch[], hand: 'right' | 'left') =>
    fingerLine('piano', pitches, { hand }).map((f) => (f?.kind === 'keyboard' ? f.finger : null));

  test.each(Object.keys(table))('%s', (name) => {
    const row = present(table[name], name);
    const up = scaleUp(name, 1);
    expect(fingers(up, 'right')).toEqual(row.rh);
    expect(fingers(up, 'left')).toEqual(row.lh);
    const two = scaleUp(name, 2);
    for (const hand of ['right', 'left'] as const) {
      const there = fingers(two, hand);
      // Down is up backwards, the second octave goes as the first, and no thumb lies on a black key (the reference's own rule).
      expect(fingers(two.toReversed(), hand)).toEqual(there.toReversed());
      expect(there.slice(8, 14)).toEqual(there.slice(1, 7));
      there.forEach((finger, i) => {
        const black = [1, 3, 6, 8, 10].includes(pitchToMidi(present(two[i], name)) % 12);
        expect(finger === 1 && black, `${name} ${hand} note ${i + 1}`).toBe(false);
      });
    }
  });
});

/** What a reference chart says, as the set of names our tables use; null where it refers elsewhere. */
function covered(text: string, names: Readonly<Record<string, string>>): readonly string[] {
  const words = text
    .replace(/[|+]/g, ' ')
    .split(' ')
    .filter((word) => word !== '');
  return words.flatMap((word) => names[word] ?? [...word.replaceAll('-', '')]).toSorted();
}
const pressedOn = (id: InstrumentId, note: string) => {
  const { usual } = present(fingeringOf(id, pitch(note)), `${id} ${note}`);
  return usual.kind === 'holes' ? { pressed: usual.pressed.toSorted(), half: usual.half } : null;
};

describe('recorder, English fingering', () => {
  const table: Readonly<Record<string, string>> = data.recorder_descant_sounding.table;
  test.each(Object.entries(table))('%s', (note, text) => {
    const at = present(parsePitch(note), note);
    const down = pitch(`${note.slice(0, -1)}${at.octave - 1}`);
    const pressed: string[] = [];
    const half: string[] = [];
    for (const [name, on] of Object.entries({ T: /^0/, '1': /1/, '2': /2/, '3': /3/ }))
      if (on.test(text.replace(/half/g, ''))) pressed.push(name);
    for (const name of ['4', '5', '6', '7']) {
      if (text.includes(`${name}half`)) half.push(name);
      else if (text.includes(name)) pressed.push(name);
    }
    if (text.startsWith('p')) half.push('T');
    for (const [id, place] of [
      ['recorder_descant', down],
      ['recorder_tenor', down],
      ['recorder_treble', midiPitch(pitchToMidi(down) + 5)],
    ] as const) {
      const { usual } = present(fingeringOf(id, place), note);
      expect(usual.kind === 'holes' && usual.pressed.toSorted()).toEqual(pressed.toSorted());
      expect(usual.kind === 'holes' && usual.half.toSorted()).toEqual(half.toSorted());
    }
  });
});

describe('flute', () => {
  const table: Readonly<Record<string, string>> = data.flute.table;
  const names = { C: 'C', 'C#': 'C#', Eb: 'Eb', 'G#': 'G#' };
  test.each(Object.entries(table))('%s', (note, text) => {
    const shown = text.startsWith('as ') ? present(table[text.slice(3)], note) : text;
    // `G#|---` stands before the bar as a word of its own.
    expect(pressedOn('flute', note)).toEqual({ pressed: covered(shown, names), half: [] });
  });
});

describe('clarinet and saxophone, and the rules of their registers', () => {
  const clarinet: Readonly<Record<string, string>> = data.clarinet_written.table;
  const names = {
    'E/B': 'E/B',
    'F/C': 'F/C',
    'F#/C#': 'F#/C#',
    'Ab/Eb': 'Ab/Eb',
    'C#/G#': 'C#/G#',
  };
  test.each(Object.entries(clarinet).filter(([, text]) => !/throat|side|R \+/.test(text)))(
    'clarinet %s',
    (note, text) =>
      expect(pressedOn('clarinet_bb', note)).toEqual({ pressed: covered(text, names), half: [] }),
  );
  test.each(Object.entries(clarinet).filter(([, text]) => text.startsWith('R + ')))(
    'clarinet %s, a twelfth up',
    (note, text) => {
      const below = present(pressedOn('clarinet_bb', text.slice(4)), text);
      expect(pitchToMidi(pitch(note)) - pitchToMidi(pitch(text.slice(4)))).toBe(19);
      expect(pressedOn('clarinet_bb', note)?.pressed).toEqual([...below.pressed, 'R'].toSorted());
    },
  );
  const saxophone: Readonly<Record<string, string>> = data.saxophone_written.table;
  const keys = { C: 'C', 'C#': 'C#', B: 'B', Bb: 'Bb', Eb: 'Eb', 'G#': 'G#', oct: 'oct' };
  test.each(Object.entries(saxophone).filter(([, text]) => !/side|palm|oct \+/.test(text)))(
    'saxophone %s',
    (note, text) => expect(pressedOn('alto_sax', note)).toEqual({ pressed: covered(text, keys), half: [] }),
  );
  test.each(Object.entries(saxophone).filter(([, text]) => text.startsWith('oct + ')))(
    'saxophone %s, an octave up',
    (note, text) => {
      const below = present(pressedOn('tenor_sax', text.slice(6)), text);
      expect(pressedOn('tenor_sax', note)?.pressed).toEqual([...below.pressed, 'oct'].toSorted());
    },
  );
});
