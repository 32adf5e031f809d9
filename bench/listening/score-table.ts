// Scores any listener on takes, group by group.

import { readFileSync } from 'node:fs';
import { midiToFrequency } from '#music';
import { rawPitch, type ScoredNote, scoreNotes } from './match-notes.ts';
import type { Take } from './read-takes.ts';
import type { TakeContext, TruthNote } from './take-set/make-take.ts';
import { groups } from './take-set/performance.ts';

/** For the reference programs, whose folder is a package of its own and does not know the door. */
export { frequencyToMidi, midiToFrequency } from '#music';

export interface Heard {
  readonly notes: readonly ScoredNote[];
  /** MIDI number at a time, or null; absent when the program gives no pitch track. */
  readonly pitchAt?: (seconds: number) => number | null;
}

export interface Listener {
  readonly name: string;
  hear(samples: Float32Array, sampleRate: number, context: TakeContext, path: string): Promise<Heard> | Heard;
}

export interface GroupScore {
  readonly group: string;
  readonly takes: number;
  /** Means over the takes. */
  readonly f1: number;
  readonly f1Offsets: number;
  readonly precision: number;
  readonly recall: number;
  /** Mean over the takes; null without a pitch track. */
  readonly rawPitch: number | null;
}

export interface ListenerScore {
  readonly name: string;
  readonly groups: readonly GroupScore[];
  readonly overall: GroupScore;
  /** Seconds of sound per second of work. */
  readonly speed: number;
}

/** A true note as the scorer reads it. */
export const truthToScored = (note: TruthNote): ScoredNote => ({
  onset: note.onset,
  offset: note.offset,
  hz: midiToFrequency(note.midi + note.cents / 100),
});

/** The samples of a take written by write-wav.ts. */
export function readTakeSound(path: string): Float32Array {
  const bytes = readFileSync(path);
  const out = new Float32Array((bytes.length - 44) / 2);
  for (let i = 0; i < out.length; i++) out[i] = bytes.readInt16LE(44 + 2 * i) / 32768;
  return out;
}

/** Runs one listener over takes; `tell` hears of every take. */
export async function scoreListener(
  listener: Listener,
  takes: readonly Take[],
  tell: (take: Take, f1: number, heard: Heard, missed: readonly TruthNote[]) => void = () => {},
): Promise<ListenerScore> {
  const rows: {
    group: string;
    f1: number;
    f1Offsets: number;
    precision: number;
    recall: number;
    raw: number | null;
  }[] = [];
  let sound = 0;
  let work = 0;
  for (const take of takes) {
    const { truth } = take;
    const samples = readTakeSound(take.path);
    const before = performance.now();
    const heard = await listener.hear(samples, truth.sampleRate, truth.context, take.path);
    work += (performance.now() - before) / 1000;
    sound += truth.seconds;
    const real = truth.truth.notes.map(truthToScored);
    const plain = scoreNotes(real, heard.notes, { offsets: false });
    const full = scoreNotes(real, heard.notes, { offsets: true });
    const raw = heard.pitchAt && rawPitch(truth.truth.f0.midi, truth.truth.f0.hop, heard.pitchAt);
    rows.push({
      group: truth.group,
      f1: plain.f1,
      f1Offsets: full.f1,
      precision: plain.precision,
      recall: plain.recall,
      raw: raw === undefined ? null : raw.hits / Math.max(1, raw.frames),
    });
    const found = new Set(plain.pairs.map(([i]) => i));
    tell(
      take,
      plain.f1,
      heard,
      truth.truth.notes.filter((_, i) => !found.has(i)),
    );
  }
  const summary = (group: string, list: typeof rows): GroupScore => {
    const mean = (key: 'f1' | 'f1Offsets' | 'precision' | 'recall') =>
      list.reduce((a, row) => a + row[key], 0) / Math.max(1, list.length);
    const raws = list.flatMap((row) => (row.raw === null ? [] : [row.raw]));
    return {
      group,
      takes: list.length,
      f1: mean('f1'),
      f1Offsets: mean('f1Offsets'),
      precision: mean('precision'),
      recall: mean('recall'),
      rawPitch: raws.length === 0 ? null : raws.reduce((a, b) => a + b, 0) / raws.length,
    };
  };
  return {
    name: listener.name,
    groups: groups
      .map((g) =>
        summary(
          g,
          rows.filter((row) => row.group === g),
        ),
      )
      .filter((g) => g.takes > 0),
    overall: summary('overall', rows),
    speed: sound / Math.max(1e-9, work),
  };
}

/** One listener as lines of text. */
export function formatScore(score: ListenerScore): string {
  const line = (g: GroupScore) =>
    `  ${g.group.padEnd(9)} ${String(g.takes).padStart(3)} takes   F1 ${g.f1.toFixed(3)}   P ${g.precision.toFixed(3)}  R ${g.recall.toFixed(3)}   with offsets ${g.f1Offsets.toFixed(3)}   raw pitch ${g.rawPitch === null ? '    -' : g.rawPitch.toFixed(3)}`;
  return [
    `${score.name}: ${score.speed.toFixed(0)} × real time`,
    ...score.groups.map(line),
    line(score.overall),
  ].join('\n');
}
