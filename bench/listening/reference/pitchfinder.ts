// pitchfinder (GPL-3): its YIN, one frame at a time; the notes are parted by segment-pitch.ts.

import type { Listener } from '../score-table.ts';
import { frequencyToMidi } from '../score-table.ts';
import { findReference, requireReference } from './load-reference.ts';
import {
  levelOf,
  type PitchFrame,
  pitchOfTrack,
  type SegmentRule,
  segmentPitch,
  usualRule,
} from './segment-pitch.ts';

interface Pitchfinder {
  YIN(options: { sampleRate: number; threshold: number }): (frame: Float32Array) => number | null;
}

/** Null when pitchfinder is not installed. */
export function pitchfinder(threshold = 0.1, rule: SegmentRule = usualRule, floor = -30): Listener | null {
  if (findReference('pitchfinder') === null) return null;
  const { YIN } = requireReference<Pitchfinder>('pitchfinder');
  const size = 2048;
  return {
    name: 'pitchfinder + segmenter',
    hear(quiet, rate) {
      let peak = 1e-9;
      for (const x of quiet) peak = Math.max(peak, Math.abs(x));
      const samples = quiet.map((x) => (0.5 * x) / peak); // its YIN does not listen to soft sounds
      const detect = YIN({ sampleRate: rate, threshold });
      const hop = 512; // its YIN is quadratic in the frame: a finer hop would take longer than the take
      const frames: PitchFrame[] = [];
      let loudest = -200;
      for (let at = 0; at + size <= samples.length; at += hop) {
        const frame = samples.subarray(at, at + size);
        const hz = detect(frame);
        const level = levelOf(frame.subarray(size / 2 - hop, size / 2 + hop));
        loudest = Math.max(loudest, level);
        frames.push({
          midi: hz !== null && hz > 35 && hz < 2500 ? frequencyToMidi(hz) : null,
          level,
        });
      }
      const heard = frames.map((f) => (f.level < loudest + floor ? { ...f, midi: null } : f));
      const first = size / 4 / rate; // YIN compares the first half of the frame with what follows
      return {
        notes: segmentPitch(heard, hop / rate, first, rule),
        pitchAt: pitchOfTrack(heard, hop / rate, first),
      };
    },
  };
}
