// Plays arrangements with sampled instruments. The same code runs in Node, in the page and in a worker; each note starts
// on the very sample of its tick, however the track is cut into pieces.

import { SoundBankLoader, SpessaSynthProcessor } from 'spessasynth_core';
import type { Arrangement } from '#music';
import { copyOf } from './band-bank.ts';
import { createTimeMap } from './time-map.ts';

export interface StereoSound {
  readonly left: Float32Array;
  readonly right: Float32Array;
  readonly sampleRate: number;
}

/** A track being played, piece by piece. */
export interface BandTrack {
  /** Samples in all, the last notes rung out. */
  readonly length: number;
  /** The next samples, as many as asked or as there are left; empty at the end. */
  next(samples: number): StereoSound;
}

export interface Band {
  /** Begins a track. The same arrangement gives the same samples. */
  play(arrangement: Arrangement): Promise<BandTrack>;
  readonly sampleRate: number;
}

/** Seconds for the last notes to ring. */
const ringing = 2;
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
    async play(arrangement) {
      // A new one for each track: the tails of reverberation of another would be heard in it.
      const synth = new SpessaSynthProcessor(sampleRate, { eventsEnabled: false });
      await synth.processorInitialized;
      synth.soundBankManager.addSoundBank(sounds, 'band');
      for (const { channel, program } of arrangement.parts) synth.programChange(channel, program);
      const events = eventsOf(arrangement, sampleRate);
      const length = Math.ceil((createTimeMap(arrangement)(arrangement.end) + ringing) * sampleRate);
      let at = 0;
      let next = 0;
      // The synthesiser's envelopes move in steps of what it is asked for. Steps that hang on the events alone, and not on
      // how a caller cuts the track, give the same sound for every cut.
      let made: StereoSound = { left: new Float32Array(0), right: new Float32Array(0), sampleRate };
      const makeStep = (): StereoSound => {
        let event = events[next];
        while (event !== undefined && event.at <= at) {
          if (event.on) synth.noteOn(event.channel, event.midi, event.velocity);
          else synth.noteOff(event.channel, event.midi);
          event = events[++next];
        }
        const step = Math.min(length - at, block, event === undefined ? block : event.at - at);
        const left = new Float32Array(step);
        const right = new Float32Array(step);
        synth.process(left, right, 0, step);
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

function eventsOf(arrangement: Arrangement, sampleRate: number): readonly Event[] {
  const seconds = createTimeMap(arrangement);
  const sample = (tick: number) => Math.round(seconds(tick) * sampleRate);
  return arrangement.parts
    .flatMap(({ channel, notes }) =>
      notes.flatMap(({ tick, ticks, midi, velocity }): Event[] => [
        { at: sample(tick), on: true, channel, midi, velocity },
        { at: sample(tick + ticks), on: false, channel, midi, velocity },
      ]),
    )
    .sort((a, b) => a.at - b.at || Number(a.on) - Number(b.on) || a.channel - b.channel || a.midi - b.midi);
}
