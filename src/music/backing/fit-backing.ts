// A backing track for one student: in the key that lies best on their instrument, where the material asks for that.

import { modulo } from '#core';
import { chartKey } from '../chart/transpose-chart.ts';
import { studentCharts } from '../generate/chart/student-chart.ts';
import { transpositionOf } from '../instrument/instrument.ts';
import { pitchClass } from '../pitch/pitch.ts';
import type { SheetFor } from '../shape/student-shape.ts';
import { type BackingMaterial, backingToSpec } from './backing-material.ts';

/** The material with `transpose` set for the student; as it is where its key is to stay as typed. */
export function fitBacking(material: BackingMaterial, student: SheetFor): BackingMaterial {
  if (material.key === 'as_typed') return material;
  const [best] = studentCharts({ chart: material.chart, pitch: 'concert', key: 'fit' }, student);
  if (best === undefined) return material;
  const home = chartKey(backingToSpec({ ...material, transpose: 0 }).chart);
  const sounding = pitchClass(best.key.tonic) + transpositionOf(student.instrument).chromatic;
  const up = modulo(sounding - pitchClass(home.tonic), 12);
  // Down rather than far up: the bass stays in its place.
  return { ...material, transpose: up > 6 ? up - 12 : up };
}
