// Set-up that `npm start` and `npm test` share: the right Node, the packages of the lock file, a current build.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
process.chdir(root);

/** Runs a command to its end and stops with a plain sentence when it fails. */
export function run(what, command, args, options = {}) {
  const started = Date.now();
  console.log(`· ${what}`);
  const done = spawnSync(command, args, {
    stdio: 'inherit',
    shell: process.platform === 'win32',
    ...options,
  });
  if (done.error ?? done.status !== 0) {
    console.error(
      `\n${what} did not work (${done.error?.message ?? `exit ${done.status}`}). The lines above say why.`,
    );
    process.exit(1);
  }
  console.log(`  done in ${((Date.now() - started) / 1000).toFixed(1)} s`);
}

function checkNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major > 20 || (major === 20 && minor >= 19)) return;
  console.error(
    `Levare needs Node 20.19 or newer; this is ${process.versions.node}. Get a newer one and run this again.`,
  );
  process.exit(1);
}

const digest = (texts) => texts.reduce((h, t) => h.update(t), createHash('sha256')).digest('hex');

function stampedAs(file, value) {
  return existsSync(file) && readFileSync(file, 'utf8') === value;
}

function stamp(file, value) {
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, value);
}

function install() {
  const wanted = digest([readFileSync('package-lock.json'), process.version]);
  const mark = 'node_modules/.levare-installed';
  if (stampedAs(mark, wanted)) return;
  run('Installing packages (once)', 'npm', ['ci', '--no-audit', '--no-fund', '--loglevel=error']);
  stamp(mark, wanted);
}

function filesBelow(folder) {
  return readdirSync(folder, { withFileTypes: true })
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => {
      const path = join(folder, entry.name);
      return entry.isDirectory() ? filesBelow(path) : [path];
    });
}

function build() {
  const sources = [...filesBelow('src'), 'package-lock.json', 'tsconfig.base.json'];
  const wanted = digest(sources.map((f) => `${f} ${statSync(f).size} ${digest([readFileSync(f)])}\n`));
  const mark = 'dist/.levare-built';
  if (stampedAs(mark, wanted)) return;
  run('Building', process.execPath, ['tools/build.mjs']);
  stamp(mark, wanted);
}

/** Brings the checkout to where it can run. */
export function prepare({ build: wantsBuild }) {
  checkNode();
  install();
  if (wantsBuild) build();
}
