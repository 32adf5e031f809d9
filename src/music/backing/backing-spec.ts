// What a rhythm section is asked to play: chart, feel, tempo, and the ways of a lesson.

import type { Chart } from '../chart/chart.ts';
import type { BackingTune } from './backing-tune.ts';
import type { FeelId } from './feel.ts';

/** Which beats a click sounds on. `first` is the first beat of a bar; `vanishing` leaves out more bars from chorus to chorus. */
export type ClickKind = 'none' | 'every' | 'back' | 'first' | 'vanishing';

export interface BackingSpec {
  /** At concert pitch. */
  readonly chart: Chart;
  readonly feel: FeelId;
  /** Beats a minute: crotchets, or dotted crotchets in 6/8. 30 to 320. */
  readonly tempo: number;
  /** Added with every chorus, up to a ceiling; may be negative for slowing down, then the ceiling is a floor. */
  readonly tempoStep: { readonly by: number; readonly limit: number } | null;
  /** Times through the chart, 1 to 64. */
  readonly choruses: number;
  /** Bars counted in, 0 to 2; null for what is usual at this tempo. */
  readonly countIn: number | null;
  /** The band plays some bars and then rests for some, again and again: keeping time, or leaving them free. */
  readonly gate: { readonly play: number; readonly rest: number; readonly isSilent?: boolean } | null;
  /** The band plays some bars and leaves as many free, again and again. */
  readonly trade: number | null;
  /** Semitones up or down for each chorus in turn, again from the start when all are used; empty for none. */
  readonly keys: readonly number[];
  /** Share of full loudness, 0 to 1, where 0 leaves a part out. */
  readonly balance: { readonly bass: number; readonly keys: number; readonly drums: number };
  readonly click: ClickKind;
  /** A held tone, as a MIDI number at concert pitch, or null. */
  readonly drone: number | null;
  /** A tone to tune to before the count-in, as a MIDI number at concert pitch, or null. */
  readonly tuning: number | null;
  /** Louder and busier from chorus to chorus. */
  readonly grows: boolean;
  /** Longer to shorter of two swung quavers; null follows the tempo. Used by swung feels only. */
  readonly swing: number | null;
  /** What stands on a sheet over the chart, played along with the band; null for the band alone. */
  readonly tune: BackingTune | null;
  /** How far from the grid and from even loudness players may be: 0 exactly even, 1 as much as good players. */
  readonly humanise: number;
}

/** Semitones by which a chorus (from 0) is moved; the list of keys goes round. */
export const keyMoveOf = ({ keys }: Pick<BackingSpec, 'keys'>, chorus: number): number =>
  keys[chorus % keys.length] ?? 0;

/** The most a humanised note leaves the grid, in ticks, and the most its velocity changes. Our own choice. */
export const humanLimits = { ticks: 9, velocity: 8 } as const;

/** One chorus of swing at 120 with all parts even; for callers that set only what they care about. */
export function createBackingSpec(chart: Chart, rest: Partial<BackingSpec> = {}): BackingSpec {
  return {
    chart,
    feel: 'swing',
    tempo: 120,
    tempoStep: null,
    choruses: 1,
    countIn: null,
    gate: null,
    trade: null,
    keys: [],
    balance: { bass: 1, keys: 1, drums: 1 },
    click: 'none',
    drone: null,
    tuning: null,
    grows: false,
    swing: null,
    tune: null,
    humanise: 1,
    ...rest,
  };
}
