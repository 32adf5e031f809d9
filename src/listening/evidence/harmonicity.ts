// Share of a sound's energy that repeats with its period: the rest is breath, bow, noise. Source: the normalised
// autocorrelation at the period is the harmonic share (Boersma 1993, Accurate short-term analysis of the fundamental
// frequency and the harmonics-to-noise ratio, IFA Proceedings 17).

/** 0 to 1 over one window starting at sample `from`; `period` in samples (with a fraction). Null past the end. */
export function harmonicShare(samples: Float32Array, from: number, period: number): number | null {
  const window = Math.ceil(period * 3);
  const whole = Math.floor(period);
  const part = period - whole;
  if (from < 0 || from + window + whole + 2 > samples.length || period < 2) return null;
  let [cross, here, there] = [0, 0, 0];
  for (let i = from; i < from + window; i++) {
    const a = samples[i] ?? 0;
    const b = (samples[i + whole] ?? 0) * (1 - part) + (samples[i + whole + 1] ?? 0) * part;
    [cross, here, there] = [cross + a * b, here + a * a, there + b * b];
  }
  const power = Math.sqrt(here * there);
  return power < 1e-12 ? null : Math.max(0, Math.min(1, cross / power));
}
