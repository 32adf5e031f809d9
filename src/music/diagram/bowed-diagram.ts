// Where a finger stops a string on a fingerboard without frets, in true proportion, seen as the player does: lowest string
// left, nut up.

import type { StringFingering } from '../fingering/fingering.ts';
import { type Drawing, disc, line, type Mark, ring, text } from './drawing.ts';

const gap = 12;
const left = 9;
const top = 14;
const height = 82;
/** Whole and half tones of a major scale from the open string, where beginners' tapes lie. */
const tapes = [2, 4, 5, 7];

/** Share of the string's length behind a stop: pitch rises by the twelfth root of two. */
function lengthBehind(stop: number): number {
  return 1 - 2 ** (-stop / 12);
}

const romans: Readonly<Record<string, string>> = {
  '0.5': '½',
  '1': 'I',
  '2': 'II',
  '2.5': 'II½',
  '3': 'III',
  '3.5': 'III½',
  '4': 'IV',
  '5': 'V',
  '5.5': 'V½',
  '6': 'VI',
  '6.5': 'VI½',
  '7': 'VII',
};

/** Position as players write it: half position ½, third III; beyond the seventh in figures. */
export function formatPosition(position: number): string {
  return romans[String(position)] ?? String(position);
}

/** A dot with the finger on its string; an open string has a ring above the nut. `names` are the open strings, lowest first. */
export function bowedDiagram(title: string, fingering: StringFingering, names: readonly string[]): Drawing {
  const { string, stop, finger, position } = fingering;
  const shown = Math.max(8, stop + 1.5);
  const yOf = (semitones: number) => top + (height * lengthBehind(semitones)) / lengthBehind(shown);
  const width = (names.length - 1) * gap;
  const marks: Mark[] = [line(left, top, left + width, top, 3)];
  names.forEach((name, i) => {
    const x = left + i * gap;
    marks.push(line(x, top, x, top + height, 1.5 - 0.25 * i));
    marks.push(text(x, top + height + 8, 9, name, { bold: names.length - i === string }));
  });
  for (const tape of tapes) {
    const y = yOf(tape);
    for (let x = left - 3; x < left + width + 3; x += 4) marks.push(line(x, y, x + 1.2, y, 0.7));
  }
  const x = left + (names.length - string) * gap;
  if (finger === 0) {
    marks.push(ring(x, top - 7.5, 3.8, 1.4));
  } else {
    marks.push(disc(x, yOf(stop), 6));
    marks.push(
      text(x, yOf(stop), 9.4, finger === 'thumb' ? 'T' : String(finger), { ink: 'paper', bold: true }),
    );
  }
  const isFirst = position === 1 || finger === 0;
  if (!isFirst) marks.push(text(left + width + 15, top + 8, 10, formatPosition(position), { bold: true }));
  const name = names[names.length - string] ?? '';
  return {
    width: left + width + (isFirst ? 9 : 29),
    height: top + height + 15,
    title,
    description:
      finger === 0
        ? `Open ${name} string`
        : `${name} string, ${finger === 'thumb' ? 'thumb' : `finger ${finger}`}, position ${formatPosition(position)}`,
    marks,
  };
}
