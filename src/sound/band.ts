// Plays arrangements with sampled instruments. The same code runs in Node, in the page and in a worker; each note starts
// on the very sample of its tick, however the track is cut into pieces.

import { SoundBankLoader, SpessaSynthProcessor } from 'spessasynth_core';
import type { Arrangement } from '#music';
import { copyOf } from './band-bank.ts';
import { createRoom } from './room.ts';
import { createTimeMap } from './time-map.ts';

export interface StereoSound {
  readonly left: Float32Array;
  readonly right: Float32Array;
  readonly sampleRate: number;
}

/** A track being played, piece by piece. */
export interface BandTrack {
  /** Samples in all, the last notes rung out; endless for a loop. */
  readonly length: number;
  /** The next samples, as many as asked or as there are left; empty at the end. */
  next(samples: number): StereoSound;
}

/** Ticks of the arrangement, the second one not included. */
export interface Loop {
  readonly from: number;
  readonly to: number;
}

export interface Band {
  /**
   * Begins a track. The same arrangement gives the same samples. With a loop it goes on from `to` at `from`, again and
   * again, in one breath: what rings at the end rings on into the beginning, and every time round is as long.
   */
  play(arrangement: Arrangement, loop?: Loop): Promise<BandTrack>;
  readonly sampleRate: number;
}

/** Seconds for the last notes to ring. */
const ringing = 2;
/** How much of the room is heard. */
const wet = 0.16;
/** The synthesiser's own step; longer ones are cut into these. */
const block = 128;
/** Notes that ring at once, far more than a band has: 53 at most were counted in eleven feels at 40 and 320 beats a minute. */
const mostVoices = 128;

interface Event {
  readonly at: number;
  readonly on: boolean;
  readonly channel: number;
  readonly midi: number;
  readonly velocity: number;
}

/** Opens a bank (`trimToBand`) at a sample rate in Hz, 22 050 to 96 000. */
export function createBand(bank: Uint8Array, sampleRate: number): Band {
  const sounds = SoundBankLoader.fromArrayBuffer(copyOf(bank));
  return {
    sampleRate,
    async play(arrangement, loop) {
      // A new one for each track: the tails of reverberation of another would be heard in it.
      const synth = new SpessaSynthProcessor(sampleRate, { eventsEnabled: false });
      await synth.processorInitialized;
      // Its chorus and reverberation sway slowly, so that each time round a loop would be another; the room stands still.
      synth.setSystemParameter('effectsEnabled', false);
      // It looks at every voice in every step, sounding or not.
      synth.setSystemParameter('voiceCap', mostVoices);
      const room = createRoom(sampleRate, wet);
      synth.soundBankManager.addSoundBank(sounds, 'band');
      for (const { channel, program } of arrangement.parts) synth.programChange(channel, program);
      const events = createEvents(arrangement, sampleRate, loop ?? null);
      const length =
        loop === undefined
          ? Math.ceil((createTimeMap(arrangement)(arrangement.end) + ringing) * sampleRate)
          : Number.POSITIVE_INFINITY;
      let at = 0;
      // The synthesiser's envelopes move in steps of what it is asked for. Steps that hang on the events alone, and not on
      // how a caller cuts the track, give the same sound for every cut. One step is made at a time and given out in parts.
      const [stepLeft, stepRight] = [new Float32Array(block), new Float32Array(block)];
      let [taken, made] = [0, 0];
      const makeStep = () => {
        let event = events.next(at);
        for (; event !== undefined && event.at <= at; event = events.next(at)) {
          if (event.on) synth.noteOn(event.channel, event.midi, event.velocity);
          else synth.noteOff(event.channel, event.midi);
          events.take();
        }
        const step = Math.min(length - at, block, event === undefined ? block : event.at - at);
        stepLeft.fill(0, 0, step);
        stepRight.fill(0, 0, step);
        synth.process(stepLeft, stepRight, 0, step);
        room.process(stepLeft, stepRight, step);
        at += step;
        [taken, made] = [0, step];
      };
      let given = 0;
      return {
        length,
        next(samples) {
          const count = Math.max(0, Math.min(samples, length - given));
          const left = new Float32Array(count);
          const right = new Float32Array(count);
          for (let done = 0; done < count; ) {
            if (taken === made) makeStep();
            const to = Math.min(count, done + made - taken);
            for (; done < to; done++, taken++) {
              left[done] = stepLeft[taken] ?? 0;
              right[done] = stepRight[taken] ?? 0;
            }
          }
          given += count;
          return { left, right, sampleRate };
        },
      };
    },
  };
}

interface Events {
  /** What comes next, left in; the sample that has been reached says when a loop has to go on. */
  next(sample: number): Event | undefined;
  /** Takes it out. */
  take(): void;
}

const inOrder = (a: Event, b: Event) =>
  a.at - b.at || Number(a.on) - Number(b.on) || a.channel - b.channel || a.midi - b.midi;

/** The strokes and releases of a track in order, those of a loop made anew for each time round. */
function createEvents(arrangement: Arrangement, sampleRate: number, loop: Loop | null): Events {
  const seconds = createTimeMap(arrangement);
  const sample = (tick: number) => Math.round(seconds(tick) * sampleRate);
  const notes = arrangement.parts.flatMap((part) =>
    part.notes.map((note) => ({ ...note, channel: part.channel })),
  );
  /** Events of the notes from one tick to before another, so many samples later. */
  const events = (from: number, to: number, later: number): readonly Event[] =>
    notes
      .filter((note) => note.tick >= from && note.tick < to)
      .flatMap(({ channel, tick, ticks, midi, velocity }): Event[] => [
        { at: sample(tick) + later, on: true, channel, midi, velocity },
        { at: sample(tick + ticks) + later, on: false, channel, midi, velocity },
      ]);
  let queue = events(0, loop?.to ?? Number.POSITIVE_INFINITY, 0).toSorted(inOrder);
  let next = 0;
  let times = 0;
  const goRound = ({ from, to }: Loop, now: number) => {
    const length = sample(to) - sample(from);
    if (now < sample(to) + times * length - sampleRate / 10) return;
    const again = events(from, to, ++times * length);
    // A note that rings on is let go where it is struck again.
    const struck = (off: Event) =>
      again.find((on) => on.on && on.channel === off.channel && on.midi === off.midi && on.at < off.at);
    const ringing = queue.slice(next).map((event) => {
      const restruck = event.on ? undefined : struck(event);
      return restruck === undefined ? event : { ...event, at: restruck.at };
    });
    queue = [...ringing, ...again].sort(inOrder);
    next = 0;
  };
  return {
    next(now) {
      if (loop !== null) goRound(loop, now);
      return queue[next];
    },
    take() {
      next++;
    },
  };
}
