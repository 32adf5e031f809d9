// Writes the take set to a folder: half an hour of sound in 108 files. Nothing of it is kept in git.

import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { formatWav } from '#sound';
import { makeTake } from './make-take.ts';
import { type BankName, openBank, type SampledVoice } from './sampled.ts';
import { listTakes, type TakePlan } from './take-list.ts';

/** Renders every take whose id contains `only`; `tell` hears of each. */
export async function writeTakes(
  dir: string,
  only = '',
  tell: (plan: TakePlan, notes: number, seconds: number) => void = () => {},
): Promise<void> {
  mkdirSync(dir, { recursive: true });
  const banks = new Map<string, Promise<SampledVoice>>();
  const bankAt = (name: BankName, sampleRate: number) => {
    const key = `${name} ${sampleRate}`;
    const open = banks.get(key) ?? openBank(name, sampleRate);
    banks.set(key, open);
    return open;
  };
  for (const plan of listTakes()) {
    if (!plan.id.includes(only)) continue;
    const { sound, truth } = await makeTake(plan, bankAt);
    writeFileSync(join(dir, `${plan.id}.wav`), formatWav([sound], plan.sampleRate));
    writeFileSync(join(dir, `${plan.id}.json`), JSON.stringify(truth));
    tell(plan, truth.truth.notes.length, truth.seconds);
  }
}
