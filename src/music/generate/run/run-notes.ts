// The order of notes in a scale or chord study, as steps above its lowest tonic: a small figure moved from step to step
// up to the top, the same turned over on the way down, and home.

export interface RunNote {
  /** Steps of the scale or chord above the tonic it starts from; may be negative. */
  readonly step: number;
  readonly isFalling: boolean;
}

export interface Run {
  readonly notes: readonly RunNote[];
  /** The long note at the end. */
  readonly last: RunNote;
}

export type RunDirection = 'up_down' | 'up' | 'down' | 'down_up';

/** What a figure does on its step: offsets, and how many steps on the next one starts. */
export interface RunFigure {
  readonly offsets: readonly number[];
  readonly stride: number;
}

/** Figures on the way up to `top`, none of them reaching it; the last one may where nothing else fits. */
function climb(top: number, { offsets, stride }: RunFigure): readonly number[] {
  const reach = Math.max(...offsets);
  const starts: number[] = [];
  for (let at = 0; at + reach < top; at += stride) starts.push(at);
  if (starts.length === 0 && reach <= top) starts.push(0);
  return starts.flatMap((start) => offsets.map((offset) => start + offset));
}

/** A study from the tonic to the step `top` above it. */
export function runTo(top: number, figure: RunFigure, direction: RunDirection): Run {
  const rising = climb(top, figure).map((step): RunNote => ({ step, isFalling: false }));
  const falling = climb(top, figure).map((step): RunNote => ({ step: top - step, isFalling: true }));
  switch (direction) {
    case 'up':
      return { notes: rising, last: { step: top, isFalling: false } };
    case 'down':
      return { notes: falling, last: { step: 0, isFalling: true } };
    case 'up_down':
      return { notes: [...rising, ...falling], last: { step: 0, isFalling: true } };
    case 'down_up':
      return { notes: [...falling, ...rising], last: { step: top, isFalling: false } };
  }
}

/** From the tonic to the top of a range, down to its bottom and home: for ranges an octave does not fit into. */
export function runThrough(bottom: number, top: number): Run {
  const notes: RunNote[] = [];
  for (let step = 0; step < top; step++) notes.push({ step, isFalling: false });
  for (let step = top; step > bottom; step--) notes.push({ step, isFalling: true });
  for (let step = bottom; step < 0; step++) notes.push({ step, isFalling: false });
  return { notes, last: { step: 0, isFalling: bottom === 0 } };
}
