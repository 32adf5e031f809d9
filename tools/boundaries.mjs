// Import directions by dependency-cruiser, which must have seen the tree it judges; and chance in pure modules, which
// neither the compiler nor the linter can see (Math.random is a property).
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { readdir } from 'node:fs/promises';

const run = spawnSync(
  'node',
  [
    'node_modules/dependency-cruiser/bin/dependency-cruise.mjs',
    '--config',
    '.dependency-cruiser.cjs',
    '--output-type',
    'json',
    'src',
  ],
  { encoding: 'utf8', maxBuffer: 1 << 29 },
);
if (!run.stdout) {
  console.error(run.stderr);
  process.exit(1);
}
const { summary } = JSON.parse(run.stdout);
const sources = (await readdir('src', { recursive: true })).filter(
  (f) => /\.tsx?$/.test(f) && !f.endsWith('.d.ts'),
);
for (const violation of summary.violations)
  console.error(`${violation.rule.severity} ${violation.rule.name}: ${violation.from} → ${violation.to}`);
let wrong = summary.violations.filter((v) => v.rule.severity === 'error').length;

if (summary.totalCruised < sources.length) {
  console.error(
    `dependency-cruiser saw ${summary.totalCruised} modules of ${sources.length}: it judged too little.`,
  );
  wrong++;
}
const pure = /^(core|music|planning|listening|engraving|sound|contract|studio|demo)[\\/]/;
for (const file of sources) {
  if (!pure.test(file)) continue;
  const text = readFileSync(`src/${file}`, 'utf8');
  if (/\bMath\.random\b/.test(text)) {
    console.error(`src/${file}: Math.random in a pure module; take Random from #core as an argument.`);
    wrong++;
  }
}
console.log(
  `${summary.totalCruised} modules, ${summary.totalDependenciesCruised} imports, ${wrong} violations`,
);
process.exit(wrong === 0 ? 0 : 1);
