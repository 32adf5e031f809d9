// A lesson's segments always add up to its length. When the length changes, or something is put in on the spot, the
// minutes come from where they hurt least.

import type { SegmentRecord } from '../record/records.ts';

/** The least a segment shrinks to, in minutes. */
const least = 1;

const isOpenTime = (s: SegmentRecord) => s.kind === 'open';
const isFrame = (s: SegmentRecord) => s.kind === 'settlingIn' || s.kind === 'practice';
const isLogged = (s: SegmentRecord) => s.outcome !== null || (s.seconds ?? 0) > 0;

/** Minutes of a segment that something else could have. */
function spareMinutes(segment: SegmentRecord): number {
  if (isLogged(segment))
    // Done sooner than planned: the rest of its minutes is free.
    return segment.outcome === null || segment.seconds === null
      ? 0
      : Math.max(0, segment.minutes - Math.max(least, Math.ceil(segment.seconds / 60)));
  if (isOpenTime(segment)) return segment.minutes;
  return Math.max(0, segment.minutes - least);
}

/** Order in which segments give up minutes: open time, what was done early, then the plan from its end, the frame last. */
function givingOrder(segments: readonly SegmentRecord[]): readonly SegmentRecord[] {
  const rank = (s: SegmentRecord) =>
    isOpenTime(s) ? 0 : isLogged(s) ? 1 : s.kind === 'extension' ? 2 : isFrame(s) ? 4 : 3;
  return segments
    .map((segment, i) => ({ segment, i }))
    .sort((a, b) => rank(a.segment) - rank(b.segment) || b.i - a.i)
    .map((x) => x.segment);
}

/** How many minutes the segments of a lesson could give to something new. */
export function minutesToSpare(segments: readonly SegmentRecord[]): number {
  return segments.filter((s) => !isFrame(s)).reduce((sum, s) => sum + spareMinutes(s), 0);
}

/**
 * The segments laid end to end so that they add up to `minutes`. Too long: minutes are taken in `givingOrder`, and
 * segments with nothing logged or written go when they have none left. Too short: open time, or the last segment,
 * grows. Positions and starts are set anew.
 */
export function fitSegments(segments: readonly SegmentRecord[], minutes: number): readonly SegmentRecord[] {
  const first = segments[0];
  if (first === undefined) return [];
  const minutesById = new Map(segments.map((s) => [s.id, s.minutes]));
  let over = segments.reduce((sum, s) => sum + s.minutes, 0) - minutes;
  const take = (segment: SegmentRecord, most: number) => {
    const had = minutesById.get(segment.id) ?? 0;
    const taken = Math.max(0, Math.min(had, most, over));
    minutesById.set(segment.id, had - taken);
    over -= taken;
  };
  const order = givingOrder(segments);
  if (over > 0) for (const segment of order) take(segment, spareMinutes(segment));
  // Far too long still: whole segments that nothing was said of fall away, the last first; then even the logged ones shrink.
  if (over > 0)
    for (const segment of order) if (!isLogged(segment) && segment.note === '') take(segment, 1e6);
  if (over > 0)
    for (const segment of order) take(segment, Math.max(0, (minutesById.get(segment.id) ?? 0) - least));
  if (over > 0) for (const segment of order) take(segment, 1e6);
  if (over < 0) {
    const growing = segments.findLast(isOpenTime) ?? segments.at(-1) ?? first;
    minutesById.set(growing.id, (minutesById.get(growing.id) ?? 0) - over);
  }
  return layEndToEnd(
    segments
      .map((s) => ({ ...s, minutes: minutesById.get(s.id) ?? s.minutes }))
      .filter((s) => s.minutes > 0 || isLogged(s) || s.note !== ''),
  );
}

/** Sets positions and starts by the order given. */
export function layEndToEnd(segments: readonly SegmentRecord[]): readonly SegmentRecord[] {
  let start = 0;
  return segments.map((segment, position) => {
    const laid = { ...segment, position, start };
    start += segment.minutes;
    return laid;
  });
}
