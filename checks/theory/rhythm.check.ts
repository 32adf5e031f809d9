// Source: note values and metres are published standard theory (Gould, Behind Bars 2011); syncopation is Longuet-Higgins
// & Lee 1984, Music Perception 1(4) 424-441; see README.md.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { present } from '#core';
import {
  barLength,
  beatUnits,
  createScore,
  describeScore,
  durationToValue,
  type Fraction,
  findInstrument,
  formatFraction,
  fraction,
  metreDivisions,
  metricWeights,
  note,
  noteTypes,
  parseKey,
  parseMetre,
  parsePitch,
  part,
  partBar,
  scoreBar,
  syncopation,
  syncopationByNote,
  valueDuration,
  written,
} from '#music';

interface Data {
  readonly note_values: readonly {
    readonly british: string;
    readonly american: string;
    readonly musicxml_type: string;
    readonly quarters: string;
    readonly dotted_quarters: string;
    readonly double_dotted_quarters: string;
  }[];
  readonly tuplets: readonly {
    readonly name: string;
    readonly actual: number;
    readonly normal: number;
    readonly each_quarters: string;
    readonly of: string;
  }[];
  readonly metres: readonly {
    readonly sig: string;
    readonly class_: string;
    readonly beats: number;
    readonly bar_quarters: string;
  }[];
  readonly syncopation_lhl: {
    readonly weights: Readonly<Record<string, readonly number[]>>;
    readonly examples: readonly {
      readonly iois: readonly number[];
      readonly meter: readonly number[];
      readonly per_note: readonly (number | null)[];
      readonly sum: number;
    }[];
  };
}
const data: Data = JSON.parse(readFileSync(new URL('./data/rhythm.json', import.meta.url), 'utf8'));

/** The table counts in crotchets, the score in semibreves. */
const inQuarters = ({ n, d }: Fraction) => formatFraction(fraction(4 * n, d));
const typeOf = (name: string) => present(noteTypes.find((type) => type === name) ?? null, name);

test('the table holds what it should', () => {
  expect([data.note_values.length, data.tuplets.length, data.metres.length]).toEqual([8, 7, 10]);
  expect(data.syncopation_lhl.examples.length).toBe(11);
});

test.each(data.note_values)('a $musicxml_type lasts $quarters crotchets, and its dots', (row) => {
  const type = typeOf(row.musicxml_type);
  const lengths = ([0, 1, 2] as const).map((dots) => valueDuration({ type, dots }));
  expect(lengths.map(inQuarters)).toEqual([row.quarters, row.dotted_quarters, row.double_dotted_quarters]);
  expect(lengths.map((length) => durationToValue(length))).toEqual([
    { type, dots: 0 },
    { type, dots: 1 },
    { type, dots: 2 },
  ]);
});

test.each(data.note_values)('a $musicxml_type is called $british or $american', (row) => {
  const length = valueDuration({ type: typeOf(row.musicxml_type), dots: 0 });
  const flute = present(findInstrument('flute'), 'flute');
  const c5 = written(present(parsePitch('C5'), 'C5'));
  const bar = partBar({ key: present(parseKey('C'), 'C major') }, [note(c5, length)]);
  const score = createScore({
    bars: [scoreBar(1, present(parseMetre('4/4'), '4/4'), { length })],
    parts: [part(flute, [bar])],
  });
  expect(describeScore(score, 'british').toLowerCase()).toContain(`bar 1: ${row.british} c 5`);
  expect(describeScore(score, 'american').toLowerCase()).toContain(`measure 1: ${row.american} c 5`);
});

test.each(data.tuplets)(
  '$name: each is $each_quarters crotchets',
  ({ actual, normal, each_quarters, of }) => {
    const value = { type: typeOf(of), dots: 0 } as const;
    const duration = valueDuration(value, { actual, normal });
    expect(inQuarters(duration)).toBe(each_quarters);
    expect(durationToValue(duration, { actual, normal })).toEqual(value);
  },
);

test.each(data.metres)('$sig: $bar_quarters crotchets in $beats beats', ({ sig, beats, bar_quarters }) => {
  const metre = present(parseMetre(sig), sig);
  expect(inQuarters(barLength(metre))).toBe(bar_quarters);
  expect(beatUnits(metre).length).toBe(beats);
});

test.each(Object.entries(data.syncopation_lhl.weights))('weights of %s', (name, weights) => {
  const metre = present(parseMetre(name.split(' ')[0] ?? ''), name);
  const divisions = present(metreDivisions(metre, weights.length), name);
  expect(metricWeights(divisions)).toEqual(weights);
});

test.each(data.syncopation_lhl.examples)('$iois in $meter: $per_note', ({ iois, meter, per_note, sum }) => {
  // Rows list only notes held over a step; in the son clave every note is.
  expect(syncopationByNote(iois, meter)).toEqual(per_note);
  expect(syncopation(iois, meter)).toBe(sum);
});
