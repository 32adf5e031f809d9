// Keyboard voicings that move as little as they can: for each chord a few close shapes around the middle of the keyboard,
// without the root where the chord has enough other tones to be told by (third and seventh first, then colour), and from
// one to the next the shape whose voices move least. Common practice (rootless voicings), no source.

import { modulo, present } from '#core';
import type { Chord } from '../chord/chord.ts';
import { guideTones } from '../chord/chord.ts';
import { pitchClass } from '../pitch/pitch.ts';
import { tensionClasses, toneClasses } from './chord-sound.ts';

/** From D below middle C, under which close voicings sound muddy, to the D two octaves above. */
export const voicingCompass = { low: 50, high: 74 } as const;
const centre = 61;
/** Seconds at the bottom of a voicing blur below E (common practice, no source: low interval limits). */
const lowestSecond = 52;

/** Pitch classes to voice, three or four of them. `isPlain` keeps to the chord's own tones, root and all. */
export function classesToVoice(chord: Chord, isPlain: boolean): readonly number[] {
  const own = toneClasses(chord);
  if (isPlain || own.length <= 3) return own.slice(0, 4);
  const guides = guideTones(chord).map(pitchClass);
  const root = present(own[0], 'a root');
  // Ninth and thirteenth of the symbol itself, then the fifth, then what players add.
  const colours = own.slice(4);
  const added = tensionClasses(chord);
  const fifth = own[2] ?? root;
  return [...new Set([...guides, ...colours, ...added.slice(0, 1), fifth, ...added.slice(1)])]
    .filter((one) => one !== root)
    .slice(0, 4);
}

/** Close positions of these pitch classes within the compass, from the lowest up. */
function closeShapes(classes: readonly number[]): readonly (readonly number[])[] {
  const shapes: (readonly number[])[] = [];
  for (let low = voicingCompass.low; low <= voicingCompass.high; low++) {
    if (!classes.includes(low % 12)) continue;
    const shape = classes.map((one) => low + modulo(one - low, 12)).sort((a, b) => a - b);
    if (present(shape.at(-1), 'a top note') <= voicingCompass.high) shapes.push(shape);
  }
  return shapes;
}

/** Semitones that the voices move, paired from the lowest up; a voice that comes or goes counts three. */
export function movement(from: readonly number[], to: readonly number[]): number {
  const shared = Math.min(from.length, to.length);
  let sum = 3 * (Math.max(from.length, to.length) - shared);
  for (let at = 0; at < shared; at++) sum += Math.abs((to[at] ?? 0) - (from[at] ?? 0));
  return sum;
}

/** The shape for a chord after another, or from the middle of the keyboard. Empty never: a chord has tones. */
export function nextVoicing(
  chord: Chord,
  before: readonly number[] | null,
  isPlain: boolean,
): readonly number[] {
  const shapes = closeShapes(classesToVoice(chord, isPlain));
  const cost = (shape: readonly number[]) => {
    const mean = shape.reduce((sum, midi) => sum + midi, 0) / shape.length;
    // A semitone at the bottom of a shape sounds rough, a low second muddy; the further from the middle, the more it has to
    // be worth: roots that fall by fifths would draw the voices down for ever.
    const [lowest = 0, next = 99] = shape;
    const rough = (next - lowest === 1 ? 2 : 0) + (next - lowest <= 2 && lowest < lowestSecond ? 4 : 0);
    return (before === null ? 0 : movement(before, shape)) + (mean - centre) ** 2 * 0.15 + rough;
  };
  return present(
    shapes.toSorted((a, b) => cost(a) - cost(b) || (a[0] ?? 0) - (b[0] ?? 0))[0],
    'every chord has a shape within two octaves',
  );
}
