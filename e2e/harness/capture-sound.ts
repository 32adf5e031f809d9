// What a page plays, sample by sample, by two recorders on the audio thread, which a busy page cannot hold up. One hears what
// goes to the loudspeaker through a MediaStreamDestination, as a recording of a call would; the other straight from the node.
// A stream of media has a clock and a queue of its own: on an overloaded machine it loses moments that the page has played.

import type { Page } from 'playwright-core';

const recorder = `
registerProcessor('levare-recorder', class extends AudioWorkletProcessor {
  process([input]) {
    const samples = input[0] ?? new Float32Array(128);
    this.port.postMessage({ frame: currentFrame, samples: samples.slice() });
    return true;
  }
});`;

interface Piece {
  readonly frame: number;
  readonly samples: Float32Array;
}

declare global {
  interface Window {
    levareSound?: {
      readonly context: AudioContext;
      readonly pieces: Piece[];
      readonly straight: Piece[];
      /** The context's time at each press of the pointer. */
      readonly presses: number[];
    };
  }
}

/** Call before the page is opened, in a context with `bypassCSP`: the recorder is a script that the page did not bring. */
export async function captureSound(page: Page): Promise<void> {
  await page.addInitScript((script) => {
    // Only node to node is looked at; to a parameter goes on as it came.
    const connect = AudioNode.prototype.connect as (this: AudioNode, to: AudioNode) => AudioNode;
    const patched = function (this: AudioNode, ...args: [AudioNode]) {
      const [to] = args;
      if (to instanceof AudioDestinationNode && this.context instanceof AudioContext && !window.levareSound) {
        const { context } = this;
        const sound = {
          context,
          pieces: [] as Piece[],
          straight: [] as Piece[],
          presses: [] as number[],
        };
        window.levareSound = sound;
        addEventListener(
          'pointerdown',
          () => {
            sound.presses.push(context.currentTime);
          },
          true,
        );
        const stream = context.createMediaStreamDestination();
        connect.call(this, stream);
        const address = URL.createObjectURL(new Blob([script], { type: 'text/javascript' }));
        context.audioWorklet.addModule(address).then(() => {
          const record = (from: AudioNode, pieces: Piece[]) => {
            const node = new AudioWorkletNode(context, 'levare-recorder', { numberOfOutputs: 0 });
            node.port.onmessage = ({ data }) => pieces.push(data);
            connect.call(from, node);
          };
          record(context.createMediaStreamSource(stream.stream), sound.pieces);
          record(this, sound.straight);
        });
      }
      return connect.apply(this, args);
    };
    AudioNode.prototype.connect = patched as typeof AudioNode.prototype.connect;
  }, recorder);
}

export interface Recorded {
  /** From the context's frame `from` on; frames that no recorder was called for are silent, and counted in `missing`. */
  readonly samples: Float32Array;
  readonly from: number;
  readonly missing: number;
}

export interface Captured extends Recorded {
  readonly sampleRate: number;
  /** Straight from the node. */
  readonly straight: Recorded;
  /** The frames in which the pointer was pressed so far. */
  readonly presses: readonly number[];
}

/** What has been recorded; the recorders begin anew. */
export async function takeCaptured(page: Page): Promise<Captured> {
  const found = await page.evaluate(() => {
    const sound = window.levareSound;
    if (sound === undefined) throw new Error('nothing has been connected to the loudspeaker');
    const take = (all: Piece[]) => {
      const pieces = all.splice(0);
      const from = pieces[0]?.frame ?? 0;
      const last = pieces.at(-1);
      const samples = new Int16Array(last === undefined ? 0 : last.frame + last.samples.length - from);
      let recorded = 0;
      for (const piece of pieces) {
        recorded += piece.samples.length;
        piece.samples.forEach((sample, at) => {
          samples[piece.frame - from + at] = Math.round(Math.max(-1, Math.min(1, sample)) * 32767);
        });
      }
      let text = '';
      const bytes = new Uint8Array(samples.buffer);
      for (let at = 0; at < bytes.length; at += 0x8000)
        text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
      return { from, missing: samples.length - recorded, text: btoa(text) };
    };
    const { sampleRate } = sound.context;
    return {
      sampleRate,
      stream: take(sound.pieces),
      straight: take(sound.straight),
      presses: sound.presses.map((time) => Math.round(time * sampleRate)),
    };
  });
  const { sampleRate, presses, stream, straight } = found;
  return { sampleRate, presses, ...asRecorded(stream), straight: asRecorded(straight) };
}

function asRecorded({ from, missing, text }: { from: number; missing: number; text: string }): Recorded {
  const bytes = Buffer.from(text, 'base64');
  const samples = Float32Array.from(
    { length: bytes.length / 2 },
    (_, at) => bytes.readInt16LE(2 * at) / 32_767,
  );
  return { from, missing, samples };
}
