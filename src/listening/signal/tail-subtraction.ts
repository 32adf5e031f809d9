// Takes what still rings from earlier (a room's late reverberation, an undamped string) off a power spectrum, so that
// the newest sound stands out: the late power is the past's, delayed and decaying exponentially (Lebart, Boucher &
// Denbigh 2001, "A new method based on spectral subtraction for speech dereverberation", eq. 5-9).

/** Keeps the past of one series of spectra. */
export interface TailSubtraction {
  /** Takes the tail off `power`, the spectrum of the next moment, in place. */
  apply(power: Float64Array): void;
}

/** How the tail is modelled. */
export interface TailModel {
  /** Seconds from one spectrum to the next. */
  readonly hopSeconds: number;
  /** Spectra until sound counts as past. */
  readonly delay: number;
  /** Seconds in which the tail falls by 60 dB. */
  readonly decaySeconds: number;
  /** Power of the tail of a held sound, as a share of that sound's. */
  readonly share: number;
  /** Share of the power that is always left. */
  readonly least: number;
}

/** Makes the subtraction for spectra of `bins` bins. */
export function createTailSubtraction(bins: number, model: TailModel): TailSubtraction {
  const rows = model.delay + 1;
  const past = new Float32Array(rows * bins);
  const tail = new Float64Array(bins);
  const decay = 10 ** ((-6 * model.hopSeconds) / model.decaySeconds);
  const gain = model.share * (1 - decay);
  const { least } = model;
  let count = 0;

  function apply(power: Float64Array): void {
    const now = (count % rows) * bins;
    const then = ((count + 1) % rows) * bins;
    count++;
    for (let k = 0; k < bins; k++) {
      const here = power[k] ?? 0;
      past[now + k] = here;
      const late = decay * (tail[k] ?? 0) + gain * (past[then + k] ?? 0);
      tail[k] = late;
      let left = here - late;
      if (left < least * here) left = least * here;
      power[k] = left;
    }
  }

  return { apply };
}
