// A backing track as a material: what is typed or kept in a unit, and what the rhythm section makes of it.

import { err, isFields, modulo, ok, present, type Result } from '#core';
import { unfoldRepeats } from '../chart/chart.ts';
import { parseChart } from '../chart/parse-chart.ts';
import { chartKey, transposeChart } from '../chart/transpose-chart.ts';
import { formatPitchName, parsePitchName, pitchClass } from '../pitch/pitch.ts';
import type { SpecOf } from '../spec/field.ts';
import { readFields } from '../spec/material-spec.ts';
import { pictureOf, type SpecFault, specFault } from '../spec/spec-fault.ts';
import { backingFields } from './backing-fields.ts';
import { type BackingSpec, createBackingSpec } from './backing-spec.ts';
import { feelById } from './feel.ts';
import { keyInterval, tempoOf } from './layout.ts';

export type BackingMaterial = { readonly kind: 'backing' } & SpecOf<typeof backingFields>;

/** Longer than anybody plays to in one go. Our own choice. */
const mostMinutes = 30;

/**
 * Reads a backing material out of JSON; fields left out get their defaults. A fault names the field, what is wrong and the
 * nearest value that would do. `parseBackingMaterial({ kind: 'backing', chart: '| C |', tempo: 500 })` → fault at `/tempo`,
 * nearest 320
 */
export function parseBackingMaterial(value: unknown): Result<BackingMaterial, SpecFault> {
  if (!isFields(value))
    return err(specFault('WrongType', '', `is ${pictureOf(value)}, not an object { … }`, null));
  const kind = Object.hasOwn(value, 'kind') ? value['kind'] : undefined;
  if (kind === undefined) return err(specFault('MissingField', '/kind', 'is missing', 'backing'));
  if (kind !== 'backing')
    return err(specFault('NotAChoice', '/kind', `is ${pictureOf(kind)}, no backing track`, 'backing'));
  const read = readFields(backingFields, value);
  if (!read.ok) return read;
  const material: BackingMaterial = { kind, ...read.value };
  const spec = backingToSpec(material);
  const minutes = chorusMinutes(spec);
  const total = minutes.reduce((sum, one) => sum + one, 0);
  if (total <= mostMinutes) return ok(material);
  let fitting = 0;
  for (let sum = 0; sum + (minutes[fitting] ?? total) <= mostMinutes; fitting++) sum += minutes[fitting] ?? 0;
  return err(
    specFault(
      'OutOfRange',
      '/choruses',
      `is ${material.choruses}, which takes ${Math.ceil(total)} minutes, not at most ${mostMinutes}`,
      Math.max(1, fitting),
    ),
  );
}

const semitonesByOrder = { fourths: 5, fifths: 7, semitones: 1 } as const;

/** What a rhythm section is asked for; the material is one that `parseBackingMaterial` has read. */
export function backingToSpec(material: BackingMaterial): BackingSpec {
  const parsed = parseChart(material.chart);
  const chart = present(parsed.ok ? parsed.value : null, 'a chart that has been read before');
  const { keys, transpose, tempoStep, tempoLimit, swing } = material;
  const step = typeof keys === 'string' && keys !== 'same' ? semitonesByOrder[keys] : null;
  const played = transpose === 0 ? chart : transposeChart(chart, keyInterval(transpose));
  const drone = material.drone === 'tonic' ? formatPitchName(chartKey(played).tonic) : material.drone;
  return createBackingSpec(played, {
    feel: material.feel,
    tempo: material.tempo,
    tempoStep:
      tempoStep === 0
        ? null
        : { by: tempoStep, limit: tempoLimit === 'none' ? (tempoStep > 0 ? 320 : 30) : tempoLimit },
    choruses: material.choruses,
    countIn: material.countIn === 'fit' ? null : material.countIn,
    gate:
      material.rest === 0
        ? null
        : { play: material.play, rest: material.rest, isSilent: material.resting === 'nothing' },
    trade: material.trade === 0 ? null : material.trade,
    keys:
      typeof keys !== 'string'
        ? keys
        : step === null
          ? []
          : Array.from({ length: 12 }, (_, nth) => withinOctave(nth * step)),
    balance: { bass: material.bass / 100, keys: material.keyboard / 100, drums: material.drums / 100 },
    click: material.click,
    drone: toneOf(drone, 45),
    tuning: toneOf(material.tuning, 69),
    grows: material.grows,
    swing: swing === 'fit' ? null : swing,
    humanise: material.human / 100,
  });
}

/** The same key from five semitones below to six above. */
const withinOctave = (semitones: number) => ((semitones + 5) % 12) - 5;

/** The MIDI number of a named tone, `around` and up to five semitones below or six above; null for none. */
function toneOf(name: string, around: number): number | null {
  const pitch = parsePitchName(name);
  if (pitch === null) return null;
  return around + withinOctave(modulo(pitchClass(pitch) - around, 12));
}

/** Minutes of each chorus. */
function chorusMinutes(spec: BackingSpec): readonly number[] {
  const { metre, beatTicks } = feelById(spec.feel);
  const beats = (metre.beats * 1920) / metre.unit / beatTicks;
  const bars = unfoldRepeats(spec.chart.bars).length;
  return Array.from({ length: spec.choruses }, (_, chorus) => (bars * beats) / tempoOf(spec, chorus));
}
