// What is said of a segment, always in full: its seconds, its outcome and how much of it was done go out together, so
// that a clock that ticks on never takes back what was said a moment before.

import type { CommandOf, LessonSegmentView, OutcomeView } from '#contract';

export interface SegmentSaid {
  readonly seconds: number | null;
  readonly outcome: OutcomeView | null;
  /** 0..1 when partly and said by hand; null to reckon it from the clock. */
  readonly share: number | null;
}

/** What the studio has of a segment; the share is not told by it. */
export const saidOf = (segment: Pick<LessonSegmentView, 'seconds' | 'outcome'>): SegmentSaid => ({
  seconds: segment.seconds,
  outcome: segment.outcome,
  share: null,
});

/** What is now said, and whether it says anything new. */
export function sayMore(
  before: SegmentSaid,
  more: Partial<SegmentSaid>,
): { readonly said: SegmentSaid; readonly isNew: boolean } {
  const merged = { ...before, ...more, seconds: more.seconds ?? before.seconds };
  const said = merged.outcome === 'partly' ? merged : { ...merged, share: null };
  const isNew =
    said.seconds !== before.seconds || said.outcome !== before.outcome || said.share !== before.share;
  return { said, isNew };
}

export const logCommand = (
  segment: LessonSegmentView['id'],
  said: SegmentSaid,
): CommandOf<'segment.log'> => ({
  type: 'segment.log',
  segment,
  ...said,
});

/** The shares this browser remembers, by segment id; anything unreadable is none. */
export function readShares(text: string | null): ReadonlyMap<string, number> {
  try {
    const found: unknown = JSON.parse(text ?? '{}');
    if (typeof found !== 'object' || found === null) return new Map();
    return new Map(
      Object.entries(found).filter(
        (entry): entry is [string, number] => typeof entry[1] === 'number' && entry[1] >= 0 && entry[1] <= 1,
      ),
    );
  } catch {
    return new Map();
  }
}
