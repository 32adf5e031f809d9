// Source: Standard MIDI Files 1.0, bytes worked by hand, and @tonejs/midi as an independent reader; see README.md.
import { readFileSync } from 'node:fs';
import tone from '@tonejs/midi';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { present } from '#core';
import {
  createScore,
  type Fraction,
  findInstrument,
  fraction,
  keyEvent,
  metreEvent,
  midiFile,
  note,
  parseKey,
  parseMetre,
  parsePitch,
  part,
  partBar,
  performScore,
  plus,
  rest,
  type Score,
  type ScoreEvent,
  scoreBar,
  scoreToMidi,
  scoreToMusicXml,
  secondsAt,
  swingMark,
  tempoEvent,
  tempoMark,
  ticksPerCrotchet,
  variableLength,
  written,
} from '#music';
import { randomScore } from '../../src/music/score/random-score.contract.ts';
import { soundsOfMusicXml } from './musicxml-sounds.ts';

interface Data {
  readonly midi: {
    readonly variable_length: Readonly<Record<string, string>>;
    readonly tempo: readonly { readonly bpm: number; readonly bytes: string }[];
    readonly time_signature: Readonly<Record<string, string>>;
    readonly key_signature: Readonly<Record<string, string>>;
    readonly tiny_file: { readonly hex: string };
  };
  readonly swing_ratio: readonly { readonly ratio: string; readonly offbeat_tick_at_480_ppq: number }[];
  readonly bar_seconds: readonly { readonly sig: string; readonly tempo: string; readonly seconds: number }[];
}
const read = (file: string) => readFileSync(new URL(`./data/${file}`, import.meta.url), 'utf8');
const data: Data = JSON.parse(read('midi.json'));
const hex = (bytes: Iterable<number>) =>
  [...bytes].map((byte) => byte.toString(16).toUpperCase().padStart(2, '0')).join(' ');
const metre = (text: string) => present(parseMetre(text), text);
const pitch = (text: string) => written(present(parsePitch(text), text));
const instrument = (id: string) => present(findInstrument(id), id);

describe('bytes', () => {
  test.each(Object.entries(data.midi.variable_length))('variable length of 0x%s', (value, bytes) => {
    expect(hex(variableLength(Number.parseInt(value, 16)))).toBe(bytes);
  });
  test.each(data.midi.tempo)('tempo $bpm', ({ bpm, bytes }) => {
    expect(hex(tempoEvent(bpm))).toBe(bytes);
  });
  test.each(Object.entries(data.midi.time_signature))('time signature %s', (name, bytes) => {
    const { beats, unit } = metre(name);
    const beat = name === '6/8' ? 36 : 96 / unit;
    expect(hex(metreEvent(beats, unit, beat))).toBe(bytes);
  });
  test.each(Object.entries(data.midi.key_signature))('key signature of %s', (name, bytes) => {
    const [fifths, mode] = {
      'C major': [0, 'major'],
      'D major': [2, 'major'],
      'B flat major': [-2, 'major'],
      'E minor': [1, 'minor'],
    }[name] as [number, 'major' | 'minor'];
    expect(hex(keyEvent(fifths, mode))).toBe(bytes);
  });
  test('the chunks of a tiny file, but for its format', () => {
    const file = midiFile(480, [
      [
        { tick: 0, order: 0, bytes: tempoEvent(120) },
        { tick: 0, order: 1, bytes: [0x90, 60, 64] },
        { tick: 480, order: 0, bytes: [0x80, 60, 64] },
      ],
    ]);
    // The table's file is of format 0; we write format 1.
    expect(hex(file)).toBe(data.midi.tiny_file.hex.replace('06 00 00', '06 00 01'));
  });
  test('a file worked by hand', () => {
    const bar = scoreBar(1, metre('3/4'), { tempo: tempoMark(60, { type: 'quarter', dots: 1 }) });
    const events = [note(pitch('F#4'), fraction(1, 4)), note(pitch('E4'), fraction(1, 2))];
    const key = present(parseKey('A'), 'A major');
    const alto = part(instrument('alto_sax'), [partBar({ key }, events)], { name: 'Alt' });
    const lines = read('a-small-file.hex')
      .split('\n')
      .filter((line) => !line.startsWith(';'));
    expect(hex(scoreToMidi(createScore({ bars: [bar], parts: [alto] })))).toBe(lines.join(' ').trim());
  });
});

test.each(data.swing_ratio.filter(({ ratio }) => ratio !== '1:1'))(
  'swing $ratio: the off-beat at 480 ticks',
  (row) => {
    const [long, short] = row.ratio.split(':').map(Number);
    const swing = swingMark({ long: long ?? 1, short: short ?? 1 });
    const events = [0, 1, 2, 3].map(() => note(pitch('C5'), fraction(1, 8)));
    const bars = [scoreBar(1, metre('2/4'), { swing })];
    const flute = part(instrument('flute'), [partBar({ key: present(parseKey('C'), 'C') }, events)]);
    const midi = new tone.Midi(scoreToMidi(createScore({ bars, parts: [flute] })));
    const off = Math.round(row.offbeat_tick_at_480_ppq);
    expect(midi.tracks.flatMap(({ notes }) => notes).map(({ ticks }) => ticks)).toEqual([
      0,
      off,
      480,
      480 + off,
    ]);
  },
);

