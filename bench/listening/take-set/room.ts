// What a room and a microphone add: reflections, noise, hum, level.

import { type Random, randomNormal } from '#core';

/** Adds a room: a few early reflections and eight damped combs (Schroeder 1962). `wet` in dB beside the dry sound. */
export function addRoom(
  dry: Float32Array,
  sampleRate: number,
  seconds: number,
  wet: number,
  random: Random,
): Float32Array {
  const out = Float32Array.from(dry);
  const late = new Float32Array(dry.length);
  for (let c = 0; c < 8; c++) {
    const delay = Math.round(sampleRate * (0.023 + 0.0031 * c + random.next() * 0.006));
    const feedback = 10 ** ((-3 * delay) / (seconds * sampleRate));
    const ring = new Float32Array(delay);
    let damped = 0;
    for (let i = 0, k = 0; i < dry.length; i++, k = (k + 1) % delay) {
      const y = ring[k] ?? 0;
      damped += 0.6 * (y - damped);
      ring[k] = (dry[i] ?? 0) + damped * feedback;
      late[i] = (late[i] ?? 0) + (c % 2 === 0 ? y : -y);
    }
  }
  for (let e = 0; e < 6; e++) {
    const delay = Math.round(sampleRate * (0.004 + random.next() * 0.02));
    const gain = (random.next() - 0.3) * 2;
    for (let i = delay; i < dry.length; i++) late[i] = (late[i] ?? 0) + gain * (dry[i - delay] ?? 0);
  }
  const gain = 10 ** (wet / 20) * Math.sqrt(power(dry) / (power(late) + 1e-20));
  for (let i = 0; i < out.length; i++) out[i] = (out[i] ?? 0) + gain * (late[i] ?? 0);
  return out;
}

export function power(sound: Float32Array): number {
  let sum = 0;
  for (const x of sound) sum += x * x;
  return sum / Math.max(1, sound.length);
}

/** Mean power of the loudest half of the 50 ms frames: the level of the playing, not of the rests. */
export function activePower(sound: Float32Array, sampleRate: number): number {
  const size = Math.round(sampleRate * 0.05);
  const frames: number[] = [];
  for (let at = 0; at + size <= sound.length; at += size) frames.push(power(sound.subarray(at, at + size)));
  frames.sort((a, b) => b - a);
  const half = frames.slice(0, Math.ceil(frames.length / 2));
  return half.reduce((a, b) => a + b, 0) / Math.max(1, half.length);
}

/** Noise of a room: white, fan-like (low) and mains hum in drawn shares, with the given mean power. */
export function roomNoise(
  length: number,
  sampleRate: number,
  meanPower: number,
  random: Random,
): Float32Array {
  const out = new Float32Array(length);
  const shares = [random.next(), random.next() * 0.7, random.next() < 0.5 ? random.next() * 0.3 : 0] as const;
  const hum = random.next() < 0.5 ? 50 : 60;
  let low = 0;
  let mid = 0;
  for (let i = 0; i < length; i++) {
    const white = randomNormal(random);
    low = 0.99 * low + 0.1 * white;
    mid += 0.3 * (white - mid);
    const t = (2 * Math.PI * hum * i) / sampleRate;
    out[i] = shares[0] * mid * 2 + shares[1] * low * 1.4 + shares[2] * (Math.sin(t) + 0.5 * Math.sin(3 * t));
  }
  const gain = Math.sqrt(meanPower / (power(out) + 1e-20));
  for (let i = 0; i < length; i++) out[i] = (out[i] ?? 0) * gain;
  return out;
}

/** Adds `other` times `gain` in place. */
export function mix(into: Float32Array, other: Float32Array, at = 0, gain = 1): void {
  const to = Math.min(into.length, at + other.length);
  for (let i = Math.max(0, at); i < to; i++) into[i] = (into[i] ?? 0) + gain * (other[i - at] ?? 0);
}
