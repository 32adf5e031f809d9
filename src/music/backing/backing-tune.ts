// What stands on a sheet over a chart, for the band to play along.

/** A note as written: quavers are even, the feel swings them. */
export interface TuneNote {
  /** Ticks after its bar's start. */
  readonly at: number;
  readonly ticks: number;
  /** At concert pitch. */
  readonly midi: number;
  readonly velocity: number;
}

/** Notes for each bar of the chart, from its first. */
export type BackingTune = readonly (readonly TuneNote[])[];
