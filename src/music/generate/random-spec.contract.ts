// Random specs for every kind, drawn from the fields' own schemas: whatever a field may hold comes up sooner or later.

import { chooseOne, type Random, randomInteger } from '#core';
import { parseChart } from '../chart/parse-chart.ts';
import { listChordQualities } from '../chord/quality.ts';
import { fieldsByKind, type MaterialKind, materialKinds } from '../spec/material-spec.ts';

const roots = ['C', 'Db', 'D', 'Eb', 'E', 'F', 'F#', 'G', 'Ab', 'A', 'Bb', 'B', 'Gb', 'C#', 'G#'];
const tonics = ['fit', ...roots, 'D#', 'A#', 'Cb', 'Fb', 'E#', 'B#'];

function randomSymbol(random: Random): string {
  if (random.next() < 0.03) return 'N.C.';
  const usual = ['', 'm', '7', 'm7', 'maj7', 'm7b5', '6', 'dim7', '7b9'];
  const suffix =
    random.next() < 0.7 ? chooseOne(random, usual) : chooseOne(random, listChordQualities()).suffix;
  const bass = random.next() < 0.08 ? `/${chooseOne(random, roots)}` : '';
  return chooseOne(random, roots) + suffix + bass;
}

/** A chart of 1 to 16 bars with sections, repeats and endings now and then. */
export function randomChart(random: Random): string {
  const count = randomInteger(random, 1, random.next() < 0.2 ? 16 : 6);
  let text = '|';
  for (let bar = 0; bar < count; bar++) {
    if (random.next() < 0.1) text += ` [${chooseOne(random, ['A', 'B', 'Bridge'])}] |`;
    const chords = chooseOne(random, [1, 1, 1, 2, 2, 3, 4]);
    text +=
      random.next() < 0.1 && bar > 0
        ? ' %'
        : ` ${Array.from({ length: chords }, () => randomSymbol(random)).join(' ')}`;
    text += random.next() < 0.07 ? ' :|' : ' |';
  }
  return text;
}

/** A tune for a chart in a metre: a few notes near each other, with a pickup now and then; sometimes one that does not fit. */
function randomTune(random: Random, chart: string, metre: string): string {
  const read = parseChart(chart);
  const [beats = 4, unit = 4] = metre.split('/').map(Number);
  const count = (read.ok ? read.value.bars.length : 1) + (random.next() < 0.02 ? 1 : 0);
  const note = () =>
    random.next() < 0.1
      ? 'r'
      : chooseOne(random, ['C4', 'D4', 'Eb4', 'E4', 'F4', 'F#4', 'G4', 'A4', 'Bb4', 'B4']);
  const value = unit === 2 ? '2' : unit === 4 ? '1' : '1/2';
  const bar = (size: number) =>
    Array.from({ length: size }, () => `${note()}:${value}${random.next() < 0.05 ? '~' : ''}`).join(' ');
  const bars = Array.from({ length: count }, () => bar(beats));
  if (count > 1 && random.next() < 0.3) bars.unshift(bar(1));
  return bars.join(' | ');
}

type Schema = Readonly<Record<string, unknown>>;

function randomValue(random: Random, schema: Schema): unknown {
  const options = schema['anyOf'];
  if (Array.isArray(options)) return randomValue(random, chooseOne(random, options));
  const words = schema['enum'];
  if (Array.isArray(words)) return chooseOne(random, words);
  const low = Number(schema['minimum'] ?? 0);
  const high = Number(schema['maximum'] ?? 1);
  switch (schema['type']) {
    case 'integer':
      return randomInteger(random, low, high);
    case 'number':
      return low + random.next() * (high - low);
    case 'boolean':
      return random.next() < 0.5;
    case 'null':
      return null;
    case 'array': {
      const items = schema['items'] as Schema;
      const list = Array.from({ length: randomInteger(random, 1, 3) }, () => randomValue(random, items));
      return schema['uniqueItems'] === true ? [...new Set(list)] : list;
    }
    default:
      return schema['pattern'] === undefined ? 'Study' : chooseOne(random, tonics);
  }
}

/** A spec as a person could have typed it: about half of the fields given, the rest left to their defaults. */
export function randomSpec(
  random: Random,
  kind: MaterialKind = chooseOne(random, materialKinds),
): Record<string, unknown> {
  const spec: Record<string, unknown> = { kind };
  for (const [name, field] of Object.entries(fieldsByKind[kind])) {
    if (field.fallback !== undefined && random.next() < 0.5) continue;
    if (name === 'chart')
      spec[name] = field.fallback === null && random.next() < 0.3 ? null : randomChart(random);
    else if (name === 'melody') spec[name] = null;
    else spec[name] = randomValue(random, field.schema);
    // Many long lines only now and then: they say little that a few do not.
    if ((name === 'lines' || name === 'bars') && typeof spec[name] === 'number' && random.next() < 0.93)
      spec[name] = Math.ceil(spec[name] / 4);
    if (name === 'bars' && kind === 'reading' && spec[name] === 1) spec[name] = 2;
  }
  if (kind === 'chart' && random.next() < 0.4)
    spec['melody'] = randomTune(random, String(spec['chart']), String(spec['metre'] ?? '4/4'));
  return spec;
}
