// A click on the audio clock: short tones, the first of a bar higher. Scheduled ahead, so that a busy page does not make it
// stumble.

import type { Company } from './company.ts';

const ahead = 0.25;
const beatHertz = 1000;
const barHertz = 1500;

/** Starts clicking shortly; counts in, then goes on or falls silent. */
export function startClick(
  clock: AudioContext,
  {
    tempo,
    beats,
    countInBars,
    goesOn,
  }: { tempo: number; beats: number; countInBars: number; goesOn: boolean },
): Company {
  const beat = 60 / tempo;
  const begin = clock.currentTime + 0.3;
  const countIn = countInBars * beats;
  const out = clock.createGain();
  out.gain.value = 0.5;
  out.connect(clock.destination);
  let next = 0;
  const schedule = () => {
    while (begin + next * beat < clock.currentTime + ahead) {
      if (next < countIn || goesOn)
        tick(clock, out, begin + next * beat, next % beats === 0 ? barHertz : beatHertz);
      next++;
    }
  };
  schedule();
  const timer = setInterval(schedule, 60);
  return {
    barOneAt: () => begin + countIn * beat,
    stop() {
      clearInterval(timer);
      out.disconnect();
    },
  };
}

/** One click. */
export function tick(clock: AudioContext, out: AudioNode, at: number, hertz: number): void {
  const tone = clock.createOscillator();
  const envelope = clock.createGain();
  tone.frequency.value = hertz;
  envelope.gain.setValueAtTime(0, at);
  envelope.gain.linearRampToValueAtTime(1, at + 0.001);
  envelope.gain.exponentialRampToValueAtTime(0.001, at + 0.04);
  tone.connect(envelope).connect(out);
  tone.start(at);
  tone.stop(at + 0.05);
}
