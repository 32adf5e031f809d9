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
      // how a caller cuts the track, give the same sound for every cut.
      let made: StereoSound = { left: new Float32Array(0), right: new Float32Array(0), sampleRate };
      const makeStep = (): StereoSound => {
        for (const event of events.until(at)) {
          if (event.on) synth.noteOn(event.channel, event.midi, event.velocity);
          else synth.noteOff(event.channel, event.midi);
        }
        const event = events.peek();
        const step = Math.min(length - at, block, event === undefined ? block : event.at - at);
        const left = new Float32Array(step);
        const right = new Float32Array(step);
        synth.process(left, right, 0, step);
        room.process(left, right);
        at += step;
        return { left, right, sampleRate };
      };
      let given = 0;
      return {
        length,
        next(samples) {
          const count = Math.max(0, Math.min(samples, length - given));
          const left = new Float32Array(count);
          const right = new Float32Array(count);
          for (let done = 0; done < count; ) {
            if (made.left.length === 0) made = makeStep();
            const taken = Math.min(count - done, made.left.length);
            left.set(made.left.subarray(0, taken), done);
            right.set(made.right.subarray(0, taken), done);
            made = { left: made.left.subarray(taken), right: made.right.subarray(taken), sampleRate };
            done += taken;
          }
          given += count;
          return { left, right, sampleRate };
        },
      };
    },
  };
}

interface Events {
  /** What is due at a sample or before, taken out. */
  until(sample: number): readonly Event[];
  /** What comes next, left in. */
  peek(): Event | undefined;
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
    until(now) {
      if (loop !== null) goRound(loop, now);
      const from = next;
      while ((queue[next]?.at ?? Number.POSITIVE_INFINITY) <= now) next++;
      return queue.slice(from, next);
    },
    peek: () => queue[next],
  };
}
