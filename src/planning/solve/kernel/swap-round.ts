// A round of swaps: cheap moves of whole chunks, each kept or taken back at once.

import { listChunks, listed } from './chunk-list.ts';
import { heats, luckFrom } from './heats.ts';
import { real, setReal } from './memory.ts';
import { draw } from './random.ts';
import { undoStep } from './state.ts';
import { earlyChange, penaltyChange, trySwap, trySwapLessons } from './swap-moves.ts';
import { lessonSwaps, swaps } from './tuning.ts';

/** Tries a number of swaps on the state and keeps `score` up to date; `onGain` is told of each that made it better. */
export function swapChunks(score: i32, level: i32, onGain: () => void): void {
  listChunks();
  if (listed < 2) return;
  // at level 0 no revisits are placed and P does not count
  const withReviews = level > 0;
  for (let n = 0; n < swaps; n++) {
    const made = n < lessonSwaps ? trySwapLessons(withReviews) : trySwap(withReviews);
    if (!made) continue;
    const counts = withReviews && abs(penaltyChange) > 1e-7 ? 1 : 2;
    const loss = counts === 1 ? penaltyChange : earlyChange;
    if (loss > 0 && loss >= real(heats, counts) * luckFrom(draw())) {
      undoStep();
      continue;
    }
    listChunks();
    setReal(score, 1, real(score, 1) + penaltyChange);
    setReal(score, 2, real(score, 2) + earlyChange);
    if (loss < 0 && withReviews) onGain();
  }
}
