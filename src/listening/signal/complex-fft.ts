// The discrete Fourier transform of complex signals whose length is a power of two: radix 4, with one radix-2 pass where
// the length asks for it, decimation in time (Cooley & Tukey 1965).

/** A transform of one length with its tables and the two arrays it works in. */
export interface ComplexFft {
  /** Real and imaginary parts: before `run` value n stands at place `order[n]`, after it bin k stands at place k. */
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly order: Uint32Array;
  /** Whether the first pass joins neighbours in pairs (the length is an odd power of two). */
  readonly startsInPairs: boolean;
  /** Transforms in place. `isPaired` says that the pairs of the first pass are joined already. */
  run(isPaired: boolean): void;
}

/** Makes a transform of `size` complex values, a power of two of at least 4. */
export function createComplexFft(size: number): ComplexFft {
  const bits = Math.log2(size);
  const order = new Uint32Array(size);
  for (let i = 0; i < size; i++) {
    let mirrored = 0;
    for (let bit = 0; bit < bits; bit++) mirrored |= ((i >> bit) & 1) << (bits - 1 - bit);
    order[i] = mirrored;
  }
  const re = new Float64Array(size);
  const im = new Float64Array(size);
  const startsInPairs = bits % 2 === 1;
  const stages: { readonly span: number; readonly turns: Float64Array }[] = [];
  for (let span = startsInPairs ? 2 : 1; span < size; span *= 4)
    stages.push({ span, turns: listTurns(span) });

  function run(isPaired: boolean): void {
    if (startsInPairs && !isPaired) joinPairs(re, im, size);
    for (const { span, turns } of stages) joinFours(re, im, size, span, turns);
  }

  return { re, im, order, startsInPairs, run };
}

/** The turns of one stage: cosine and sine of one, two and three steps, for every place k. */
function listTurns(span: number): Float64Array {
  return Float64Array.from({ length: 6 * span }, (_, i) => {
    const [k, what] = [Math.floor(i / 6), i % 6];
    const angle = (2 * Math.PI * k * (1 + (what >> 1))) / (4 * span);
    return what % 2 === 0 ? Math.cos(angle) : Math.sin(angle);
  });
}

function joinPairs(re: Float64Array, im: Float64Array, size: number): void {
  for (let i = 0; i < size; i += 2) {
    const r = re[i + 1] ?? 0;
    const m = im[i + 1] ?? 0;
    re[i + 1] = (re[i] ?? 0) - r;
    im[i + 1] = (im[i] ?? 0) - m;
    re[i] = (re[i] ?? 0) + r;
    im[i] = (im[i] ?? 0) + m;
  }
}

/** Two radix-2 stages at once: joins four transforms of length `span` into one of length 4 · span. */
function joinFours(
  re: Float64Array,
  im: Float64Array,
  size: number,
  span: number,
  turns: Float64Array,
): void {
  for (let k = 0, at = 0; k < span; k++, at += 6) {
    const c1 = turns[at] ?? 0;
    const s1 = turns[at + 1] ?? 0;
    const c2 = turns[at + 2] ?? 0;
    const s2 = turns[at + 3] ?? 0;
    const c3 = turns[at + 4] ?? 0;
    const s3 = turns[at + 5] ?? 0;
    for (let i = k; i < size; i += 4 * span) {
      const j = i + span;
      const l = j + span;
      const m = l + span;
      // Bit reversal leaves the residue classes in the order 0, 2, 1, 3.
      const r0 = re[i] ?? 0;
      const i0 = im[i] ?? 0;
      const rj = re[j] ?? 0;
      const ij = im[j] ?? 0;
      const rl = re[l] ?? 0;
      const il = im[l] ?? 0;
      const rm = re[m] ?? 0;
      const imm = im[m] ?? 0;
      const r2 = rj * c2 + ij * s2;
      const i2 = ij * c2 - rj * s2;
      const r1 = rl * c1 + il * s1;
      const i1 = il * c1 - rl * s1;
      const r3 = rm * c3 + imm * s3;
      const i3 = imm * c3 - rm * s3;
      const sumRe = r0 + r2;
      const sumIm = i0 + i2;
      const differenceRe = r0 - r2;
      const differenceIm = i0 - i2;
      const oddRe = r1 + r3;
      const oddIm = i1 + i3;
      const turnRe = i1 - i3;
      const turnIm = r3 - r1;
      re[i] = sumRe + oddRe;
      im[i] = sumIm + oddIm;
      re[j] = differenceRe + turnRe;
      im[j] = differenceIm + turnIm;
      re[l] = sumRe - oddRe;
      im[l] = sumIm - oddIm;
      re[m] = differenceRe - turnRe;
      im[m] = differenceIm - turnIm;
    }
  }
}
