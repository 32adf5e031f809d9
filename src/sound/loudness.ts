// Loudness of a programme and its true peak. Source: ITU-R BS.1770-4 (2015), Annex 1 (K-weighting, 400 ms blocks with 75 %
// overlap, gates at -70 LUFS and 10 LU below) and Annex 2 (true peak by oversampling). The filters for other sample rates
// than 48 kHz come from the analogue prototypes whose bilinear transform gives the standard's coefficients (values as in
// public implementations, from memory; at 48 kHz they are checked against the standard's table in checks/sound).

export interface Biquad {
  readonly b: readonly [number, number, number];
  /** a0 is 1. */
  readonly a: readonly [number, number];
}

/** The two stages of K-weighting at a sample rate: a high shelf for the head, and a high-pass. */
export function kWeighting(sampleRate: number): readonly [Biquad, Biquad] {
  const shelf = { frequency: 1681.974450955533, gain: 3.999843853973347, q: 0.7071752369554196 };
  const pass = { frequency: 38.13547087602444, q: 0.5003270373238773 };
  const k1 = Math.tan((Math.PI * shelf.frequency) / sampleRate);
  const vh = 10 ** (shelf.gain / 20);
  const vb = vh ** 0.4996667741545416;
  const a0 = 1 + k1 / shelf.q + k1 * k1;
  const k2 = Math.tan((Math.PI * pass.frequency) / sampleRate);
  const c0 = 1 + k2 / pass.q + k2 * k2;
  return [
    {
      b: [
        (vh + (vb * k1) / shelf.q + k1 * k1) / a0,
        (2 * (k1 * k1 - vh)) / a0,
        (vh - (vb * k1) / shelf.q + k1 * k1) / a0,
      ],
      a: [(2 * (k1 * k1 - 1)) / a0, (1 - k1 / shelf.q + k1 * k1) / a0],
    },
    { b: [1, -2, 1], a: [(2 * (k2 * k2 - 1)) / c0, (1 - k2 / pass.q + k2 * k2) / c0] },
  ];
}

/** Measures a programme that comes piece by piece. */
export interface LoudnessMeter {
  /** The next samples of each channel, in the order of the weights. */
  add(channels: readonly Float32Array[]): void;
  /** Integrated loudness so far in LUFS; minus infinity for silence and for less than 400 ms. */
  loudness(): number;
}

/** A meter for channels of these weights (1 in front, 1.41 for surround). */
export function createLoudnessMeter(weights: readonly number[], sampleRate: number): LoudnessMeter {
  const step = Math.round(sampleRate / 10);
  const powers = weights.map(() => createKPower(sampleRate));
  // Energy in steps of 100 ms; four of them make a block.
  const energy: number[] = [];
  let open = 0;
  let filled = 0;
  return {
    add(channels) {
      const length = Math.max(0, ...channels.map((channel) => channel.length));
      for (let at = 0; at < length; ) {
        const to = Math.min(length, at + step - filled);
        weights.forEach((weight, n) => {
          const channel = channels[n];
          if (channel !== undefined) open += weight * (powers[n]?.(channel, at, to) ?? 0);
        });
        filled += to - at;
        at = to;
        if (filled < step) continue;
        energy.push(open);
        [open, filled] = [0, 0];
      }
    },
    loudness: () => gatedLoudness(energy, step),
  };
}

function gatedLoudness(energy: readonly number[], step: number): number {
  const blocks: number[] = [];
  for (let at = 0; at + 4 <= energy.length; at++) {
    let sum = 0;
    for (let n = at; n < at + 4; n++) sum += energy[n] ?? 0;
    blocks.push(sum / (4 * step));
  }
  const loud = (power: number) => -0.691 + 10 * Math.log10(power);
  const mean = (powers: readonly number[]) => powers.reduce((sum, power) => sum + power, 0) / powers.length;
  const heard = blocks.filter((power) => loud(power) > -70);
  if (heard.length === 0) return Number.NEGATIVE_INFINITY;
  const gate = loud(mean(heard)) - 10;
  return loud(mean(heard.filter((power) => loud(power) > gate)));
}

/** The power of samples from one place to before another after both stages of K-weighting, added up; zeros past the end. */
function createKPower(sampleRate: number): (samples: Float32Array, from: number, to: number) => number {
  const [shelf, pass] = kWeighting(sampleRate);
  const [b0, b1, b2] = shelf.b;
  const [a1, a2] = shelf.a;
  const [c1, c2] = pass.a;
  let [heldX1, heldX2, heldY1, heldY2, heldZ1, heldZ2] = [0, 0, 0, 0, 0, 0];
  return (samples, from, to) => {
    let [x1, x2, y1, y2, z1, z2] = [heldX1, heldX2, heldY1, heldY2, heldZ1, heldZ2];
    let sum = 0;
    for (let at = from; at < to; at++) {
      const x = samples[at] ?? 0;
      const y = b0 * x + b1 * x1 + b2 * x2 - a1 * y1 - a2 * y2;
      const z = y - 2 * y1 + y2 - c1 * z1 - c2 * z2; // b of the high-pass is 1, -2, 1
      x2 = x1;
      x1 = x;
      y2 = y1;
      y1 = y;
      z2 = z1;
      z1 = z;
      sum += z * z;
    }
    [heldX1, heldX2, heldY1, heldY2, heldZ1, heldZ2] = [x1, x2, y1, y2, z1, z2];
    return sum;
  };
}

const phases = 4;
const tapsPerPhase = 12;

/** Windowed sinc for four times the sample rate, as phases of twelve taps (BS.1770-4 Annex 2 asks for no more). */
const interpolation: readonly Float64Array[] = Array.from({ length: phases }, (_, phase) => {
  const taps = Float64Array.from({ length: tapsPerPhase }, (_, tap) => {
    const x = tap - tapsPerPhase / 2 + 1 - phase / phases;
    const sinc = x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
    return sinc * (0.5 + 0.5 * Math.cos((Math.PI * x) / (tapsPerPhase / 2)));
  });
  const sum = taps.reduce((all, tap) => all + tap, 0);
  return taps.map((tap) => tap / sum);
});

/** The largest magnitude around a sample: its own, or one between it and the next. */
function peakAt(samples: Float32Array, at: number): number {
  let peak = Math.abs(samples[at] ?? 0);
  // Only near a large sample can there be a larger one between.
  if (peak <= 0.25) return peak;
  for (let phase = 1; phase < phases; phase++) {
    const taps = interpolation[phase];
    if (taps === undefined) continue;
    let sum = 0;
    for (let tap = 0; tap < tapsPerPhase; tap++)
      sum += (taps[tap] ?? 0) * (samples[at + tap - tapsPerPhase / 2 + 1] ?? 0);
    peak = Math.max(peak, Math.abs(sum));
  }
  return peak;
}

/** The largest magnitude between samples, at each sample; as long as the sound. */
export function truePeaks(samples: Float32Array): Float32Array {
  const peaks = new Float32Array(samples.length);
  for (let at = 0; at < samples.length; at++) peaks[at] = peakAt(samples, at);
  return peaks;
}

/** True peak in dBTP over all channels, where it is above -12; below, the peak of the samples. Minus infinity for silence. */
export function truePeakDb(channels: readonly Float32Array[]): number {
  let most = 0;
  for (const samples of channels)
    for (let at = 0; at < samples.length; at++) most = Math.max(most, peakAt(samples, at));
  return 20 * Math.log10(most);
}
