// A round of cheap moves of chunks that stand already, each kept or taken back at once.

import { findChain } from './chain-moves.ts';
import { listChunks, listed } from './chunk-list.ts';
import { addWork } from './clock.ts';
import { earlyChange, makeMove, penaltyChange } from './make-move.ts';
import { real, setReal } from './memory.ts';
import { swapLessons } from './swap-lessons.ts';
import { lessonSwaps, swaps } from './tuning.ts';

/** Work of each, beside what a chain and a move cost. */
const tryWork: i32 = 34;

/** Tries a number of moves on the state and keeps `score` up to date; `onGain` is told of each that made it better. */
export function swapChunks(score: i32, level: i32, onGain: () => void): void {
  listChunks();
  addWork(swaps * tryWork);
  if (listed < 2) return;
  for (let n = 0; n < swaps; n++) {
    const isMade = n < lessonSwaps ? swapLessons(level) : findChain(level) && makeMove(level);
    if (!isMade) continue;
    setReal(score, 1, real(score, 1) + penaltyChange);
    setReal(score, 2, real(score, 2) + earlyChange);
    // at level 0 no revisits are placed and P does not count
    const isBetter = abs(penaltyChange) > 1e-7 ? penaltyChange < 0 : earlyChange < 0;
    if (isBetter && level > 0) onGain();
  }
}
