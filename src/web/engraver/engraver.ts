// The page's side of the engraver: one worker, started when the first sheet is wanted, and kept.

import { err } from '#core';
import { words } from '../words/index.ts';
import type {
  AnswerMessage,
  ScoreAnswer,
  ScoreWish,
  SheetAnswer,
  SheetWish,
  WishMessage,
} from './sheet-wish.ts';

let worker: Worker | null = null;
let lastNumber = 0;
const waiting = new Map<number, (answer: AnswerMessage['answer']) => void>();

const stopped = () => err({ kind: 'EngraverStopped', message: words.materials.engraverStopped } as const);

function theWorker(): Worker {
  if (worker !== null) return worker;
  worker = new Worker(new URL('./engraver.worker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', ({ data }: MessageEvent<AnswerMessage>) => {
    waiting.get(data.number)?.(data.answer);
    waiting.delete(data.number);
  });
  // The worker could not be loaded, or a bug threw in it: those who wait are told, and the next wish starts a new one.
  worker.addEventListener('error', () => {
    worker?.terminate();
    worker = null;
    for (const tell of waiting.values()) tell(stopped());
    waiting.clear();
  });
  return worker;
}

function post(wish: WishMessage['wish']): Promise<AnswerMessage['answer']> {
  const message: WishMessage = { number: ++lastNumber, wish };
  return new Promise((tell) => {
    waiting.set(message.number, tell);
    theWorker().postMessage(message);
  });
}

/** Loads the engraver ahead of need. */
export function warm(): void {
  void post(null);
}

/** Makes and draws a sheet. */
export async function wishSheet(wish: SheetWish): Promise<SheetAnswer> {
  const answer = await post(wish);
  return (answer as SheetAnswer | null) ?? stopped(); // a sheet's answer answers a sheet's wish
}

/** Draws a score that is there already. */
export async function wishScore(wish: ScoreWish): Promise<ScoreAnswer> {
  const answer = await post(wish);
  return (answer as ScoreAnswer | null) ?? stopped(); // a score's answer answers a score's wish
}
