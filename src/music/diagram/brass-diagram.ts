// Valves down and up, and how far out the slide is.

import type { SlideFingering, ValveFingering } from '../fingering/fingering.ts';
import { type Drawing, disc, line, type Mark, ring, text } from './drawing.ts';

const radius = 9.5;
const gap = 23;

/** Valves from the player's left, pressed ones filled; the thumb valve of a horn only where it is pressed. */
export function valveDiagram(title: string, fingering: ValveFingering, valveCount: 3 | 4): Drawing {
  const { valves, thumb } = fingering;
  const marks: Mark[] = [];
  let x = radius + 1.5;
  const y = radius + 1.5;
  if (thumb) {
    marks.push({
      shape: 'box',
      x,
      y,
      width: 2 * radius,
      height: 13,
      corner: 6.5,
      fill: 'ink',
      outline: 0,
    });
    marks.push(text(x, y, 10, 'T', { ink: 'paper', bold: true }));
    x += gap + 3;
  }
  for (let valve = 1; valve <= valveCount; valve++) {
    const pressed = valves.includes(valve);
    marks.push(pressed ? disc(x, y, radius + 0.7) : ring(x, y, radius, 1.4));
    if (pressed) marks.push(text(x, y, 11.5, String(valve), { ink: 'paper', bold: true }));
    x += gap;
  }
  const words = valves.length === 0 ? 'Open, no valve' : `Valve ${valves.join(' and ')}`;
  return {
    width: x - gap + radius + 1.5,
    height: 2 * y,
    title,
    description: thumb ? `Thumb valve. ${words}` : words,
    marks,
  };
}

const firstX = 16;
const positionGap = 13;

/** The slide's bow over a ruler of seven positions. A raised position is drawn a little short of its mark. */
export function slideDiagram(title: string, fingering: SlideFingering): Drawing {
  const { position, raised, trigger } = fingering;
  const lastX = firstX + 6 * positionGap;
  // With the F attachment down the positions lie a third further apart.
  const steps = (position - 1) * (trigger ? 4 / 3 : 1) - (raised ? 0.3 : 0);
  const x = firstX + steps * positionGap;
  const upper = 5;
  const lower = 15;
  const marks: Mark[] = [
    line(3, upper, x, upper, 1.6),
    line(3, lower, x, lower, 1.6),
    line(x, upper, x + 3.5, upper + 2.5, 1.6),
    line(x + 3.5, upper + 2.5, x + 3.5, lower - 2.5, 1.6),
    line(x + 3.5, lower - 2.5, x, lower, 1.6),
    line(7, upper, 7, lower, 1.6),
  ];
  for (let p = 1; p <= 7; p++) {
    const at = firstX + (p - 1) * positionGap;
    if (p === position) {
      marks.push(disc(at, 28, 6.6), text(at, 28, 10, String(p), { ink: 'paper', bold: true }));
      if (raised)
        marks.push(
          line(at - 1.5, 19.5, at - 6, 19.5, 1.3),
          line(at - 6, 19.5, at - 3.5, 17.6, 1.3),
          line(at - 6, 19.5, at - 3.5, 21.4, 1.3),
        );
    } else {
      marks.push(line(at, 26, at, 30, 1.2));
    }
  }
  if (trigger) marks.push(text(lastX + 3, 10, 12, 'F', { bold: true }));
  const words = `${raised ? 'A little short of position' : 'Position'} ${position}`;
  return {
    width: lastX + 10,
    height: 36,
    title,
    description: trigger ? `${words} with the F attachment` : words,
    marks,
  };
}
