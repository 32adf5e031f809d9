// Compiles every module but the screens to dist/, makes the band's bank of sounds, then bundles the screens to dist/app.
import { spawnSync } from 'node:child_process';
import { chmodSync } from 'node:fs';

const steps = [
  ['node_modules/@typescript/native/bin/tsc', '-b', 'src/cli', 'src/server'],
  ['tools/make-bank.mjs'],
  ['node_modules/vite/bin/vite.js', 'build', 'src/web', '--logLevel', 'warn'],
];
for (const args of steps) {
  const done = spawnSync(process.execPath, args, { stdio: 'inherit' });
  if (done.status !== 0) process.exit(1);
}
chmodSync('dist/cli/main.js', 0o755);
