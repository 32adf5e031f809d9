// What is set before a take: what is heard while playing, tempo, metre, count-in, and what helps to judge the notes. Kept as
// the screen's draft and turned into the written context.

import type { WrittenContext } from '#contract';
import { type BackingMaterial, backingToSpec, feelById, formatChart, parseBackingMaterial } from '#music';

/** What is heard while playing: a click, a band over the chords, only the count-in, or nothing, at no tempo. */
export const companies = ['click', 'band', 'countIn', 'nothing'] as const;
export type Company = (typeof companies)[number];

export interface TakeSettings {
  readonly company: Company;
  readonly tempo: number;
  /** Whether somebody said so; a tempo only proposed says nothing of a file that was played before. */
  readonly isTempoTold: boolean;
  readonly metre: readonly [number, number];
  readonly countInBars: number;
  /** "D dorian", or nothing. */
  readonly scale: string;
  /** Bars of chords at sounding pitch, or nothing. */
  readonly chart: string;
  readonly instrument: string | null;
  /** How the band plays, where the activity has a backing track. */
  readonly backing: Readonly<Record<string, unknown>>;
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
    company: 'click',
    tempo: 80,
    isTempoTold: false,
    metre: [4, 4],
    countInBars: 1,
    scale: '',
    chart: '',
    instrument,
    backing: {},
  };
  for (const spec of specs) {
    const read = parseBackingMaterial(spec);
    if (!read.ok) continue;
    const { tempo } = read.value;
    // In the key in which it sounds.
    const chart = formatChart(backingToSpec(read.value).chart);
    return { ...plain, company: 'band', tempo, isTempoTold: true, chart, backing: read.value };
  }
  return plain;
}

/** Times through the chart, the longest that the band can play first. */
const choruses = [32, 16, 8, 4, 2, 1];

/** The band over the chords: in one key and at one tempo, so that the take's grid holds. Null without readable chords. */
export function bandOf(settings: TakeSettings): BackingMaterial | null {
  if (settings.chart.trim() === '') return null;
  for (const times of choruses) {
    const read = parseBackingMaterial({
      ...settings.backing,
      kind: 'backing',
      chart: settings.chart,
      tempo: settings.tempo,
      countIn: settings.countInBars,
      choruses: times,
      key: 'as_typed',
      transpose: 0,
      keys: 'same',
      tempoStep: 0,
      tuning: 'none',
    });
    if (read.ok) return read.value;
  }
  return null;
}

/** The scale as the context wants it; null when none is written. `readScaleText('Bb major pentatonic')` */
export function readScaleText(text: string): WrittenContext['scale'] {
  const [tonic = '', ...name] = text.trim().split(/\s+/);
  return tonic === '' ? null : { tonic, name: name.length === 0 ? 'major' : name.join(' ') };
}

/** The context of a take with these settings; `offsetS` where bar 1 begins in the recording, when that is known. */
export function settingsToContext(settings: TakeSettings, offsetS: number | null): WrittenContext {
  const inTime = settings.company !== 'nothing';
  return {
    tempo: inTime ? settings.tempo : null,
    metre: metreOf(settings),
    swing: null,
    countInBeats: 0,
    offsetS: inTime ? offsetS : null,
    scale: readScaleText(settings.scale),
    chart: settings.chart.trim() === '' ? null : settings.chart.trim(),
    instrument: settings.instrument,
  };
}

/** The band's feel has a metre of its own. */
function metreOf(settings: TakeSettings): readonly [number, number] {
  const band = settings.company === 'band' ? bandOf(settings) : null;
  if (band === null) return settings.metre;
  const { metre } = feelById(band.feel);
  return [metre.beats, metre.unit];
}

/** The settings by which a file is listened to: its tempo is found in the playing unless it was told. */
export function settingsOfFile(settings: TakeSettings): TakeSettings {
  return settings.isTempoTold ? settings : { ...settings, company: 'nothing' };
}
