// src/listening as a listener of the bench.

import * as listening from '#listening';
import { type Listener, midiToHz } from './score-table.ts';

interface HeardByUs {
  readonly notes: readonly {
    readonly onset: number;
    readonly offset: number;
    readonly midi: number;
    readonly cents: number;
  }[];
  readonly f0: { readonly hop: number; readonly midi: ArrayLike<number | null> };
}
type Hear = (samples: Float32Array, sampleRate: number, context: unknown) => HeardByUs;

/** Null until #listening hears notes. */
export function ourListener(): Listener | null {
  const hear = (listening as { hearNotes?: Hear }).hearNotes;
  if (hear === undefined) return null;
  return {
    name: 'ours',
    hear(samples, sampleRate, context) {
      const { notes, f0 } = hear(samples, sampleRate, context);
      return {
        notes: notes.map((n) => ({ onset: n.onset, offset: n.offset, hz: midiToHz(n.midi + n.cents / 100) })),
        pitchAt(seconds) {
          const value = f0.midi[Math.round(seconds / f0.hop)];
          return value === undefined || value === null || Number.isNaN(value) ? null : value;
        },
      };
    },
  };
}
