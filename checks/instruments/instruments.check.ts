// Sources: see README.md (orchestration handbooks, music21 10.5 cross-check, MusicXML 4.0 sounds.xml, tonal 6.4.2).
import { readFileSync } from 'node:fs';
import { Interval, Note } from 'tonal';
import { describe, expect, test } from 'vitest';
import { present } from '#core';
import {
  comfortableKeys,
  fifthsToName,
  findInstrument,
  formatKey,
  formatPitch,
  fullRange,
  listInstruments,
  parsePitch,
  pitchToMidi,
  rangeAtStage,
  transpositionOf,
  written,
  writtenToSounding,
} from '#music';

interface Row {
  readonly id: string;
  readonly name: string;
  readonly clefs: readonly string[];
  readonly transpose: {
    readonly diatonic: number;
    readonly chromatic: number;
    readonly octave_change: number;
  };
  readonly written_c_sounds: string;
  readonly semitones_written_to_sounding: number;
  readonly written_range: { readonly low: string; readonly high: string };
  readonly sounding_range: { readonly low: string; readonly high: string };
  readonly comfortable_written: Readonly<
    Record<'beginner' | 'intermediate' | 'advanced', readonly [string, string]>
  >;
  readonly first_keys_written: readonly string[];
  readonly gm_program_1based: number;
  readonly musicxml_sound: string;
}
const read = (path: string) => readFileSync(new URL(path, import.meta.url), 'utf8');
const rows: readonly Row[] = JSON.parse(read('./data/instruments.json')).instruments;
const sounds = read('../musicxml/data/sounds.xml');
const pitch = (text: string) => written(present(parsePitch(text), text));

/** Instruments beyond the table's; what is known of them is from memory. */
const beyond: readonly string[] = ['recorder_tenor'];

test('the same 41 instruments, and what is beyond them', () => {
  const ids = listInstruments().map((i) => i.id as string);
  expect(ids.filter((id) => !beyond.includes(id))).toEqual(rows.map((row) => row.id));
  expect(rows.length).toBe(41);
  expect(beyond.every((id) => ids.includes(id))).toBe(true);
});

test('a tenor recorder is written like a descant and sounds an octave lower (from memory); its sound id is one', () => {
  const [tenor, descant] = ['recorder_tenor', 'recorder_descant'].map((id) =>
    present(findInstrument(id), id),
  );
  if (tenor === undefined || descant === undefined) throw new Error('both are there');
  expect(sounds).toContain(`id="${tenor.sound}"`);
  expect(fullRange(tenor)).toEqual(fullRange(descant));
  const sounding = (of: typeof tenor) => pitchToMidi(writtenToSounding(of, pitch('C5')));
  expect(sounding(tenor)).toBe(sounding(descant) - 12);
});

describe.each(rows)('$id', (row) => {
  const instrument = present(findInstrument(row.id), row.id);
  const sounds5 = (text: string) => formatPitch(writtenToSounding(instrument, pitch(text)));

  test('clefs, transposition, program and sound id', () => {
    const { diatonic, chromatic, octave_change } = row.transpose;
    expect(instrument.clefs).toEqual(row.clefs);
    expect(instrument.transpose).toEqual([diatonic, chromatic, octave_change]);
    expect(transpositionOf(instrument).chromatic).toBe(row.semitones_written_to_sounding);
    expect(instrument.program).toBe(row.gm_program_1based);
    expect(sounds).toContain(`id="${instrument.sound}"`);
  });

  test('written C5 and the ends of the range sound as in the table', () => {
    expect(sounds5('C5')).toBe(row.written_c_sounds);
    for (const end of ['low', 'high'] as const) {
      const sounding = writtenToSounding(instrument, fullRange(instrument)[end]);
      expect(formatPitch(fullRange(instrument)[end])).toBe(row.written_range[end]);
      expect(pitchToMidi(sounding)).toBe(pitchToMidi(pitch(row.sounding_range[end])));
    }
  });

  test.each(['beginner', 'intermediate', 'advanced'] as const)('%s range', (stage) => {
    const range = rangeAtStage(instrument, stage);
    expect([formatPitch(range.low), formatPitch(range.high)]).toEqual(row.comfortable_written[stage]);
  });

  test('first keys come first', () => {
    const keys = comfortableKeys(instrument, 'beginner', 'major').map((key) => formatKey(key).split(' ')[0]);
    const majors = row.first_keys_written.filter((key) => !key.endsWith('m'));
    expect(keys.slice(0, majors.length)).toEqual(majors);
  });

  test('35 written pitches sound as tonal transposes them', () => {
    const { diatonic, chromatic } = transpositionOf(instrument);
    // tonal reads an interval from two notes: C to what written C sounds.
    const interval = Interval.distance('C5', sounds5('C5'));
    expect(Interval.semitones(interval)).toBe(chromatic);
    expect(Math.abs(Interval.num(interval)) - 1).toBe(Math.abs(diatonic));
    for (let fifths = -15; fifths < 20; fifths++) {
      const note = formatPitch({ ...fifthsToName(fifths), octave: 4 });
      expect(sounds5(note)).toBe(Note.transpose(note, interval));
    }
  });
});
