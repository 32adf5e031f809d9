// The textures of the score's blocks as outlines inside a block. An SVG pattern would do on a screen, but a browser
// prints each block that a pattern fills as a picture of the whole page.

import type { Ink } from '../components/ink.ts';

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Pixels from one stroke or dot to the next. */
const step = 8;

/** Path data of the marks of a texture, all inside the box; empty for plain. Dots are to be filled, lines to be stroked. */
export function texturePath(name: Ink['textureName'], box: Box, dot: number): string {
  const { x, y, width, height } = box;
  switch (name) {
    case 'plain':
      return '';
    case 'hatched': {
      let path = '';
      // Rising strokes, on each of which x + y (from the corner) is the same.
      for (let sum = step / 2; sum < width + height; sum += step) {
        const [from, to] = [Math.max(0, sum - height), Math.min(width, sum)];
        path += `M${round(x + from)} ${round(y + sum - from)}L${round(x + to)} ${round(y + sum - to)}`;
      }
      return path;
    }
    case 'dotted': {
      let path = '';
      for (let at = step / 2; at + dot <= width; at += step)
        path += `M${round(x + at - dot)} ${round(y + height / 2)}a${dot} ${dot} 0 1 0 ${2 * dot} 0a${dot} ${dot} 0 1 0 ${-2 * dot} 0z`;
      return path;
    }
    case 'ruled':
      return [1 / 3, 2 / 3]
        .map((share) => `M${round(x)} ${round(y + height * share)}h${round(width)}`)
        .join('');
  }
}

const round = (value: number): number => Math.round(value * 100) / 100;
