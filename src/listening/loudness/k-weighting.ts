// The weighting of loudness by hearing (K-weighting). Source: ITU-R BS.1770-4 (2015), tables 1 and 2, which give the two
// filters at 48 kHz; at other rates the same analogue filters are transformed again (poles and gains that give the published
// coefficients back at 48 kHz, as public implementations have them; checked in checks/listening).

export interface Biquad {
  readonly b: readonly [number, number, number];
  /** The first, a0, is 1. */
  readonly a: readonly [1, number, number];
}

/** The head's high shelf and the low cut, for a sample rate in hertz. */
export function kWeighting(sampleRate: number): readonly [Biquad, Biquad] {
  return [highShelf(sampleRate), lowCut(sampleRate)];
}

function highShelf(sampleRate: number): Biquad {
  const [hz, db, q] = [1681.974450955533, 3.999843853973347, 0.7071752369554196];
  const k = Math.tan((Math.PI * hz) / sampleRate);
  const high = 10 ** (db / 20);
  const band = high ** 0.4996667741545416;
  const a0 = 1 + k / q + k * k;
  return {
    b: [
      (high + (band * k) / q + k * k) / a0,
      (2 * (k * k - high)) / a0,
      (high - (band * k) / q + k * k) / a0,
    ],
    a: [1, (2 * (k * k - 1)) / a0, (1 - k / q + k * k) / a0],
  };
}

function lowCut(sampleRate: number): Biquad {
  const [hz, q] = [38.13547087602444, 0.5003270373238773];
  const k = Math.tan((Math.PI * hz) / sampleRate);
  const a0 = 1 + k / q + k * k;
  return { b: [1, -2, 1], a: [1, (2 * (k * k - 1)) / a0, (1 - k / q + k * k) / a0] };
}

/** Runs samples through filters one after another, into a new array. */
export function filterSamples(samples: Float32Array, filters: readonly Biquad[]): Float32Array {
  const out = Float32Array.from(samples);
  for (const { b, a } of filters) {
    let [x1, x2, y1, y2] = [0, 0, 0, 0];
    for (let i = 0; i < out.length; i++) {
      const x = out[i] ?? 0;
      const y = b[0] * x + b[1] * x1 + b[2] * x2 - a[1] * y1 - a[2] * y2;
      [x2, x1, y2, y1] = [x1, x, y1, y];
      out[i] = y;
    }
  }
  return out;
}
