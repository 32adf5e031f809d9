// How far the evidence of a heard take lies from the evidence of the same take's truth, figure by figure: median and 90th
// percentile of the error, how often a figure was given at all, and how often the truth lay within the stated uncertainty.

import {
  type Evidence,
  type EvidenceInput,
  evidenceNames,
  type Figure,
  figuresOf,
  findLetGo,
  gatherEvidence,
  listen,
  parseTakeContext,
  type TakeContext,
} from '#listening';
import { fraction } from '#music';
import type { Take } from './read-takes.ts';
import { readTakeSound } from './score-table.ts';
import type { TakeTruth } from './take-set/make-take.ts';
import { crotchetToSeconds, swung } from './take-set/performance.ts';

interface Tally {
  readonly unit: Figure['unit'];
  readonly errors: number[];
  /** Takes whose truth has the figure. */
  expected: number;
  within: number;
}

/** Prints the table. */
export function runEvidenceBench(takes: readonly Take[]): void {
  const tallies = new Map<string, Tally>();
  for (const { path, truth } of takes) {
    const context = parseTakeContext(truth.context);
    if (!context.ok) throw new Error(context.error.message);
    const samples = readTakeSound(path);
    const heard = listen(samples, truth.sampleRate, context.value);
    const real = trueEvidence(truth, context.value, samples, heard.alignment?.grid.isGiven ?? false);
    for (const row of evidenceNames) {
      const [told, known] = [figuresOf(heard.evidence, row), figuresOf(real, row)];
      for (const [name, figure] of Object.entries(known)) {
        if (figure === undefined) continue;
        const key = `${row}.${name}`;
        const tally = tallies.get(key) ?? { unit: figure.unit, errors: [], expected: 0, within: 0 };
        tallies.set(key, tally);
        tally.expected++;
        const given = told[name];
        if (given === undefined) continue;
        const error = Math.abs(given.value - figure.value);
        tally.errors.push(error);
        if (error <= given.uncertainty + 1e-9) tally.within++;
      }
    }
  }
  console.log(`\nError of the evidence against truth in ${takes.length} takes`);
  console.log(`${'figure'.padEnd(40)}   given   median      p90   within its uncertainty`);
  for (const [key, { unit, errors, expected, within }] of tallies) {
    const sorted = errors.sort((a, b) => a - b);
    const at = (q: number) =>
      (sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))] ?? 0).toFixed(3);
    console.log(
      `${`${key} (${unit})`.padEnd(40)} ${`${errors.length}/${expected}`.padStart(7)} ${at(0.5).padStart(8)} ${at(0.9).padStart(8)} ${`${Math.round((100 * within) / Math.max(1, errors.length))} %`.padStart(8)}`,
    );
  }
}

/** The evidence a perfect ear would give: the same rows, from the notes as they were made. */
function trueEvidence(
  truth: TakeTruth,
  context: TakeContext,
  samples: Float32Array,
  isGiven: boolean,
): Evidence {
  const { notes, f0, offset, tempo, swing, drift, bars } = truth.truth;
  const total = bars * truth.context.metre[0];
  const place = (x: number) => offset + crotchetToSeconds(x, tempo, drift, total);
  const anchors = Array.from({ length: bars + 1 }, (_, bar) => {
    const beat = bar * truth.context.metre[0];
    return { beat, seconds: place(beat) };
  });
  const whole = notes.map((note) => ({ ...note, confidence: 1 }));
  const input: EvidenceInput = {
    samples,
    sampleRate: truth.sampleRate,
    context,
    notes: whole,
    ends: findLetGo(samples, truth.sampleRate, whole),
    f0,
    alignment: {
      grid: { offset, tempo, swing, drift: (drift - 1) * 100, isGiven, anchors },
      rhythm: notes.map((note, i) => ({
        note: i,
        tick: Math.round(note.at * 12),
        ticks: Math.round(note.length * 12),
        at: fraction(Math.round(note.at * 12), 48),
        length: fraction(Math.round(note.length * 12), 48),
        late: note.onset - place(swung(note.at, swing)),
        isDoubtful: false,
      })),
      fit: 1,
    },
  };
  return gatherEvidence(input, []);
}
