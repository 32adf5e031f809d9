// When a player lets a note go. The sound rings on in the instrument and the room; what tells a rest from a long note is
// when it leaves the course it was on, steady for breath and bow, falling for a plucked or struck string.

import type { HeardNote } from './heard-note.ts';

const hop = 0.01;
/** dB below its own course at which a note has been let go. */
const drop = 7;
/** Seconds of the note's start that say nothing of its course. */
const speaking = 0.05;
/** No string rings down faster than this, dB a second. */
const steepest = -40;

/** A note is called over this long after it was let go, in seconds: what rings on belongs to the room. */
const ringing = 0.04;

/** The same notes, ended where they were let go instead of where room and string have fallen silent. */
export function endNotes(
  samples: Float32Array,
  sampleRate: number,
  notes: readonly HeardNote[],
): readonly HeardNote[] {
  const ends = findLetGo(samples, sampleRate, notes);
  return notes.map((note, i) => ({
    ...note,
    offset: Math.min(note.offset, (ends[i] ?? note.offset) + ringing),
  }));
}

/** For each note the moment, in seconds, it was let go: between its onset and its heard end. */
export function findLetGo(
  samples: Float32Array,
  sampleRate: number,
  notes: readonly HeardNote[],
): readonly number[] {
  return notes.map((note) => {
    const from = note.onset + Math.min(speaking, (note.offset - note.onset) / 4);
    const levels: number[] = [];
    for (let t = from; t <= note.offset; t += hop) levels.push(levelAt(samples, sampleRate, t));
    if (levels.length < 6) return note.offset;
    const early = levels.slice(0, Math.max(4, Math.floor(levels.length * 0.5)));
    const third = Math.max(1, Math.floor(early.length / 3));
    const slope = Math.min(
      0,
      Math.max(
        steepest * hop,
        (middleOf(early.slice(-third)) - middleOf(early.slice(0, third))) / (early.length - third),
      ),
    );
    const centre = (early.length - 1) / 2;
    const course = middleOf(early);
    let last = levels.length - 1;
    while (last > 2 && (levels[last] ?? 0) < course + slope * (last - centre) - drop) last--;
    return Math.min(note.offset, from + (last + 1) * hop);
  });
}

function levelAt(samples: Float32Array, sampleRate: number, seconds: number): number {
  const half = Math.round(0.01 * sampleRate);
  const centre = Math.round(seconds * sampleRate);
  const to = Math.min(samples.length, centre + half);
  let power = 0;
  for (let i = Math.max(0, centre - half); i < to; i++) power += (samples[i] ?? 0) ** 2;
  return 10 * Math.log10(power / (2 * half) + 1e-12);
}

function middleOf(list: readonly number[]): number {
  return [...list].sort((a, b) => a - b)[list.length >> 1] ?? 0;
}
