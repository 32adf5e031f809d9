// How short and how long one go at an activity may be.

export interface ChunkLimits {
  readonly minChunk: number;
  readonly maxChunk: number;
}

/**
 * The longest useful go at one thing, in minutes: about the age in years, from 5 to 20; 20 when the age is unknown. In
 * a course of one strand, where there may be nothing to change to, half as long again, still at most 20. Common
 * practice, no source.
 */
export function longestGo(age: number | null, strandCount: number): number {
  const go = age === null ? 20 : Math.max(5, Math.min(20, Math.round(age)));
  return strandCount > 1 ? go : Math.min(20, Math.ceil(go * 1.5));
}

/** Nothing this short is split where one go can hold it. Common practice, no source. */
const wholeUpTo = 10;

/**
 * Limits with which `demand` whole minutes can be shared out without a rest too short to use. The shortest useful minutes
 * are kept and the longest go gives way, as far as `room` (the most that one lesson can hold); only beyond that does
 * the shortest give way. What takes ten minutes or less stays whole.
 *
 * `fitChunks(13, 7, 10, 30)` → `{ minChunk: 7, maxChunk: 13 }`: 7 + 6 would leave less than is useful.
 */
export function fitChunks(demand: number, shortest: number, longest: number, room: number): ChunkLimits {
  if (demand <= 0) return { minChunk: 0, maxChunk: 0 };
  if (demand <= Math.min(wholeUpTo, room, Math.max(longest, shortest)))
    return { minChunk: demand, maxChunk: demand };
  let min = Math.max(1, Math.min(shortest, demand, room));
  const max = Math.min(demand, Math.max(1, Math.min(room, Math.max(longest, min))));
  const most = Math.floor(demand / min);
  if (Math.ceil(demand / max) <= most) return { minChunk: min, maxChunk: max };
  const longer = Math.ceil(demand / most);
  if (longer <= room) return { minChunk: min, maxChunk: longer };
  min = Math.floor(demand / Math.ceil(demand / max));
  return { minChunk: min, maxChunk: max };
}
