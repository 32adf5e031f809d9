// src/listening as a listener of the bench.

import { hearNotes, parseTakeContext } from '#listening';
import { midiToFrequency } from '#music';
import type { Listener } from './score-table.ts';

/** Ours, with what the take's context tells it, as in the product. */
export function ourListener(): Listener {
  return {
    name: 'ours',
    hear(samples, sampleRate, context) {
      const known = parseTakeContext(context);
      if (!known.ok) throw new Error(known.error.message);
      const { notes, f0 } = hearNotes(samples, sampleRate, known.value);
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
