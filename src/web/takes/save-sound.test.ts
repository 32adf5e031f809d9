import { expect, test } from 'vitest';
import { nameSound } from './save-sound.ts';

test.each([
  ['Blues: take 2', 'audio/webm;codecs=opus', 'Blues take 2.webm'],
  ['A/B "quietly"?', 'audio/ogg; codecs=opus', 'A B quietly.ogg'],
  ['Étude Nr. 3', 'audio/mp4', 'Étude Nr. 3.m4a'],
  ['..', 'audio/mpeg', 'take.mp3'],
  ['.hidden', 'audio/x-wav', 'hidden.wav'],
])('%s, %s', (title, type, name) => {
  expect(nameSound(title, type)).toBe(name);
});
