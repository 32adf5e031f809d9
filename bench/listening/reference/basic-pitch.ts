// @spotify/basic-pitch (Apache-2.0) with the weights inside its own package, on TensorFlow.js' WebAssembly backend (the
// plain JavaScript one gives the same notes eight times slower).

import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Listener } from '../score-table.ts';
import { midiToFrequency } from '../score-table.ts';
import { findReference, requireReference } from './load-reference.ts';

interface Kernel {
  readonly kernelName: string;
  readonly backendName: string;
  readonly kernelFunc: (call: { attrs: Record<string, unknown> }) => unknown;
}
interface TensorFlow {
  readonly io: { fromMemory(model: object): unknown };
  loadGraphModel(from: unknown): Promise<unknown>;
  setBackend(name: string): Promise<boolean>;
  ready(): Promise<void>;
  getKernel(name: string, backend: string): Kernel;
  unregisterKernel(name: string, backend: string): void;
  registerKernel(kernel: Kernel): void;
}
interface NoteTime {
  readonly startTimeSeconds: number;
  readonly durationSeconds: number;
  readonly pitchMidi: number;
  readonly amplitude: number;
}
interface BasicPitchPackage {
  readonly BasicPitch: new (
    model: Promise<unknown>,
  ) => {
    evaluateModel(
      samples: Float32Array,
      onFrames: (frames: number[][], onsets: number[][], contours: number[][]) => void,
      onProgress: (share: number) => void,
    ): Promise<void>;
  };
  outputToNotesPoly(
    frames: number[][],
    onsets: number[][],
    onset: number,
    frame: number,
    least: number,
  ): unknown[];
  noteFramesToTime(notes: unknown[]): NoteTime[];
}

/** Null when it is not installed. */
export async function basicPitch(onset = 0.5, frame = 0.3, least = 5): Promise<Listener | null> {
  const path = findReference('@spotify/basic-pitch');
  const wasm = findReference('@tensorflow/tfjs-backend-wasm');
  if (path === null || wasm === null) return null;
  const tf = requireReference<TensorFlow>('@tensorflow/tfjs');
  const backend = requireReference<{ setWasmPaths(folder: string): void }>('@tensorflow/tfjs-backend-wasm');
  backend.setWasmPaths(`${dirname(wasm)}/`);
  await tf.setBackend('wasm');
  await tf.ready();
  // the model fills a tensor without saying its type, which this backend does not forgive
  const fill = tf.getKernel('Fill', 'wasm');
  tf.unregisterKernel('Fill', 'wasm');
  tf.registerKernel({
    ...fill,
    kernelFunc: (call) =>
      fill.kernelFunc({ ...call, attrs: { ...call.attrs, dtype: call.attrs['dtype'] ?? 'float32' } }),
  });
  const lib = requireReference<BasicPitchPackage>('@spotify/basic-pitch');
  const folder = join(dirname(path), '..', 'model');
  const model = JSON.parse(readFileSync(join(folder, 'model.json'), 'utf8')) as {
    modelTopology: object;
    format: string;
    weightsManifest: { weights: object }[];
  };
  const weights = readFileSync(join(folder, 'group1-shard1of1.bin'));
  const graph = tf.loadGraphModel(
    tf.io.fromMemory({
      modelTopology: model.modelTopology,
      format: model.format,
      weightSpecs: model.weightsManifest[0]?.weights,
      weightData: weights.buffer.slice(weights.byteOffset, weights.byteOffset + weights.byteLength),
    }),
  );
  const program = new lib.BasicPitch(graph);
  return {
    name: 'basic-pitch',
    async hear(samples, rate, _context) {
      const frames: number[][] = [];
      const onsets: number[][] = [];
      await program.evaluateModel(
        resample(samples, rate, 22050),
        (f, o) => {
          frames.push(...f);
          onsets.push(...o);
        },
        () => {},
      );
      const notes = lib.noteFramesToTime(lib.outputToNotesPoly(frames, onsets, onset, frame, least));
      return {
        notes: notes.map((n) => ({
          onset: n.startTimeSeconds,
          offset: n.startTimeSeconds + n.durationSeconds,
          hz: midiToFrequency(n.pitchMidi),
        })),
        pitchAt(seconds) {
          const sounding = notes.filter(
            (n) => n.startTimeSeconds <= seconds && seconds < n.startTimeSeconds + n.durationSeconds,
          );
          const loudest = sounding.sort((a, b) => b.amplitude - a.amplitude)[0];
          return loudest?.pitchMidi ?? null;
        },
      };
    },
  };
}

/** Windowed-sinc resampling (Hann, 32 zero crossings). */
function resample(samples: Float32Array, from: number, to: number): Float32Array {
  const ratio = from / to;
  const out = new Float32Array(Math.floor(samples.length / ratio));
  const cut = Math.min(1, to / from);
  const half = 16 / cut;
  for (let i = 0; i < out.length; i++) {
    const centre = i * ratio;
    let sum = 0;
    for (let k = Math.ceil(centre - half); k <= centre + half; k++) {
      const x = k - centre;
      const sinc = x === 0 ? 1 : Math.sin(Math.PI * x * cut) / (Math.PI * x * cut);
      sum += (samples[k] ?? 0) * cut * sinc * (0.5 + 0.5 * Math.cos((Math.PI * x) / half));
    }
    out[i] = sum;
  }
  return out;
}
