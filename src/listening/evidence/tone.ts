// Tone inside long notes: how steady pitch and loudness stay, how much of the sound is tone, and vibrato where there is one.

import { midiToFrequency } from '#music';
import type { HeardNote } from '../notes/heard-note.ts';
import { type EvidenceInput, notePassage } from './evidence-input.ts';
import { couldNotHear, figure, type Row } from './figure.ts';
import { finePitch } from './fine-pitch.ts';
import { harmonicShare } from './harmonicity.ts';
import { deviation, meanUncertainty, middle } from './statistics.ts';
import { findVibrato, type Vibrato, withoutTrend } from './vibrato.ts';

export interface LongNote {
  /** Index among the heard notes. */
  readonly note: number;
  readonly seconds: number;
  /** Cents (standard deviation) once drift and vibrato are taken out. */
  readonly pitchUnsteadiness: number;
  /** Farthest the pitch goes from equal temperament in nineteen moments of twenty, cents. */
  readonly farthestCents: number;
  /** dB (standard deviation) once a steady swell or fade is taken out. */
  readonly loudnessUnsteadiness: number;
  /** Share of the energy that is tone, 0 to 1. */
  readonly harmonicShare: number;
  readonly vibrato: Vibrato | null;
}

export type ToneFigure =
  | 'longNotes'
  | 'pitchUnsteadiness'
  | 'loudnessUnsteadiness'
  | 'harmonicShare'
  | 'vibratoRate'
  | 'vibratoExtent'
  | 'vibratoShare';
export type ToneRow = Row<ToneFigure, { readonly longNotes: readonly LongNote[] }>;

/** Notes at least this long are long, in seconds. */
const longNote = 0.5;
/** Left out at the start and the end: the note speaking and being let go. */
const speaking = 0.1;
const lettingGo = 0.06;

/** Listens inside the long notes. */
export function hearTone(input: EvidenceInput): ToneRow {
  const longNotes = input.notes.flatMap((note, i) => {
    const held = { ...note, offset: input.ends[i] ?? note.offset };
    const long = held.offset - held.onset >= longNote ? listenInside(input, held, i) : null;
    return long === null ? [] : [long];
  });
  if (longNotes.length < 2)
    return couldNotHear('Fewer than two notes lasted half a second and kept one pitch.');
  // notes about as long as a long note may or may not count
  const nearly = input.notes.filter(
    (note, i) => Math.abs((input.ends[i] ?? 0) - note.onset - longNote) < 0.1,
  );
  const trembling = longNotes.flatMap((n) => (n.vibrato === null ? [] : [n.vibrato]));
  const over = (read: (note: LongNote) => number, least: number) => {
    const values = longNotes.map(read);
    return [
      middle(values),
      Math.hypot(1.25 * meanUncertainty(deviation(values), values.length), least),
    ] as const;
  };
  const [pitch, pitchError] = over((n) => n.pitchUnsteadiness, 1);
  const [loudness, loudnessError] = over((n) => n.loudnessUnsteadiness, 0.3);
  const [tone, toneError] = over((n) => n.harmonicShare, 0.01);
  const rates = trembling.map((v) => v.rate);
  const extents = trembling.map((v) => v.extent);
  return {
    heard: true,
    figures: {
      longNotes: figure(longNotes.length, Math.max(1, nearly.length), 'count'),
      pitchUnsteadiness: figure(pitch, pitchError, 'cents'),
      loudnessUnsteadiness: figure(loudness, loudnessError, 'db'),
      harmonicShare: figure(tone, toneError, 'share'),
      vibratoShare: figure(trembling.length / longNotes.length, 1 / longNotes.length, 'share'),
      ...(trembling.length < 2
        ? {}
        : {
            vibratoRate: figure(
              middle(rates),
              Math.hypot(meanUncertainty(deviation(rates), rates.length), 0.2),
              'hertz',
            ),
            vibratoExtent: figure(
              middle(extents),
              Math.hypot(meanUncertainty(deviation(extents), extents.length), 3),
              'cents',
            ),
          }),
    },
    details: { longNotes },
    passages: [...longNotes]
      .sort((a, b) => b.pitchUnsteadiness - a.pitchUnsteadiness)
      .slice(0, 4)
      .map((n) =>
        notePassage(
          input,
          n.note,
          n.note,
          n.vibrato === null
            ? `held ${n.seconds.toFixed(1)} s, pitch within ${Math.round(n.farthestCents)} cents`
            : `held ${n.seconds.toFixed(1)} s, vibrato of ${n.vibrato.rate.toFixed(1)} Hz, ${Math.round(n.vibrato.extent)} cents`,
        ),
      ),
  };
}

function listenInside(input: EvidenceInput, note: HeardNote, index: number): LongNote | null {
  const { f0, samples, sampleRate } = input;
  const from = Math.ceil((note.onset + speaking) / f0.hop);
  const to = Math.floor((note.offset - lettingGo) / f0.hop);
  const cents: number[] = [];
  const levels: number[] = [];
  const shares: number[] = [];
  for (let k = from; k <= to; k++) {
    const heard = f0.midi[k] ?? null;
    if (heard === null || Math.abs(heard - note.midi) > 1.5) continue;
    const pitch = finePitch(samples, sampleRate, k * f0.hop, heard) ?? heard;
    cents.push((pitch - note.midi) * 100);
    levels.push(levelAround(samples, sampleRate, k * f0.hop));
    if (k % 4 !== 0) continue;
    const period = sampleRate / midiToFrequency(pitch);
    const share = harmonicShare(samples, Math.round(k * f0.hop * sampleRate - 2 * period), period);
    if (share !== null) shares.push(share);
  }
  // a note that loses its pitch for a tenth of its time is not one long tone
  if (cents.length < 0.9 * (to - from + 1) || cents.length < 20) return null;
  const wave = findVibrato(cents, f0.hop);
  return {
    note: index,
    seconds: note.offset - note.onset,
    pitchUnsteadiness: wave.unsteadiness,
    farthestCents: [...cents].map(Math.abs).sort((a, b) => a - b)[Math.floor(cents.length * 0.95)] ?? 0,
    loudnessUnsteadiness: deviation(withoutTrend(levels)),
    harmonicShare: middle(shares),
    vibrato: wave.vibrato,
  };
}

/** dB of 40 ms around a moment: longer than a period of the lowest note, shorter than a swell. */
function levelAround(samples: Float32Array, sampleRate: number, seconds: number): number {
  const half = Math.round(0.02 * sampleRate);
  const centre = Math.round(seconds * sampleRate);
  let power = 0;
  const from = Math.max(0, centre - half);
  const to = Math.min(samples.length, centre + half);
  for (let i = from; i < to; i++) power += (samples[i] ?? 0) ** 2;
  return 10 * Math.log10(power / Math.max(1, to - from) + 1e-12);
}
