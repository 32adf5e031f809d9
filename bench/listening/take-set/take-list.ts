// Which takes there are: nine groups, a dozen each, half for development and half kept apart for judging, half sampled
// and half computed. The kept half has its own seeds, and most of its sampled takes come from another bank.

import { createSeededRandom, present, randomInteger } from '#core';
import { type TakeInstrument, takeInstruments } from './instruments.data.ts';
import { type Group, groups } from './performance.ts';
import type { BankName } from './sampled.ts';

export type Split = 'dev' | 'held';

export interface TakePlan {
  readonly id: string;
  readonly split: Split;
  readonly group: Group;
  readonly sound: BankName | 'computed';
  readonly instrument: TakeInstrument;
  readonly tempo: number;
  readonly sampleRate: number;
  readonly room: { readonly seconds: number; readonly wet: number } | null;
  readonly seed: number;
}

const perSplit = 6;
// A voice, a bow and a string bass do not speak fast enough for semiquavers at 150; a plucked string has no vibrato to speak of.
const unfit: Partial<Record<Group, readonly string[]>> = {
  fast: ['voice_mezzo', 'cello', 'double_bass', 'trombone'],
  hard: ['voice_mezzo', 'cello', 'double_bass', 'trombone'],
  vibrato: ['piano', 'double_bass'],
  legato: ['piano', 'double_bass'],
};

/** All takes, in a fixed order. */
export function listTakes(): readonly TakePlan[] {
  const plans: TakePlan[] = [];
  for (const [s, split] of (['dev', 'held'] as const).entries())
    for (const [g, group] of groups.entries()) {
      const fit = takeInstruments.filter((i) => !unfit[group]?.includes(i.id));
      for (let n = 0; n < perSplit; n++) {
        const seed = 1000 * (s * 7 + 1) + 100 * g + n;
        const random = createSeededRandom(seed);
        const bank = split === 'held' && n % 3 !== 0 ? 'MuseScore_General_Lite' : 'FluidR3Mono_GM';
        const sound = n % 2 === 0 ? bank : 'computed';
        plans.push({
          id: `${split}-${group}-${n}`,
          split,
          group,
          sound,
          instrument: present(fit[(g * 5 + n * 7 + s * 4) % fit.length], 'an instrument'),
          tempo:
            group === 'hard'
              ? randomInteger(random, 140, 185)
              : group === 'fast'
                ? randomInteger(random, 120, 168)
                : randomInteger(random, 60, 200),
          sampleRate: random.next() < 0.25 ? 48000 : 44100,
          room:
            random.next() < 0.45
              ? { seconds: 0.25 + random.next() * 0.5, wet: -14 + random.next() * 7 }
              : null,
          seed,
        });
      }
    }
  return plans;
}
