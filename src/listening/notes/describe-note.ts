// A segment becomes a note: its times, the pitch it settles on, how loud it is and how sure we are.

import { hop } from '../pitch-track/observe-take.ts';
import { quantile } from '../signal/spans.ts';
import type { HeardNote } from './heard-note.ts';
import type { Moments } from './moments.ts';
import { findOnset } from './onset-time.ts';
import type { Segment } from './segment.ts';

/** The note of a segment; `tied` when it follows another without a gap. */
export function describeNote(segment: Segment, tied: boolean, moments: Moments): HeardNote {
  const pitch = settledPitch(segment, moments);
  const midi = Math.round(pitch);
  return {
    onset: findOnset(segment, tied, moments) * hop,
    offset: segment.to * hop,
    midi,
    cents: (pitch - midi) * 100,
    db: quantile(moments.level.slice(segment.from, segment.to), 0.8),
    confidence: weighConfidence(segment, moments),
  };
}

/** The median pitch of the moments near the key, so that neither a scoop nor a wide vibrato pulls it away. */
function settledPitch(segment: Segment, moments: Moments): number {
  const near = moments.midi
    .slice(segment.from, segment.to)
    .filter((pitch) => pitch > 0 && Math.abs(pitch - segment.key) < 1)
    .sort();
  return near[near.length >> 1] ?? segment.key;
}

/** The mean presence of the player over the segment, less for the shortest. */
function weighConfidence(segment: Segment, moments: Moments): number {
  let sum = 0;
  for (let t = segment.from; t < segment.to; t++) sum += moments.presence[t] ?? 0;
  const length = segment.to - segment.from;
  return Math.min(1, (sum / length) * Math.min(1, length / 6));
}
