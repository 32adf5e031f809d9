// How late a click from the loudspeaker is in the recording: played five times, found again in the microphone's samples.
// The same lateness lies in everything that is played to the click, so it is taken off a take's grid.

import { tick } from './click.ts';
import type { Microphone, RecordedTake } from './recorder.ts';

const clicks = 5;
const spacing = 0.4;
const longest = 0.35;
const hertz = 2000;

/** Seconds from a click's place in the clock to its sound in the recording; null when it was not heard clearly enough. */
export async function measureLatency(microphone: Microphone): Promise<number | null> {
  const { clock } = microphone;
  const hand = microphone.record();
  const out = clock.createGain();
  out.gain.value = 0.8;
  out.connect(clock.destination);
  const begin = clock.currentTime + 0.3;
  for (let i = 0; i < clicks; i++) tick(clock, out, begin + i * spacing, hertz);
  await new Promise((done) => setTimeout(done, (0.3 + clicks * spacing + longest) * 1000));
  const take = await hand.stop();
  out.disconnect();
  return findLatency(
    take,
    Array.from({ length: clicks }, (_, i) => begin + i * spacing),
  );
}

/**
 * The median lateness of clicks known to have been played at `times`. Null when fewer than four of five stand out of what
 * sounds before them, or when they do not agree within 10 ms.
 */
export function findLatency(
  { samples, sampleRate, startedAt }: Omit<RecordedTake, 'sound'>,
  times: readonly number[],
): number | null {
  const found: number[] = [];
  for (const time of times) {
    const from = Math.round((time - startedAt) * sampleRate);
    const before = loudestOf(samples, from - Math.round(0.03 * sampleRate), from);
    const to = from + Math.round(longest * sampleRate);
    const peak = loudestOf(samples, from, to);
    if (peak < 0.01 || peak < 4 * before) continue;
    for (let i = Math.max(0, from); i < Math.min(to, samples.length); i++)
      if (Math.abs(samples[i] ?? 0) > peak / 4) {
        found.push((i - from) / sampleRate);
        break;
      }
  }
  if (found.length < times.length - 1) return null;
  const sorted = [...found].sort((a, b) => a - b);
  const middle = sorted[Math.floor(sorted.length / 2)] ?? 0;
  return found.every((late) => Math.abs(late - middle) < 0.01) ? middle : null;
}

function loudestOf(samples: Float32Array, from: number, to: number): number {
  let loudest = 0;
  for (let i = Math.max(0, from); i < Math.min(to, samples.length); i++)
    loudest = Math.max(loudest, Math.abs(samples[i] ?? 0));
  return loudest;
}
