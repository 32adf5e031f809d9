// src/listening as a listener of the bench.

import { hearNotes } from '#listening';
import { midiToFrequency } from '#music';
import type { Listener } from './score-table.ts';

/** Ours. */
export function ourListener(): Listener {
  return {
    name: 'ours',
    hear(samples, sampleRate, context) {
      const { notes, f0 } = hearNotes(samples, sampleRate, { instrument: context.instrument });
      return {
        notes: notes.map((n) => ({
          onset: n.onset,
          offset: n.offset,
          hz: midiToFrequency(n.midi + n.cents / 100),
        })),
        pitchAt: (seconds) => f0.midi[Math.round(seconds / f0.hop)] ?? null,
      };
    },
  };
}
