// Hearing the sheet on the screen; the bar that sounds is marked. Another sheet stops it.

import { useCallback, useEffect, useRef, useState } from 'react';
import type { Score } from '#music';
import { type Playing, playScore } from '../../playback/play-score.ts';

export interface Hearing {
  readonly isPlaying: boolean;
  /** Begins, or stops. */
  readonly toggle: () => void;
}

function markBar(bar: number | null): void {
  for (const marked of document.querySelectorAll('.notation .is-sounding'))
    marked.classList.remove('is-sounding');
  if (bar === null) return;
  for (const found of document.querySelectorAll(`.notation .measure[data-bar="${bar + 1}"]`))
    found.classList.add('is-sounding');
}

/** `null` while there is nothing to hear. */
export function useHear(score: Score | null): Hearing {
  const [isPlaying, setIsPlaying] = useState(false);
  const playing = useRef<Playing | null>(null);
  const stop = useCallback(() => {
    playing.current?.stop();
    playing.current = null;
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new score is what stops the old one
  useEffect(() => stop, [score, stop]);
  const toggle = () => {
    if (playing.current !== null || score === null) return stop();
    const begun = playScore(score, markBar);
    playing.current = begun;
    setIsPlaying(true);
    void begun.ended.then(() => {
      if (playing.current === begun) playing.current = null;
      setIsPlaying(playing.current !== null);
    });
  };
  return { isPlaying, toggle };
}
