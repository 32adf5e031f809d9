// Whether a recording was cut off: several samples in a row at one extreme, near full scale.

/** Samples in a row at the extreme that count as cut off. */
const run = 4;
/** Level of the extreme, as a share of full scale, from which it may be a cut. */
const nearFullScale = 0.9;
/** How close to the extreme the samples lie. */
const closeness = 0.999;
const blockSeconds = 0.1;

/** The share of tenths of a second in which the recording is cut off, 0 … 1. */
export function findClipping(samples: Float32Array, sampleRate: number): number {
  let extreme = 0;
  for (let n = 0; n < samples.length; n++) {
    const size = Math.abs(samples[n] ?? 0);
    if (size > extreme && size < Infinity) extreme = size;
  }
  if (extreme < nearFullScale) return 0;
  const limit = extreme * closeness;
  const block = Math.max(1, Math.round(blockSeconds * sampleRate));
  let cut = 0;
  let blocks = 0;
  for (let start = 0; start < samples.length; start += block) {
    blocks++;
    let inRow = 0;
    for (let n = start; n < Math.min(samples.length, start + block); n++) {
      inRow = Math.abs(samples[n] ?? 0) >= limit ? inRow + 1 : 0;
      if (inRow < run) continue;
      cut++;
      break;
    }
  }
  return cut / Math.max(1, blocks);
}
