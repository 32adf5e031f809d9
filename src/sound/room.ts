// A small room around the band. Combs with a dull tail into all-passes, after Schroeder (1962, J. Audio Eng. Soc. 10(3));
// delays of mutually prime length as in public implementations of it, from memory. Nothing in it sways, so every time
// round a loop sounds as the one before.

/** Delays in samples at 44.1 kHz; the right side's are a little longer, which makes the room wide. */
const combDelays = [1116, 1277, 1422, 1557] as const;
const allPassDelays = [556, 225] as const;
const wider = 23;
/** Seconds until a sound is a thousandth of itself, and how fast its high tones go. */
const decay = 0.9;
const dullness = 0.35;

/** Adds a room to sound that comes piece by piece, in place. `wet` is its share, 0 to 1. */
export interface Room {
  process(left: Float32Array, right: Float32Array): void;
}

export function createRoom(sampleRate: number, wet: number): Room {
  const sides = [0, wider].map((more) => createSide(sampleRate, more));
  return {
    process(left, right) {
      for (let at = 0; at < left.length; at++) {
        const dry = ((left[at] ?? 0) + (right[at] ?? 0)) / 2;
        left[at] = (left[at] ?? 0) + wet * (sides[0]?.(dry) ?? 0);
        right[at] = (right[at] ?? 0) + wet * (sides[1]?.(dry) ?? 0);
      }
    },
  };
}

function createSide(sampleRate: number, more: number): (sample: number) => number {
  const scaled = (delay: number) => Math.round(((delay + more) * sampleRate) / 44_100);
  const combs = combDelays.map((delay) => createComb(scaled(delay), sampleRate));
  const allPasses = allPassDelays.map((delay) => createAllPass(scaled(delay)));
  return (sample) => {
    let sum = 0;
    for (const comb of combs) sum += comb(sample);
    let out = sum / combs.length;
    for (const pass of allPasses) out = pass(out);
    return out;
  };
}

function createComb(delay: number, sampleRate: number): (sample: number) => number {
  const line = new Float64Array(delay);
  const feedback = 10 ** ((-3 * delay) / (decay * sampleRate));
  let at = 0;
  let dull = 0;
  return (sample) => {
    const out = line[at] ?? 0;
    dull = out * (1 - dullness) + dull * dullness;
    line[at] = sample + dull * feedback;
    at = at + 1 === delay ? 0 : at + 1;
    return out;
  };
}

function createAllPass(delay: number): (sample: number) => number {
  const line = new Float64Array(delay);
  let at = 0;
  return (sample) => {
    const held = line[at] ?? 0;
    line[at] = sample + held / 2;
    at = at + 1 === delay ? 0 : at + 1;
    return held - sample / 2;
  };
}
