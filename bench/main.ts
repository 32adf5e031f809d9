// `npm run bench`: how good and how fast, in one run. `-- --fresh` lets HiGHS solve again what baseline.json remembers;
// `-- --only planner` or `-- --only app` does one part.

import { parseArgs } from 'node:util';
import { runAppBench } from './app.ts';
import { runPlannerBench } from './planner/compare.ts';
import { runStudioBench } from './studio.ts';

const { values } = parseArgs({
  options: {
    fresh: { type: 'boolean', default: false },
    only: { type: 'string' },
    count: { type: 'string', default: '12' },
    from: { type: 'string', default: '1001' },
  },
});
const options = { fresh: values.fresh, count: Number(values.count), from: Number(values.from) };
const met = values.only === 'app' || (await runPlannerBench(options));
if (values.only !== 'planner') {
  await runStudioBench();
  await runAppBench();
}
process.exitCode = met ? 0 : 1;
