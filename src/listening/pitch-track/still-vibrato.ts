// The pitch a vibrato swings around: the mean over about one swing, where the pitch moves smoothly. Steps from note to
// note are left as they are.

/** Moments on either side of the mean: 190 ms, a period of 5.3 Hz (vibrato: 4.5 – 7 Hz, Seashore 1932, from memory). */
const usualReach = 9;
/** A larger change between two moments of 10 ms, in semitones, is a step. */
const largestDrift = 0.36;

/**
 * Fractional MIDI pitch (0 where none) with vibrato taken out; `attack` above 0.5 parts notes too. Where the pitch is known
 * to swing (`swing` holds half a period, see find-swing.ts) the mean is over just one swing, however wide it is.
 */
export function stillVibrato(midi: Float32Array, attack: Float32Array, swing: Uint8Array): Float32Array {
  const count = midi.length;
  // The first moment of the smooth stretch that each moment belongs to, and one past its last.
  const from = new Int32Array(count);
  const to = new Int32Array(count);
  for (let t = 1; t < count; t++) from[t] = parts(midi, attack, swing, t) ? t : (from[t - 1] ?? 0);
  for (let t = count - 1; t >= 0; t--)
    to[t] = t + 1 >= count || parts(midi, attack, swing, t + 1) ? t + 1 : (to[t + 1] ?? count);
  return midi.map((pitch, t) => {
    if (pitch === 0) return 0;
    const own = swing[t] ?? 0;
    const reach = own > 0 ? own : usualReach;
    const span = Math.min(reach, t - (from[t] ?? t), (to[t] ?? t) - 1 - t);
    // Near the ends of a stretch half a swing would pull the mean aside: lean on the nearest whole one.
    const centre = Math.max((from[t] ?? t) + reach, Math.min((to[t] ?? t) - 1 - reach, t));
    const whole = centre - reach >= (from[t] ?? 0) && centre + reach < (to[t] ?? 0);
    return whole ? mean(midi, centre - reach, centre + reach) : mean(midi, t - span, t + span);
  });
}

function parts(midi: Float32Array, attack: Float32Array, swing: Uint8Array, t: number): boolean {
  const before = midi[t - 1] ?? 0;
  const here = midi[t] ?? 0;
  if (before === 0 || here === 0 || (attack[t] ?? 0) > 0.5) return true;
  if ((swing[t] ?? 0) > 0 && (swing[t - 1] ?? 0) > 0) return false;
  // The longest frames come at every other moment: the change per moment is taken over two.
  const earlier = midi[t - 2] ?? 0;
  const later = midi[t + 1] ?? 0;
  const forward = Math.abs((later === 0 ? here : later) - before) / 2;
  const backward = Math.abs(here - (earlier === 0 ? before : earlier)) / 2;
  return Math.abs(here - before) > largestDrift && Math.max(forward, backward) > largestDrift;
}

function mean(values: Float32Array, from: number, to: number): number {
  let sum = 0;
  for (let t = from; t <= to; t++) sum += values[t] ?? 0;
  return sum / (to - from + 1);
}
