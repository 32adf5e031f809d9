// Every second sample, after what the halved rate cannot hold is filtered out: low notes are looked at in longer,
// coarser frames.

/** A half-band low-pass of 31 taps (sinc under a Blackman window): all even taps but the middle one are zero. */
const taps = createHalfBand();

function createHalfBand(): Float64Array {
  const reach = 15;
  const values = Float64Array.from({ length: 2 * reach + 1 }, (_, i) => {
    const n = i - reach;
    if (n === 0) return 0.5;
    if (n % 2 === 0) return 0;
    const window =
      0.42 + 0.5 * Math.cos((Math.PI * n) / (reach + 1)) + 0.08 * Math.cos((2 * Math.PI * n) / (reach + 1));
    return (Math.sin((Math.PI * n) / 2) / (Math.PI * n)) * window;
  });
  const sum = values.reduce((total, value) => total + value, 0);
  return values.map((value) => value / sum);
}

/**
 * Fills `output`, half as long as `input`, with it at half its rate; sample n of the result lies at sample 2n of the input.
 * Outside `input` is silence.
 */
export function halveRate(input: Float32Array, output: Float32Array): void {
  const reach = (taps.length - 1) / 2;
  const middle = taps[reach] ?? 0;
  for (let n = 0; n < output.length; n++) {
    const centre = 2 * n;
    let sum = (input[centre] ?? 0) * middle;
    if (centre >= reach && centre + reach < input.length) {
      for (let k = 1; k <= reach; k += 2)
        sum += (taps[reach + k] ?? 0) * ((input[centre - k] ?? 0) + (input[centre + k] ?? 0));
    } else {
      for (let k = 1; k <= reach; k += 2) {
        const before = centre - k >= 0 ? (input[centre - k] ?? 0) : 0;
        const after = centre + k < input.length ? (input[centre + k] ?? 0) : 0;
        sum += (taps[reach + k] ?? 0) * (before + after);
      }
    }
    output[n] = sum;
  }
}
