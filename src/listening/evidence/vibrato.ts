// Vibrato: an even wave of pitch between 3.5 and 9 Hz, found by fitting one sine to a note's pitch.

export interface Vibrato {
  /** Waves in a second. */
  readonly rate: number;
  /** Cents from the middle to the top of the wave. */
  readonly extent: number;
}

export interface PitchWave {
  /** Null where there is none. */
  readonly vibrato: Vibrato | null;
  /** Standard deviation in cents of what is left once drift and vibrato are taken out. */
  readonly unsteadiness: number;
}

const lowest = 3.5;
const highest = 9;
const leastExtent = 7;
/** Share of the movement one sine has to explain. */
const leastShare = 0.45;
/** Waves that have to fit into the note. */
const leastWaves = 2;

/** Looks at the pitch of one note in cents, one value every `hop` seconds. */
export function findVibrato(cents: readonly number[], hop: number): PitchWave {
  const flat = withoutTrend(cents);
  const power = flat.reduce((sum, x) => sum + x * x, 0) / Math.max(1, flat.length);
  const seconds = flat.length * hop;
  let best = { rate: 0, extent: 0, share: 0 };
  for (let rate = Math.max(lowest, leastWaves / seconds); rate <= highest; rate += 0.05) {
    let [c, s, cc, ss, cs] = [0, 0, 0, 0, 0];
    // The sine goes on by one turn for each value: cheaper than asking for it anew.
    const [turnCos, turnSin] = [Math.cos(2 * Math.PI * rate * hop), Math.sin(2 * Math.PI * rate * hop)];
    let a = 1;
    let b = 0;
    for (const x of flat) {
      c += x * a;
      s += x * b;
      cc += a * a;
      ss += b * b;
      cs += a * b;
      const next = a * turnCos - b * turnSin;
      b = a * turnSin + b * turnCos;
      a = next;
    }
    const det = cc * ss - cs * cs;
    if (det < 1e-9) continue;
    const [p, q] = [(c * ss - s * cs) / det, (s * cc - c * cs) / det];
    const share = (p * c + q * s) / flat.length / (power + 1e-12);
    if (share > best.share) best = { rate, extent: Math.hypot(p, q), share };
  }
  // the wave grows and sways: its extent is that of a sine with the same power, once it is there at all
  const isThere = best.share > leastShare && best.extent > leastExtent;
  return {
    vibrato: isThere
      ? { rate: best.rate, extent: Math.SQRT2 * Math.sqrt(power * Math.min(1, best.share * 1.1)) }
      : null,
    unsteadiness: Math.sqrt(power * (isThere ? Math.max(0, 1 - best.share) : 1)),
  };
}

/** Less its straight line. */
export function withoutTrend(values: readonly number[]): readonly number[] {
  const n = values.length;
  const mx = (n - 1) / 2;
  const my = values.reduce((sum, y) => sum + y, 0) / Math.max(1, n);
  let [sxy, sxx] = [0, 0];
  for (const [i, y] of values.entries()) [sxy, sxx] = [sxy + (i - mx) * (y - my), sxx + (i - mx) ** 2];
  const slope = sxx === 0 ? 0 : sxy / sxx;
  return values.map((y, i) => y - my - slope * (i - mx));
}
