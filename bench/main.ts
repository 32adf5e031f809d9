// `npm run bench`: how good and how fast, in one run; `-- --only PART` does one part of it. Of the planner, `--count` and
// `--from` choose the problems and `--fresh` lets HiGHS solve again what baseline.json remembers; of listening, `--dir`,
// `--split held` and `--alone` choose the takes and leave the reference programs out.

import { parseArgs } from 'node:util';
import { runAppBench } from './app.ts';
import { runEngravingBench } from './engraving.ts';
import { runListeningBench, takesFolder } from './listening/compare.ts';
import { heldOut, heldOutFrom, runPlannerBench } from './planner/compare.ts';
import { runPreviewBench } from './preview.ts';
import { runSoundBench } from './sound.ts';
import { runStudioBench } from './studio.ts';

const { values } = parseArgs({
  options: {
    fresh: { type: 'boolean', default: false },
    only: { type: 'string' },
    count: { type: 'string', default: String(heldOut) },
    from: { type: 'string', default: String(heldOutFrom) },
    split: { type: 'string', default: 'all' },
    dir: { type: 'string', default: takesFolder },
    alone: { type: 'boolean', default: false },
  },
});
const options = { fresh: values.fresh, count: Number(values.count), from: Number(values.from) };
const parts = ['planner', 'app', 'listening', 'engraving', 'preview', 'sound'];
if (values.only !== undefined && !parts.includes(values.only))
  throw new Error(`--only is one of ${parts.join(', ')}`);
const does = (part: string) => values.only === undefined || values.only === part;
const planned = !does('planner') || (await runPlannerBench(options));
if (does('app')) {
  await runStudioBench();
  await runAppBench();
}
const heard =
  !does('listening') ||
  (await runListeningBench({ split: values.split, dir: values.dir, alone: values.alone }));
const engraved = !does('engraving') || (await runEngravingBench());
const previewed = !does('preview') || (await runPreviewBench());
const played = !does('sound') || (await runSoundBench());
process.exitCode = planned && heard && engraved && previewed && played ? 0 : 1;
