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
  const [near, far] = [createSide(sampleRate, 0), createSide(sampleRate, wider)];
  return {
    process(left, right) {
      const dry = left.map((sample, at) => (sample + (right[at] ?? 0)) / 2);
      const [echoLeft, echoRight] = [near(dry), far(dry)];
      for (let at = 0; at < left.length; at++) {
        left[at] = (left[at] ?? 0) + wet * (echoLeft[at] ?? 0);
        right[at] = (right[at] ?? 0) + wet * (echoRight[at] ?? 0);
      }
    },
  };
}

type Reverberator = (dry: Float32Array) => Float32Array;

function createSide(sampleRate: number, more: number): Reverberator {
  const scaled = (delay: number) => Math.round(((delay + more) * sampleRate) / 44_100);
  const combs = combDelays.map((delay) => createComb(scaled(delay), sampleRate));
  const allPasses = allPassDelays.map((delay) => createAllPass(scaled(delay)));
  return (dry) => {
    const sum = new Float32Array(dry.length);
    for (const add of combs) add(dry, sum);
    for (const pass of allPasses) pass(sum);
    return sum;
  };
}

/** Adds its echoes to a sum. */
function createComb(delay: number, sampleRate: number): (dry: Float32Array, sum: Float32Array) => void {
  const line = new Float64Array(delay);
  const feedback = 10 ** ((-3 * delay) / (decay * sampleRate));
  let at = 0;
  let dull = 0;
  return (dry, sum) => {
    for (let n = 0; n < dry.length; n++) {
      const out = line[at] ?? 0;
      dull = out * (1 - dullness) + dull * dullness;
      line[at] = (dry[n] ?? 0) + dull * feedback;
      sum[n] = (sum[n] ?? 0) + out / combDelays.length;
      at = at + 1 === delay ? 0 : at + 1;
    }
  };
}

/** Smears what it is given, in place. */
function createAllPass(delay: number): (samples: Float32Array) => void {
  const line = new Float64Array(delay);
  let at = 0;
  return (samples) => {
    for (let n = 0; n < samples.length; n++) {
      const held = line[at] ?? 0;
      const sample = samples[n] ?? 0;
      line[at] = sample + held / 2;
      samples[n] = held - sample / 2;
      at = at + 1 === delay ? 0 : at + 1;
    }
  };
}
