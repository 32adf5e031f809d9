// Composes and engraves off the page's thread: a page of notation takes 50 ms and more, and nobody's finger should wait.

import { present } from '#core';
import { drawSheet, engrave, warmEngraver } from '#engraving';
import { describeScore, findInstrument, scoreToMusicXml } from '#music';
import type {
  AnswerMessage,
  ScoreAnswer,
  ScoreWish,
  SheetAnswer,
  SheetWish,
  WishMessage,
} from './sheet-wish.ts';

const answerWish = ({ spec, instrument, stage, age, seed, drawing }: SheetWish): Promise<SheetAnswer> =>
  drawSheet(
    spec,
    { instrument: present(findInstrument(instrument), 'an instrument of the list'), stage, age, seed },
    drawing,
  );

const drawScore = ({ score, drawing: { naming = 'british', ...options } }: ScoreWish): Promise<ScoreAnswer> =>
  engrave(scoreToMusicXml(score), { ...options, description: describeScore(score, naming) });

self.addEventListener('message', async ({ data }: MessageEvent<WishMessage>) => {
  const { number, wish } = data;
  if (wish === null) await warmEngraver();
  const answer = wish === null ? null : 'score' in wish ? await drawScore(wish) : await answerWish(wish);
  const message: AnswerMessage = { number, answer };
  self.postMessage(message);
});
