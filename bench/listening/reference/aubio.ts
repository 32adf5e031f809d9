// aubio (GPL-3): `aubionotes` and `aubiopitch` of Debian's aubio-tools.

import { spawnSync } from 'node:child_process';
import type { Listener } from '../score-table.ts';
import { midiToFrequency } from '../score-table.ts';

export interface AubioSettings {
  readonly silence: number;
  readonly buffer: number;
  readonly drop: number;
  /** Seconds by which its onsets are moved earlier: it tells a note once its pitch has settled. */
  readonly early: number;
}

// The best of 18 settings of buffer, silence and time on the development takes. Its times come late by its buffers: they are
// moved by what serves it best. (`-O` and `-t` change nothing in aubionotes 0.4.9.)
const best: AubioSettings = { silence: -50, buffer: 512, drop: 10, early: 0.045 };

/** Null when aubio is not installed. */
export function aubio(settings: AubioSettings = best): Listener | null {
  if (spawnSync('aubionotes', ['-h']).error !== undefined) return null;
  return {
    name: 'aubio',
    hear(_samples, _rate, _context, path) {
      const { silence, buffer, drop, early } = settings;
      const words = ['-s', String(silence), '-B', String(buffer)];
      const rows = (command: string, more: readonly string[]) =>
        spawnSync(command, ['-i', path, ...more], { encoding: 'utf8', maxBuffer: 1e8 })
          .stdout.split('\n')
          .map((line) => line.trim().split(/\s+/).map(Number));
      const notes = rows('aubionotes', [...words, '-H', '256', '-d', String(drop)])
        .filter((row) => row.length === 3)
        .map(([midi = 0, start = 0, end = 0]) => ({
          onset: start - early,
          offset: end,
          hz: midiToFrequency(midi),
        }));
      const track = rows('aubiopitch', ['-p', 'yinfft', '-B', '2048', '-H', '256', '-u', 'midi', '-s', '-60'])
        .filter((row) => row.length === 2)
        .map(([at = 0, midi = 0]) => ({ at, midi: midi > 0 ? midi : null }));
      const hop = track.length > 1 ? ((track.at(-1)?.at ?? 0) - (track[0]?.at ?? 0)) / (track.length - 1) : 1;
      // aubiopitch stamps a frame where its last hop begins: its window lies half a buffer earlier
      return { notes, pitchAt: (s) => track[Math.round((s + 1024 / _rate) / hop)]?.midi ?? null };
    },
  };
}
