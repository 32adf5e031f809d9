// pitchy (MIT): McLeod's pitch of one frame at a time; the notes are parted by segment-pitch.ts.

import type { Listener } from '../score-table.ts';
import { frequencyToMidi } from '../score-table.ts';
import { findReference, importReference } from './load-reference.ts';
import {
  levelOf,
  type PitchFrame,
  pitchOfTrack,
  type SegmentRule,
  segmentPitch,
  usualRule,
} from './segment-pitch.ts';

interface Pitchy {
  readonly PitchDetector: {
    forFloat32Array(size: number): {
      findPitch(frame: Float32Array, rate: number): [hz: number, clarity: number];
    };
  };
}

/** Null when pitchy is not installed. */
export async function pitchy(
  clarity = 0.9,
  rule: SegmentRule = usualRule,
  floor = -30,
): Promise<Listener | null> {
  const path = findReference('pitchy');
  if (path === null) return null;
  const { PitchDetector } = await importReference<Pitchy>(path);
  const size = 2048;
  const detector = PitchDetector.forFloat32Array(size);
  return {
    name: 'pitchy + segmenter',
    hear(samples, rate) {
      const hop = 256;
      const frames: PitchFrame[] = [];
      let loudest = -200;
      for (let at = 0; at + size <= samples.length; at += hop) {
        const frame = samples.subarray(at, at + size);
        const [hz, sure] = detector.findPitch(frame, rate);
        const level = levelOf(frame.subarray(size / 2 - hop, size / 2 + hop));
        loudest = Math.max(loudest, level);
        const isVoiced = sure >= clarity && hz > 35 && hz < 2500;
        frames.push({ midi: isVoiced ? frequencyToMidi(hz) : null, level });
      }
      const heard = frames.map((f) => (f.level < loudest + floor ? { ...f, midi: null } : f));
      const first = size / 2 / rate;
      return {
        notes: segmentPitch(heard, hop / rate, first, rule),
        pitchAt: pitchOfTrack(heard, hop / rate, first),
      };
    },
  };
}
