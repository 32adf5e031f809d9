// What is set before a take: tempo, metre, click, count-in, and what helps to judge the notes. Kept as the screen's draft
// and turned into the written context.

import type { WrittenContext } from '#contract';
import { type BackingMaterial, parseBackingMaterial } from '#music';

export interface TakeSettings {
  readonly tempo: number;
  readonly metre: readonly [number, number];
  /** Whether a click is heard while playing; without one only the count-in is. */
  readonly click: boolean;
  /** Whether it was played to the tempo at all. */
  readonly inTime: boolean;
  readonly countInBars: number;
  /** Share of the beat the first of two quavers takes; null when not agreed. */
  readonly swing: number | null;
  /** "D dorian", or nothing. */
  readonly scale: string;
  /** Bars of chords, or nothing. */
  readonly chart: string;
  readonly instrument: string | null;
}

export const metres: readonly (readonly [number, number])[] = [
  [4, 4],
  [3, 4],
  [2, 4],
  [6, 8],
  [12, 8],
  [5, 4],
];

/** Beats of the click in a bar: 6/8 is counted in two. */
export function beatsPerBar([beats, unit]: readonly [number, number]): number {
  return unit === 8 && beats % 3 === 0 ? beats / 3 : beats;
}

/** The settings an activity suggests: those of its backing track where it has one. */
export function suggestSettings(specs: readonly unknown[], instrument: string | null): TakeSettings {
  const plain: TakeSettings = {
    tempo: 80,
    metre: [4, 4],
    click: true,
    inTime: true,
    countInBars: 1,
    swing: null,
    scale: '',
    chart: '',
    instrument,
  };
  for (const spec of specs) {
    const backing = parseBackingMaterial(spec);
    if (backing.ok) return { ...plain, ...ofBacking(backing.value) };
  }
  return plain;
}

function ofBacking(backing: BackingMaterial): Partial<TakeSettings> {
  return { tempo: backing.tempo, chart: backing.chart };
}

/** The scale as the context wants it; null when none is written. `readScaleText('Bb major pentatonic')` */
export function readScaleText(text: string): WrittenContext['scale'] {
  const [tonic = '', ...name] = text.trim().split(/\s+/);
  return tonic === '' ? null : { tonic, name: name.length === 0 ? 'major' : name.join(' ') };
}

/** The context of a take with these settings; `offsetS` where bar 1 begins in the recording, when that is known. */
export function settingsToContext(settings: TakeSettings, offsetS: number | null): WrittenContext {
  const { inTime } = settings;
  return {
    tempo: inTime ? settings.tempo : null,
    metre: settings.metre,
    swing: inTime ? settings.swing : null,
    countInBeats: 0,
    offsetS: inTime ? offsetS : null,
    scale: readScaleText(settings.scale),
    chart: settings.chart.trim() === '' ? null : settings.chart.trim(),
    instrument: settings.instrument,
  };
}
