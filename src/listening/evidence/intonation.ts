// Intonation: where the instrument is tuned, how far single notes stray from that, and whether a register does.

import { type EvidenceInput, notePassage } from './evidence-input.ts';
import { couldNotHear, figure, type Row } from './figure.ts';
import { mean, meanUncertainty, spreadUncertainty, steadyMean } from './statistics.ts';

export type IntonationFigure = 'tuning' | 'spread' | 'low' | 'middle' | 'high';
export type IntonationRow = Row<
  IntonationFigure,
  {
    /** Cents from the take's own tuning, by note. */
    readonly centsByNote: readonly number[];
    /** MIDI numbers between the registers. */
    readonly registers: { readonly low: number; readonly high: number };
  }
>;

/** A take's pitch is heard with about this error in cents, one note's with that; from the take set. */
const hearingError = 3;
const noteError = 2;
/** Shorter notes settle on no pitch that could be called in or out of tune, in seconds. */
const shortestNote = 0.1;

/** Measures intonation against equal temperament at A4 = 440 Hz (ISO 16). */
export function hearIntonation(input: EvidenceInput): IntonationRow {
  const usable = input.notes
    .map((note, i) => ({ note, i }))
    .filter(({ note }) => note.offset - note.onset >= shortestNote && note.confidence > 0.3);
  if (usable.length < 6)
    return couldNotHear('Fewer than six notes were long and clear enough to hear their tuning.');
  const all = steadyMean(usable.map(({ note }) => note.cents));
  const midis = usable.map(({ note }) => note.midi);
  const [lowest, highest] = [Math.min(...midis), Math.max(...midis)];
  const low = lowest + (highest - lowest) / 3;
  const high = highest - (highest - lowest) / 3;
  const register = (inside: (midi: number) => boolean) => {
    const cents = usable.filter(({ note }) => inside(note.midi)).map(({ note }) => note.cents - all.mean);
    return cents.length < 3
      ? null
      : figure(mean(cents), Math.hypot(meanUncertainty(all.spread, cents.length), hearingError), 'cents');
  };
  const parts = {
    low: register((m) => m < low),
    middle: register((m) => m >= low && m <= high),
    high: register((m) => m > high),
  };
  const spread = Math.sqrt(Math.max(0, all.spread ** 2 - noteError ** 2));
  const worst = usable
    .filter(({ note }) => Math.abs(note.cents - all.mean) > Math.max(12, 2 * all.spread))
    .sort((a, b) => Math.abs(b.note.cents - all.mean) - Math.abs(a.note.cents - all.mean))
    .slice(0, 6)
    .sort((a, b) => a.i - b.i);
  return {
    heard: true,
    figures: {
      tuning: figure(all.mean, Math.hypot(meanUncertainty(all.spread, all.count), hearingError), 'cents'),
      spread: figure(spread, Math.hypot(spreadUncertainty(all.spread, all.count), hearingError / 2), 'cents'),
      ...(parts.low === null ? {} : { low: parts.low }),
      ...(parts.middle === null ? {} : { middle: parts.middle }),
      ...(parts.high === null ? {} : { high: parts.high }),
    },
    details: { centsByNote: input.notes.map((n) => n.cents - all.mean), registers: { low, high } },
    passages: worst.map(({ note, i }) => {
      const cents = Math.round(note.cents - all.mean);
      return notePassage(
        input,
        i,
        i,
        `${Math.abs(cents)} cents ${cents > 0 ? 'above' : 'below'} your own tuning`,
      );
    }),
  };
}
