// The steady noise of a room or a microphone: what is still there in each band when the playing is elsewhere. A low
// quantile of each bin's power over time, as in minimum statistics (Martin 2001), smoothed by a median over frequency
// so that a held note does not count as noise.

/** Collects power spectra and tells the floor under them. */
export interface NoiseFloor {
  /** Counts one spectrum. */
  add(power: Float64Array): void;
  /** The mean noise power of every bin. */
  estimate(): Float64Array;
}

const lowest = -150;
const stepDb = 1.5;
const steps = 128;
/** The share of the time in which a bin is taken to hold noise alone. */
const quantile = 0.12;
/** Bins on either side of the running median. */
const medianReach = 12;
/** The floor stays at least this far (as a power ratio, 12 dB) below the loud moments. */
const belowLoud = 10 ** -1.2;

/** Makes a collector for spectra of `bins` bins. */
export function createNoiseFloor(bins: number): NoiseFloor {
  const counts = new Uint16Array(bins * steps);
  const totals = new Uint16Array(steps);
  let spectra = 0;

  function add(power: Float64Array): void {
    if (spectra >= 65535) return;
    spectra++;
    let total = 0;
    for (let k = 0; k < bins; k++) {
      const value = power[k] ?? 0;
      total += value;
      const cell = k * steps + powerToStep(value);
      counts[cell] = (counts[cell] ?? 0) + 1;
    }
    const cell = powerToStep(total);
    totals[cell] = (totals[cell] ?? 0) + 1;
  }

  function estimate(): Float64Array {
    const raw = new Float64Array(bins);
    if (spectra === 0) return raw;
    // The power of noise in one bin is exponentially distributed: its quantile q is -ln(1 - q) times its mean.
    const bias = -1 / Math.log(1 - quantile);
    for (let k = 0; k < bins; k++)
      raw[k] = bias * stepToPower(quantileStep(counts, k * steps, quantile * spectra));
    const smooth = runningMedian(raw, medianReach);
    const total = smooth.reduce((sum, value) => sum + value, 0);
    const most = belowLoud * stepToPower(quantileStep(totals, 0, 0.95 * spectra));
    return total > most ? smooth.map((value) => (value * most) / total) : smooth;
  }

  return { add, estimate };
}

/** The step of a power: that of its 16 leading bits, or the next where the step's end lies between. */
function powerToStep(power: number): number {
  single[0] = power;
  const step = stepsByLead[(bits[0] ?? 0) >>> 16] ?? 0;
  return power >= (ends[step] ?? Infinity) ? step + 1 : step;
}

const single = new Float32Array(1);
const bits = new Uint32Array(single.buffer);
/** Where each step ends, the last never. */
const ends = Float64Array.from({ length: steps }, (_, step) =>
  step === steps - 1 ? Infinity : 10 ** ((lowest + (step + 0.5) * stepDb) / 10),
);
const stepsByLead = tabulateSteps();

/** The step of the least power that has given leading bits as a number of single precision. */
function tabulateSteps(): Uint8Array {
  return Uint8Array.from({ length: 0x8000 }, (_, lead) => {
    bits[0] = lead << 16;
    const db = 10 * Math.log10((single[0] ?? 0) + 1e-30);
    return Number.isNaN(db)
      ? steps - 1
      : Math.max(0, Math.min(steps - 1, Math.round((db - lowest) / stepDb)));
  });
}

function stepToPower(step: number): number {
  return step === 0 ? 0 : 10 ** ((lowest + step * stepDb) / 10);
}

function quantileStep(counts: Uint16Array, from: number, wanted: number): number {
  let seen = 0;
  for (let step = 0; step < steps; step++) {
    seen += counts[from + step] ?? 0;
    if (seen >= wanted) return step;
  }
  return steps - 1;
}

function runningMedian(values: Float64Array, reach: number): Float64Array {
  return values.map((_, k) => {
    const near = values.slice(Math.max(0, k - reach), Math.min(values.length, k + reach + 1)).sort();
    return near[near.length >> 1] ?? 0;
  });
}
