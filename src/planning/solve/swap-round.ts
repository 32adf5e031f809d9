// A round of swaps: cheap moves of whole chunks, each kept or taken back at once.

import type { Random } from '#core';
import { type Heats, luckFrom } from './heats.ts';
import { type ChunkList, listChunks } from './minute-moves.ts';
import type { Model } from './model.ts';
import type { Score } from './score.ts';
import { type State, undoStep } from './state.ts';
import { noteSwap, type SwapChange, trySwap, trySwapLessons } from './swap-moves.ts';
import { tuning } from './tuning.ts';

/** Tries a number of swaps on the state and keeps `score` up to date; `onGain` is told of each that made it better. */
export function swapChunks(
  model: Model,
  state: State,
  random: Random,
  list: ChunkList,
  change: SwapChange,
  score: Score,
  level: number,
  heats: Heats,
  onGain: () => void,
): void {
  listChunks(model, state, list);
  if (list.length < 2) return;
  // at level 0 no revisits are placed and P does not count
  const withReviews = level > 0;
  for (let n = 0; n < tuning.swaps; n++) {
    const made =
      n < tuning.lessonSwaps
        ? trySwapLessons(model, state, random, withReviews, change)
        : trySwap(model, state, random, list, tuning.moveShare, withReviews, change);
    if (!made) continue;
    const counts = withReviews && Math.abs(change.penalty) > 1e-7 ? 1 : 2;
    const loss = counts === 1 ? change.penalty : change.early;
    if (loss > 0 && loss >= (heats[counts] ?? 0) * luckFrom(random.next())) {
      undoStep(model, state);
      continue;
    }
    if (change.a < 0) listChunks(model, state, list);
    else noteSwap(list, change);
    score[1] = (score[1] ?? 0) + change.penalty;
    score[2] = (score[2] ?? 0) + change.early;
    if (loss < 0 && withReviews) onGain();
  }
}