test.each(data.bar_seconds)('a bar of $sig at $tempo lasts $seconds s', ({ sig, tempo, seconds }) => {
  const [name = '', perMinute] = tempo.split('=');
  const types = { quarter: 'quarter', 'dotted quarter': 'quarter', eighth: 'eighth', half: 'half' } as const;
  const type = present(types[name as keyof typeof types] ?? null, name);
  const mark = tempoMark(Number(perMinute), { type, dots: name.startsWith('dotted') ? 1 : 0 });
  const bars = [scoreBar(1, metre(sig), { tempo: mark })];
  const performance = performScore(createScore({ bars, parts: [] }));
  expect(secondsAt(performance, present(bars[0], 'the bar').length)).toBeCloseTo(seconds, 9);
});

/** A note as one word: first tick, last tick, key. */
const word = (midi: number, from: number, to: number) => `${from}-${Math.max(from + 1, to)} ${midi}`;
const ticksOf = ({ n, d }: Fraction) => Math.round((4 * ticksPerCrotchet * n) / d);

/** What the independent reader finds. */
function readBack(score: Score): readonly string[] {
  const midi = new tone.Midi(scoreToMidi(score));
  return midi.tracks
    .flatMap((track) => track.notes)
    .map(({ midi: key, ticks, durationTicks }) => word(key, ticks, ticks + durationTicks))
    .sort();
}

/** Whether a key is struck while it still sounds: a MIDI file has one key for both, so notes cannot come back as two. */
function collides(
  notes: readonly { readonly key: string; readonly from: number; readonly to: number }[],
): boolean {
  const sorted = notes.toSorted((a, b) => a.from - b.from);
  const ends = new Map<string, number>();
  return sorted.some(({ key, from, to }) => {
    const isBusy = (ends.get(key) ?? 0) > from;
    ends.set(key, to);
    return isBusy;
  });
}

test('an independent reader finds every note and tempo, and the same score gives the same bytes', () => {
  let compared = 0;
  fc.assert(
    fc.property(fc.integer(), (seed) => {
      const score = randomScore(seed);
      expect(scoreToMidi(randomScore(seed))).toEqual(scoreToMidi(score));
      const { notes, bars } = performScore(score);
      const expected = notes.map((one) => ({
        key: `${one.isDrum ? 'drum' : one.part} ${one.midi}`,
        midi: one.midi,
        from: ticksOf(one.start),
        to: ticksOf(plus(one.start, one.duration)),
      }));
      const { header } = new tone.Midi(scoreToMidi(score));
      expect(header.tempos[0]?.bpm).toBeCloseTo(bars[0]?.tempo ?? 0, 2);
      expect(header.timeSignatures[0]?.ticks).toBe(0);
      if (collides(expected)) return;
      compared++;
      expect(readBack(score)).toEqual(expected.map(({ midi, from, to }) => word(midi, from, to)).sort());
    }),
    { numRuns: 300 },
  );
  expect(compared).toBeGreaterThan(150);
});

/** The score without what MusicXML tells in words and players act on: repeats, swing, short articulations, grace notes. */
function plain(score: Score): Score {
  return {
    ...score,
    bars: score.bars.map((bar) => ({
      ...bar,
      repeatStart: false,
      repeatEnd: false,
      ending: null,
      swing: null,
    })),
    parts: score.parts.map((one) => ({
      ...one,
      bars: one.bars.map((bar) => ({
        ...bar,
        voices: bar.voices.map((voice) => ({
          ...voice,
          events: voice.events.map((event) =>
            event.kind === 'note'
              ? { ...event, grace: [], articulations: [] }
              : event.kind === 'hit'
                ? { ...event, articulations: [] }
                : event,
          ),
        })),
      })),
    })),
  };
}

test('MusicXML and MIDI of one score tell the same notes', () => {
  let compared = 0;
  fc.assert(
    fc.property(fc.integer(), (seed) => {
      const score = plain(randomScore(seed));
      const told = soundsOfMusicXml(scoreToMusicXml(score)).map(
        ({ part: p, isDrum, midi, start, duration }) => ({
          key: `${isDrum ? 'drum' : p} ${midi}`,
          midi,
          from: Math.round(start * ticksPerCrotchet),
          to: Math.round((start + duration) * ticksPerCrotchet),
        }),
      );
      if (collides(told)) return;
      compared++;
      expect(readBack(score)).toEqual(told.map(({ midi, from, to }) => word(midi, from, to)).sort());
    }),
    { numRuns: 300 },
  );
  expect(compared).toBeGreaterThan(150);
});

test('two voices on one key: it is struck once, and again where the second comes later', () => {
  const long = note(pitch('C5'), fraction(1, 2));
  const late = [rest(fraction(1, 4)), note(pitch('C5'), fraction(1, 4))];
  const heard = (first: readonly ScoreEvent[], second: readonly ScoreEvent[]) => {
    const one = partBar({ key: present(parseKey('C'), 'C') }, first);
    const both = { ...one, voices: [...one.voices, { id: 2, staff: 1, events: second }] };
    return readBack(
      createScore({ bars: [scoreBar(1, metre('2/4'))], parts: [part(instrument('flute'), [both])] }),
    );
  };
  expect(heard([long], [note(pitch('C5'), fraction(1, 4)), rest(fraction(1, 4))])).toEqual(['0-960 72']);
  expect(heard([long], late)).toEqual(['0-480 72', '480-960 72']);
});
