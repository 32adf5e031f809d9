// A microphone's constant offset is no sound: a first-order high-pass takes it away.

/** Cut-off frequency, hertz: below the lowest note of any instrument. */
const cutoffHz = 12;

/** Takes the constant part out of `samples` (at `rate` hertz), in place. */
export function removeOffset(samples: Float32Array, rate: number): void {
  const keep = Math.exp((-2 * Math.PI * cutoffHz) / rate);
  let before = samples[0] ?? 0;
  let output = 0;
  for (let n = 0; n < samples.length; n++) {
    const here = samples[n] ?? 0;
    output = here - before + keep * output;
    before = here;
    samples[n] = output;
  }
}
