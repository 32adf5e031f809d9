// How long a heard note was meant: a sounding time becomes a written length and, where the sound stops well before the next
// note, a rest. Players let go of notes early, so a gap counts as a rest only when the note fills little of the time.

import { ticksPerBeat } from './slots.ts';

/** Lengths that one note or two tied ones can show, in twelfths of a beat. */
const plainLengths = [2, 3, 4, 6, 8, 9, 12, 18, 24, 36, 48] as const;
/** A note that sounds for less than this share of the time to the next is followed by a rest. */
const filled = 0.62;
/** Silences shorter than this are breaths and string crossings, in seconds. */
const shortestRest = 0.14;

/**
 * The written length in ticks of a note at `tick` that sounds for `sounding` ticks, when the next begins at `next` (null
 * after the last). `silence` is the gap before the next in seconds.
 */
export function writtenLength(tick: number, sounding: number, next: number | null, silence: number): number {
  const room = next === null ? null : Math.max(1, next - tick);
  if (room !== null && (sounding / room >= filled || silence < shortestRest)) return room;
  let best = { cost: Number.POSITIVE_INFINITY, length: room ?? ticksPerBeat };
  for (const length of plainLengths) {
    if (room !== null && length > room) continue;
    const stretch = Math.log(sounding / (0.86 * length));
    // a rest that starts on a beat or half-beat is what a reader expects
    const end = (tick + length) % ticksPerBeat;
    const cost = (stretch / 0.28) ** 2 / 2 + (end === 0 ? 0 : end === 6 ? 0.4 : 1.6);
    if (cost < best.cost) best = { cost, length };
  }
  return best.length;
}
