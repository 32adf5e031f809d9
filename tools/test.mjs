// `npm test`: all set-up, then everything that proves the tree, in order, with one closing count.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { findOrInstallBrowser } from './browser.mjs';
import { prepare } from './prepare.mjs';

prepare({ build: true });

const browser = findOrInstallBrowser();
if (browser === null) {
  console.error(
    'The end-to-end tests need Chromium, Chrome or Edge. Install one (on Debian or Ubuntu: sudo apt-get install chromium), ' +
      'or set LEVARE_BROWSER to its path, and run npm test again.',
  );
  process.exit(1);
}

const reports = mkdtempSync(join(tmpdir(), 'levare-test-'));
const total = { passed: 0, failed: 0, skipped: 0 };
const lines = [];
let broken = false;

function note(name, ok, started) {
  if (!ok) broken = true;
  lines.push(`${ok ? 'passed' : 'FAILED'}  ${name}  (${((Date.now() - started) / 1000).toFixed(1)} s)`);
}

{
  const started = Date.now();
  const ok = spawnSync(process.execPath, ['tools/check.mjs'], { stdio: 'inherit' }).status === 0;
  total[ok ? 'passed' : 'failed']++;
  note('check', ok, started);
}
for (const project of ['unit', 'storage', 'checks', 'e2e']) {
  const started = Date.now();
  const file = join(reports, `${project}.json`);
  const run = spawnSync(
    process.execPath,
    [
      'node_modules/vitest/vitest.mjs',
      'run',
      '--project',
      project,
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${file}`,
    ],
    { stdio: 'inherit', env: { ...process.env, LEVARE_BROWSER: browser } },
  );
  let counted = 0;
  try {
    const report = JSON.parse(readFileSync(file, 'utf8'));
    total.passed += report.numPassedTests;
    total.failed += report.numFailedTests;
    total.skipped += report.numPendingTests;
    counted = report.numTotalTests;
  } catch {
    total.failed++; // the suite died before it could report
  }
  note(`${project}: ${counted} tests`, run.status === 0 && counted > 0, started);
}
rmSync(reports, { recursive: true, force: true });

console.log(`\n${lines.join('\n')}\n`);
if (broken && total.failed === 0) total.failed = 1;
console.log(`${total.passed} passed, ${total.failed} failed, ${total.skipped} skipped`);
process.exit(broken ? 1 : 0);
