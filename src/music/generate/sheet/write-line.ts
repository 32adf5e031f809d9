// Writes a line of timed sounds as the bars of a voice: tied over barlines, rests on the beat, tuplets kept whole.

import { assert } from '#core';
import { barLength, type Metre } from '../../rhythm/metre.ts';
import { writeEvent } from '../../rhythm/split-span.ts';
import { barRest, rest } from '../../score/create-score.ts';
import type { ScoreEvent } from '../../score/score.ts';
import { type Slot, ticksToFraction } from '../rhythm/beat-figure.ts';
import { barTicks } from '../rhythm/beat-grid.ts';

/** A slot with what sounds in it; null is silence. The event's own duration and tuplet are those of the slot. */
export interface TimedEvent {
  readonly slot: Slot;
  readonly event: ScoreEvent | null;
}

/** The events of each of `count` bars of one metre. Slots run without gaps from the first bar's start to the last's end. */
export function writeLine(
  metre: Metre,
  count: number,
  line: readonly TimedEvent[],
): readonly (readonly ScoreEvent[])[] {
  const length = barTicks(metre);
  const bars: ScoreEvent[][] = Array.from({ length: count }, () => []);
  let end = 0;
  for (const { slot, event } of joinRests(line, length)) {
    assert(slot.at === end, `slots follow each other: ${slot.at} after ${end}`);
    end = slot.at + slot.length;
    const duration = ticksToFraction(slot.length);
    const bar = Math.floor(slot.at / length);
    const whole: ScoreEvent = { ...(event ?? rest(duration)), duration, tuplet: slot.tuplet };
    if (slot.tuplet !== null) {
      bars[bar]?.push(whole);
      continue;
    }
    const pieces = writeEvent(metre, ticksToFraction(slot.at - bar * length), whole);
    for (const [i, events] of pieces.entries()) bars[bar + i]?.push(...events);
  }
  assert(end === count * length, `the line fills its ${count} bars`);
  return bars.map((events) =>
    events.length === 1 && events[0]?.kind === 'rest' ? [barRest(barLength(metre))] : events,
  );
}

/** Neighbouring rests of one bar as one, so that they are written on the beat. */
function joinRests(line: readonly TimedEvent[], length: number): readonly TimedEvent[] {
  const joined: TimedEvent[] = [];
  for (const timed of line) {
    const last = joined.at(-1);
    const { slot } = timed;
    const isPlainRest = (t: TimedEvent) => t.event === null && t.slot.tuplet === null;
    if (
      last !== undefined &&
      isPlainRest(last) &&
      isPlainRest(timed) &&
      Math.floor(last.slot.at / length) === Math.floor(slot.at / length)
    ) {
      joined.pop();
      joined.push({ slot: { ...last.slot, length: last.slot.length + slot.length }, event: null });
    } else joined.push(timed);
  }
  return joined;
}
