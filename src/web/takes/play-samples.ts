// Hearing a take, or a passage of it.

import type { Samples } from './decode-sound.ts';

export interface SamplePlayer {
  /** Plays from one moment to another, in seconds; whatever sounded stops. `onAt` tells where it is, null at the end. */
  play(from: number, to: number, onAt?: (seconds: number | null) => void): void;
  stop(): void;
  close(): void;
}

/** A player of some samples. */
export function createSamplePlayer({ samples, sampleRate }: Samples): SamplePlayer {
  let clock: AudioContext | null = null;
  let sounding: { stop(): void } | null = null;
  const stop = () => {
    sounding?.stop();
    sounding = null;
  };
  return {
    play(from, to, onAt = () => {}) {
      stop();
      clock ??= new AudioContext();
      const buffer = clock.createBuffer(1, Math.max(1, samples.length), sampleRate);
      buffer.copyToChannel(samples, 0);
      const source = clock.createBufferSource();
      source.buffer = buffer;
      source.connect(clock.destination);
      const begun = clock.currentTime;
      const at = clock;
      let frame = 0;
      const follow = () => {
        onAt(from + at.currentTime - begun);
        frame = requestAnimationFrame(follow);
      };
      const end = () => {
        cancelAnimationFrame(frame);
        onAt(null);
      };
      source.onended = end;
      source.start(0, Math.max(0, from), Math.max(0.05, to - from));
      follow();
      sounding = {
        stop() {
          source.onended = null;
          source.stop();
          end();
        },
      };
    },
    stop,
    close() {
      stop();
      void clock?.close();
      clock = null;
    },
  };
}
