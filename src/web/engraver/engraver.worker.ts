// Composes and engraves off the page's thread: a page of notation takes 50 ms and more, and nobody's finger should wait.

import { present } from '#core';
import { drawSheet, warmEngraver } from '#engraving';
import { findInstrument } from '#music';
import type { AnswerMessage, SheetAnswer, SheetWish, WishMessage } from './sheet-wish.ts';

const answerWish = ({ spec, instrument, stage, age, seed, drawing }: SheetWish): Promise<SheetAnswer> =>
  drawSheet(
    spec,
    { instrument: present(findInstrument(instrument), 'an instrument of the list'), stage, age, seed },
    drawing,
  );

self.addEventListener('message', async ({ data }: MessageEvent<WishMessage>) => {
  const { number, wish } = data;
  if (wish === null) await warmEngraver();
  const answer = wish === null ? null : await answerWish(wish);
  const message: AnswerMessage = { number, answer };
  self.postMessage(message);
});
