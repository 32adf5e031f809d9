// The tenor trombone, computed: each position lowers the harmonic series of B flat by one more semitone.

import type { Instrument } from '../instrument/instrument.ts';
import type { SlideFingering } from './fingering.ts';
import { partialCents, partialSemitones } from './harmonic-series.ts';

/** B flat 1. */
const fundamental = 34;
const highestPartial = 12;
/** Semitones the F attachment adds; with it the slide reaches the two low notes a beginner's arm does not. */
const attachment = 5;
const unused: ReadonlySet<number> = new Set([7, 11]);

/** From the nearest position out; the seventh partial only where the slide can be drawn in to raise it, the eleventh last. */
function rank(fingering: SlideFingering): number {
  const hopeless = fingering.partial === 11 || (fingering.partial === 7 && fingering.position === 1);
  return (hopeless ? 100 : 0) + (fingering.trigger ? 50 : 0) + fingering.position;
}

/**
 * Every position for a sounding key number, the usual first; empty when the instrument has no slide or the note is out of
 * reach. E3 → second, then seventh; with the F attachment C3 is also in first.
 */
export function slideFingerings(instrument: Instrument, midi: number): readonly SlideFingering[] {
  if (instrument.id !== 'trombone') return [];
  const found: SlideFingering[] = [];
  for (let partial = 2; partial <= highestPartial; partial++) {
    const cents = partialCents(partial);
    const position = fundamental + partialSemitones(partial) - midi + 1;
    if (position >= 1 && position <= 7) {
      const raised = unused.has(partial) && position > 1;
      found.push({ kind: 'slide', position, raised, trigger: false, partial, cents });
    }
    // Lower than the third partial only: above it the plain slide is nearer.
    const withTrigger = position - attachment;
    if (partial <= 3 && (withTrigger === 1 || withTrigger === 2)) {
      found.push({ kind: 'slide', position: withTrigger, raised: false, trigger: true, partial, cents });
    }
  }
  return found.toSorted((a, b) => rank(a) - rank(b));
}
