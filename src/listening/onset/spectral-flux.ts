// Where new sound begins: the rise of a log-frequency spectrum against the loudest neighbour a little earlier, so that
// vibrato's sideways motion does not count (SuperFlux, Böck & Widmer 2013, eq. 2-5).

/** Samples of the frames whose spectra are compared. */
export const fluxFrame = 512;
const frameLength = fluxFrame;
const bins = frameLength / 2 + 1;
/** Bands per octave, from `lowestHz` to the top. */
const bandsPerOctave = 12;
const lowestHz = 60;
/** How many hops of 5 ms back the rise is measured: 15 ms, about half a frame. */
const lag = 3;
/** Noise swings: this many times its mean counts as silence. */
const noiseMargin = 4;

/** One spectrum's flux after another. */
export interface SpectralFlux {
  /** Sets what counts as silence: the noise power per bin of a 1024-point frame, and a power for every bin. */
  setFloor(noise: Float64Array | null, least: number): void;
  /**
   * The rise at the next moment (5 ms after the last), in decibels averaged over the bands. `power` is the spectrum of its
   * frame, in bins `every` times as fine as a transform of the frame's own length has.
   */
  next(power: Float64Array, every: number): number;
}

/** Makes the detector for samples at `rate` hertz. */
export function createSpectralFlux(rate: number): SpectralFlux {
  const edges = bandEdges(rate);
  const bands = edges.length - 1;
  const history = new Float64Array((lag + 1) * bands);
  const floors = new Float64Array(bands).fill(1e-5);
  let count = 0;

  function next(power: Float64Array, every: number): number {
    const row = (count % (lag + 1)) * bands;
    for (let b = 0; b < bands; b++) {
      let inBand = floors[b] ?? 0;
      for (let k = edges[b] ?? 0; k < (edges[b + 1] ?? 0); k++) inBand += power[k * every] ?? 0;
      history[row + b] = 10 * Math.log10(inBand);
    }
    let rise = 0;
    if (count >= lag) {
      const old = ((count - lag) % (lag + 1)) * bands;
      for (let b = 0; b < bands; b++) {
        let before = history[old + b] ?? 0;
        if (b > 0) before = Math.max(before, history[old + b - 1] ?? 0);
        if (b + 1 < bands) before = Math.max(before, history[old + b + 1] ?? 0);
        const up = (history[row + b] ?? 0) - before;
        if (up > 0) rise += up;
      }
    }
    count++;
    return rise / bands;
  }

  function setFloor(noise: Float64Array | null, least: number): void {
    for (let b = 0; b < bands; b++) {
      let power = 0;
      for (let k = edges[b] ?? 0; k < (edges[b + 1] ?? 0); k++)
        power += noiseMargin * (noise?.[2 * k] ?? 0) + least;
      floors[b] = power;
    }
  }

  return { next, setFloor };
}

/** First bin of every band and one past the last: a bin at least, then twelve bands to the octave. */
function bandEdges(rate: number): readonly number[] {
  const binHz = rate / frameLength;
  const edges = [Math.max(1, Math.round(lowestHz / binHz))];
  for (;;) {
    const last = edges[edges.length - 1] ?? 1;
    const next = Math.max(last + 1, Math.round(last * 2 ** (1 / bandsPerOctave)));
    if (next > bins - 1) return edges;
    edges.push(next);
  }
}
