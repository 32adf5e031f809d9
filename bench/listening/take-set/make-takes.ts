// Writes the take set: `npx tsx --conditions=levare-source bench/listening/take-set/make-takes.ts [--dir DIR] [--only TEXT]`.
// About 25 minutes of sound in 96 files; a few minutes of work. Nothing of it is kept in git.

import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { makeTake } from './make-take.ts';
import { type BankName, openBank, type SampledVoice } from './sampled.ts';
import { listTakes } from './take-list.ts';
import { formatWav } from './write-wav.ts';

const { values } = parseArgs({
  options: { dir: { type: 'string', default: '/tmp/d2/takes' }, only: { type: 'string', default: '' } },
});
mkdirSync(values.dir, { recursive: true });
const banks = new Map<string, Promise<SampledVoice>>();
const bankAt = (name: BankName, sampleRate: number) => {
  const key = `${name} ${sampleRate}`;
  const open = banks.get(key) ?? openBank(name, sampleRate);
  banks.set(key, open);
  return open;
};
for (const plan of listTakes()) {
  if (!plan.id.includes(values.only)) continue;
  const { sound, truth } = await makeTake(plan, bankAt);
  writeFileSync(join(values.dir, `${plan.id}.wav`), formatWav(sound, plan.sampleRate));
  writeFileSync(join(values.dir, `${plan.id}.json`), JSON.stringify(truth));
  console.log(
    plan.id,
    plan.sound,
    plan.instrument.id,
    plan.tempo,
    `${truth.truth.notes.length} notes, ${truth.seconds} s`,
  );
}
