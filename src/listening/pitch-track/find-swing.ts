// Where the pitch swings to and fro as in a vibrato: turning points at even distances and of even size, with a smooth way
// between them. Two notes in turn are no swing: the pitch rests on each and jumps between.

/** Moments of 10 ms from one turning point to the next: 3.3 – 10 Hz (vibrato: 4.5 – 7 Hz, Seashore 1932, from memory). */
const shortestHalf = 5;
const longestHalf = 15;
/** Semitones from one turning point to the next; less needs no care, more is no vibrato. */
const leastSize = 0.8;
const mostSize = 3.2;
/** How far the pitch must come back, in semitones, to have turned. */
const turned = 0.15;
/** Half-swings in a row that make a vibrato, and how unlike neighbours may be. */
const fewest = 3;
const sizeRatio = 2.6;
const halfRatio = 1.8;
/** Mean distance from the middle of a half-swing as a share of its reach: a sine has 0.64, two notes in turn 0.8 and more. */
const mostSquare = 0.74;
/** Below this pitch (F2) frames are as long as a half-swing and square it. */
const lowPitch = 41.5;
const mostSquareLow = 0.86;
/** A sure attack starts another note. */
const sureAttack = 0.9;

interface Turn {
  readonly at: number;
  readonly pitch: number;
}

/**
 * For every moment half the period, in moments, of the swing it belongs to; 0 where there is none. `midi` is the fractional
 * pitch (0 where none is heard), `attack` how surely something begins.
 */
export function findSwing(midi: Float32Array, attack: Float32Array): Uint8Array {
  const swing = new Uint8Array(midi.length);
  for (let from = 0; from < midi.length; ) {
    if ((midi[from] ?? 0) === 0) {
      from++;
      continue;
    }
    let to = from + 1;
    while (to < midi.length && (midi[to] ?? 0) > 0 && (attack[to] ?? 0) < sureAttack) to++;
    if (to - from > fewest * shortestHalf) markSwings(midi, findTurns(midi, from, to), from, to, swing);
    from = to;
  }
  return swing;
}

/** Where the pitch turns by more than `turned` between two moments. */
function findTurns(midi: Float32Array, from: number, to: number): readonly Turn[] {
  const turns: Turn[] = [];
  let high = from;
  let low = from;
  let rises: boolean | null = null;
  for (let t = from; t < to; t++) {
    const pitch = midi[t] ?? 0;
    if (pitch > (midi[high] ?? 0)) high = t;
    if (pitch < (midi[low] ?? 0)) low = t;
    if (rises !== false && pitch < (midi[high] ?? 0) - turned) {
      turns.push({ at: high, pitch: midi[high] ?? 0 });
      rises = false;
      low = t;
    } else if (rises !== true && pitch > (midi[low] ?? 0) + turned) {
      turns.push({ at: low, pitch: midi[low] ?? 0 });
      rises = true;
      high = t;
    }
  }
  return turns;
}

function markSwings(
  midi: Float32Array,
  turns: readonly Turn[],
  from: number,
  to: number,
  swing: Uint8Array,
): void {
  let first = 0;
  for (let i = 1; i <= turns.length; i++) {
    if (i < turns.length && isHalf(turns[i - 1], turns[i]) && isLike(turns, first, i)) continue;
    const chain = turns.slice(first, i);
    const most = (chain[0]?.pitch ?? 0) < lowPitch ? mostSquareLow : mostSquare;
    if (chain.length > fewest && squareness(midi, chain) < most) mark(midi, chain, from, to, swing);
    // what breaks one chain may begin another
    first = i < turns.length && isHalf(turns[i - 1], turns[i]) ? i - 1 : i;
  }
}

function isHalf(a: Turn | undefined, b: Turn | undefined): boolean {
  if (a === undefined || b === undefined) return false;
  const half = b.at - a.at;
  const size = Math.abs(b.pitch - a.pitch);
  return half >= shortestHalf && half <= longestHalf && size >= leastSize && size <= mostSize;
}

/** Whether the half-swing that ends at turn `i` is like the one before, if that belongs to the chain. */
function isLike(turns: readonly Turn[], first: number, i: number): boolean {
  const [a, b, c] = [turns[i - 2], turns[i - 1], turns[i]];
  if (i - 2 < first || a === undefined || b === undefined || c === undefined) return true;
  const size = Math.abs(c.pitch - b.pitch) / Math.abs(b.pitch - a.pitch);
  const half = (c.at - b.at) / (b.at - a.at);
  return Math.max(size, 1 / size) < sizeRatio && Math.max(half, 1 / half) < halfRatio;
}

function squareness(midi: Float32Array, chain: readonly Turn[]): number {
  let sum = 0;
  let count = 0;
  for (const [i, turn] of chain.entries()) {
    const before = chain[i - 1];
    if (before === undefined) continue;
    const middle = (turn.pitch + before.pitch) / 2;
    const reach = Math.abs(turn.pitch - before.pitch) / 2;
    for (let t = before.at; t < turn.at; t++) {
      sum += Math.min(1, Math.abs((midi[t] ?? 0) - middle) / reach);
      count++;
    }
  }
  return sum / Math.max(1, count);
}

/** Marks a chain, and half a swing before and after it where the pitch stays within its reach. */
function mark(midi: Float32Array, chain: readonly Turn[], from: number, to: number, swing: Uint8Array): void {
  const [first, last] = [chain[0], chain[chain.length - 1]];
  if (first === undefined || last === undefined) return;
  const half = Math.round((last.at - first.at) / (chain.length - 1));
  const pitches = chain.map((turn) => turn.pitch);
  const [low, high] = [Math.min(...pitches) - turned, Math.max(...pitches) + turned];
  const isWithin = (t: number) => (midi[t] ?? 0) >= low && (midi[t] ?? 0) <= high;
  let start = first.at;
  while (start > from && first.at - start < half && isWithin(start - 1)) start--;
  let end = last.at;
  while (end < to - 1 && end - last.at < half && isWithin(end + 1)) end++;
  swing.fill(half, start, end + 1);
}
