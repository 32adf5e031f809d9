// `npx tsx --conditions=levare-source bench/listening/take-set/make-takes.ts [--dir DIR] [--only dev-clean]`

import { parseArgs } from 'node:util';
import { takesFolder } from '../compare.ts';
import { writeTakes } from './write-takes.ts';

const { values } = parseArgs({
  options: { dir: { type: 'string', default: takesFolder }, only: { type: 'string', default: '' } },
});
await writeTakes(values.dir, values.only, (plan, notes, seconds) =>
  console.log(plan.id, plan.sound, plan.instrument.id, plan.tempo, `${notes} notes, ${seconds} s`),
);
