// Where the band is and which bars it goes round: what a player shares with the charts and sheets that follow it.

import { useCallback, useMemo, useState } from 'react';
import type { BarsOfChart } from '#music';

/** What sounds now. */
export interface BandPlace {
  /** As numbered on the chart; 0 is the count-in. */
  readonly bar: number;
  /** Bars played before it. */
  readonly nth: number;
}

export interface Following {
  /** null is silence. */
  readonly place: BandPlace | null;
  readonly setPlace: (place: BandPlace | null) => void;
  /** null plays the track. */
  readonly loop: BarsOfChart | null;
  readonly goRound: (loop: BarsOfChart | null) => void;
}

/** One for each chart: another chart has other bars. */
export function useFollowing(chart: string): Following {
  const [place, setPlace] = useState<BandPlace | null>(null);
  const [chosen, setChosen] = useState<{ readonly chart: string; readonly loop: BarsOfChart | null } | null>(
    null,
  );
  const loop = chosen?.chart === chart ? chosen.loop : null;
  const goRound = useCallback((next: BarsOfChart | null) => setChosen({ chart, loop: next }), [chart]);
  return useMemo(() => ({ place, setPlace, loop, goRound }), [place, loop, goRound]);
}
