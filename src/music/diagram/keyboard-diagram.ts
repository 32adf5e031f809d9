// Keys marked on two octaves of a keyboard, with fingers where there are any.

import { formatPitch, type Pitch, pitchToMidi } from '../pitch/pitch.ts';
import { type Drawing, disc, type Mark, text } from './drawing.ts';

/** A key to mark; the finger, 1 to 5, is written in the mark. */
export interface MarkedKey {
  readonly pitch: Pitch;
  readonly finger: number | null;
}

const whiteWidth = 14;
const whiteHeight = 60;
const blackWidth = 9;
const blackHeight = 36;
const margin = 1;
const whiteSemitones = [0, 2, 4, 5, 7, 9, 11];
/** Black keys, by how many white keys stand to their left and how far they are set off the crack, in white keys. */
const blackKeys: Readonly<Record<number, readonly [left: number, off: number]>> = {
  1: [1, -0.1],
  3: [2, 0.1],
  6: [4, -0.13],
  8: [5, 0],
  10: [6, 0.13],
};

function markOn(key: MarkedKey, x: number, isBlack: boolean): readonly Mark[] {
  const y = margin + (isBlack ? blackHeight - 7 : whiteHeight - 9);
  const finger = key.finger === null ? [] : [String(key.finger)];
  if (isBlack) {
    return [disc(x, y, 3.9, 'paper'), ...finger.map((f) => text(x, y, 7.2, f, { bold: true }))];
  }
  return [disc(x, y, 5.6), ...finger.map((f) => text(x, y, 8.6, f, { ink: 'paper', bold: true }))];
}

/**
 * Two octaves (more where the keys need them) from the C at or below the lowest marked key. Title says what is shown, as
 * `C major`; the description lists the keys.
 */
export function keyboardDiagram(title: string, keys: readonly MarkedKey[]): Drawing {
  const midis = keys.map((key) => pitchToMidi(key.pitch));
  const lowestC = 12 * Math.floor((midis.length === 0 ? 60 : Math.min(...midis)) / 12);
  const top = midis.length === 0 ? lowestC : Math.max(...midis);
  const octaves = Math.max(2, Math.ceil((top - lowestC + 1) / 12));
  const whites: Mark[] = [];
  const blacks: Mark[] = [];
  const marks: Mark[] = [];
  for (let midi = lowestC; midi < lowestC + 12 * octaves; midi++) {
    const semitone = midi % 12;
    const left = 7 * Math.floor((midi - lowestC) / 12);
    const black = blackKeys[semitone];
    const [place, offset] = black ?? [whiteSemitones.indexOf(semitone) + 0.5, 0];
    const x = margin + (left + place + offset) * whiteWidth;
    const box = { shape: 'box', x, corner: 1 } as const;
    if (black === undefined) {
      const y = margin + whiteHeight / 2;
      whites.push({ ...box, y, width: whiteWidth, height: whiteHeight, fill: 'none', outline: 1 });
    } else {
      const y = margin + blackHeight / 2;
      blacks.push({ ...box, y, width: blackWidth, height: blackHeight, fill: 'ink', outline: 0 });
    }
    const key = keys[midis.indexOf(midi)];
    if (key !== undefined) marks.push(...markOn(key, x, black !== undefined));
  }
  const words = keys.map(({ pitch, finger }) =>
    finger === null ? formatPitch(pitch) : `${formatPitch(pitch)} with finger ${finger}`,
  );
  return {
    width: 7 * octaves * whiteWidth + 2 * margin,
    height: whiteHeight + 2 * margin,
    title,
    description: `Keys ${words.join(', ')}`,
    marks: [...whites, ...blacks, ...marks],
  };
}
