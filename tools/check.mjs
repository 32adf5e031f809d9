// One command that proves the tree: formatting and lint, types, import directions, nothing unused.
import { spawnSync } from 'node:child_process';

const steps = [
  [
    'formatting and lint',
    'node',
    ['node_modules/@biomejs/biome/bin/biome', 'check', '--error-on-warnings', '.'],
  ],
  ['types', 'node', ['node_modules/@typescript/native/bin/tsc', '-b']],
  ['the planner’s kernel as compiled', 'node', ['tools/kernel.mjs', '--check']],
  ['import directions', 'node', ['tools/boundaries.mjs']],
  ['unused files, exports and dependencies', 'node', ['node_modules/knip/bin/knip.js', '--no-progress']],
];

let failed = 0;
for (const [name, command, args] of steps) {
  const started = Date.now();
  const run = spawnSync(command, args, { stdio: 'inherit' });
  const passed = run.status === 0;
  if (!passed) failed++;
  console.log(`${passed ? 'passed' : 'FAILED'}  ${name}  (${((Date.now() - started) / 1000).toFixed(1)} s)`);
}
process.exit(failed === 0 ? 0 : 1);
