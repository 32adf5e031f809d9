// An arrangement as a Standard MIDI File: one track for tempo and metre, one for each part.

import { metreEvent, midiFile, type TrackEvent, tempoEvent, textEvent } from '../midi/midi-file.ts';
import type { Arrangement } from './arrangement.ts';

/** The bytes; the same arrangement gives the same. */
export function arrangementToMidi(arrangement: Arrangement, title: string): Uint8Array {
  const { metre, ticksPerCrotchet, tempos, bars, end } = arrangement;
  const clocks = metre.unit === 8 ? 36 : 24;
  const conductor: TrackEvent[] = [
    { tick: 0, order: 0, bytes: textEvent(0x03, title) },
    { tick: 0, order: 1, bytes: metreEvent(metre.beats, metre.unit, clocks) },
    ...tempos.map(({ tick, perMinute }) => ({ tick, order: 2, bytes: tempoEvent(perMinute) })),
    ...bars.flatMap(({ tick, section }) =>
      section === null ? [] : [{ tick, order: 3, bytes: textEvent(0x06, section) }],
    ),
    { tick: end, order: 9, bytes: textEvent(0x06, 'end') },
  ];
  const tracks = arrangement.parts.map(({ name, channel, program, notes }): readonly TrackEvent[] => [
    { tick: 0, order: 0, bytes: textEvent(0x03, name) },
    { tick: 0, order: 1, bytes: [0xc0 | channel, program] },
    ...notes.flatMap(({ tick, ticks, midi, velocity }) => [
      { tick, order: 3, bytes: [0x90 | channel, midi, velocity] },
      { tick: tick + ticks, order: 2, bytes: [0x80 | channel, midi, 0] },
    ]),
  ]);
  return midiFile(ticksPerCrotchet, [conductor, ...tracks]);
}
