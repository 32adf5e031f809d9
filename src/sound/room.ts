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

/** Adds a room to sound that comes piece by piece, in place. */
export interface Room {
  /** The first `length` samples. */
  process(left: Float32Array, right: Float32Array, length: number): void;
}

/** `wet` is the room's share, 0 to 1. */
export function createRoom(sampleRate: number, wet: number): Room {
  const [near, far] = [createSide(sampleRate, 0, wet), createSide(sampleRate, wider, wet)];
  let dry = new Float32Array(0);
  return {
    process(left, right, length) {
      if (dry.length < length) dry = new Float32Array(length);
      for (let at = 0; at < length; at++) dry[at] = ((left[at] ?? 0) + (right[at] ?? 0)) / 2;
      near(dry, left, length);
      far(dry, right, length);
    },
  };
}

/** A line of delay, written where it has just been read. */
interface Line {
  readonly held: Float64Array;
  at: number;
}

interface Comb extends Line {
  /** What is left of a sound each time round. */
  readonly feedback: number;
  /** The last sound out, its high tones taken away. */
  dull: number;
}

/**
 * Adds the echoes of a dry sound to one side. All lines are gone through in one pass, as far as the first of them begins
 * anew, and written out one by one: with a pass for each, the room took two fifths of what playing a track costs.
 */
function createSide(
  sampleRate: number,
  more: number,
  wet: number,
): (dry: Float32Array, side: Float32Array, length: number) => void {
  const scaled = (delay: number) => Math.round(((delay + more) * sampleRate) / 44_100);
  const createLine = (delay: number): Line => ({ held: new Float64Array(scaled(delay)), at: 0 });
  const createComb = (delay: number): Comb => ({
    ...createLine(delay),
    feedback: 10 ** ((-3 * scaled(delay)) / (decay * sampleRate)),
    dull: 0,
  });
  const a = createComb(combDelays[0]);
  const b = createComb(combDelays[1]);
  const c = createComb(combDelays[2]);
  const d = createComb(combDelays[3]);
  const p = createLine(allPassDelays[0]);
  const q = createLine(allPassDelays[1]);
  const lines = [a, b, c, d, p, q];
  const bright = 1 - dullness;
  const part = (dry: Float32Array, side: Float32Array, from: number, to: number) => {
    const { held: heldA, feedback: backA } = a;
    const { held: heldB, feedback: backB } = b;
    const { held: heldC, feedback: backC } = c;
    const { held: heldD, feedback: backD } = d;
    const { held: heldP } = p;
    const { held: heldQ } = q;
    let { at: atA, dull: dullA } = a;
    let { at: atB, dull: dullB } = b;
    let { at: atC, dull: dullC } = c;
    let { at: atD, dull: dullD } = d;
    let { at: atP } = p;
    let { at: atQ } = q;
    for (let n = from; n < to; n++) {
      const sample = dry[n] ?? 0;
      const outA = heldA[atA] ?? 0;
      const outB = heldB[atB] ?? 0;
      const outC = heldC[atC] ?? 0;
      const outD = heldD[atD] ?? 0;
      dullA = outA * bright + dullA * dullness;
      dullB = outB * bright + dullB * dullness;
      dullC = outC * bright + dullC * dullness;
      dullD = outD * bright + dullD * dullness;
      heldA[atA++] = sample + dullA * backA;
      heldB[atB++] = sample + dullB * backB;
      heldC[atC++] = sample + dullC * backC;
      heldD[atD++] = sample + dullD * backD;
      const echo = (outA + outB + outC + outD) / combDelays.length;
      const outP = heldP[atP] ?? 0;
      heldP[atP++] = echo + outP / 2;
      const smeared = outP - echo / 2;
      const outQ = heldQ[atQ] ?? 0;
      heldQ[atQ++] = smeared + outQ / 2;
      side[n] = (side[n] ?? 0) + wet * (outQ - smeared / 2);
    }
    a.dull = dullA;
    b.dull = dullB;
    c.dull = dullC;
    d.dull = dullD;
    for (const line of lines) line.at = (line.at + to - from) % line.held.length;
  };
  return (dry, side, length) => {
    for (let from = 0; from < length; ) {
      let to = length;
      for (const { held, at } of lines) to = Math.min(to, from + held.length - at);
      part(dry, side, from, to);
      from = to;
    }
  };
}
