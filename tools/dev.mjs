// `npm run dev`: the server from its source, started again when a file changes, and the screens bundled again when one of
// theirs does; reload the page to see it. The studio is one for trying things: `.levare/dev`.
import { spawn } from 'node:child_process';
import { prepare } from './prepare.mjs';

// The server serves the bundled screens and the band's bank of sounds: both have to be there.
prepare({ build: true });

const watchers = [
  [
    'node_modules/vite/bin/vite.js',
    'build',
    'src/web',
    '--watch',
    '--logLevel',
    'warn',
    '--emptyOutDir',
    'false',
  ],
  [
    'node_modules/tsx/dist/cli.mjs',
    'watch',
    '--conditions=levare-source',
    'src/cli/main.ts',
    'start',
    '--no-open',
    '--data',
    '.levare/dev',
    ...process.argv.slice(2),
  ],
].map((args) => spawn(process.execPath, args, { stdio: 'inherit' }));

let isEnding = false;
for (const watcher of watchers)
  watcher.once('exit', (code) => {
    if (isEnding) return;
    isEnding = true;
    for (const other of watchers) other.kill('SIGTERM');
    process.exitCode = code ?? 1;
  });
for (const signal of ['SIGINT', 'SIGTERM'])
  process.once(signal, () => {
    isEnding = true;
    for (const watcher of watchers) watcher.kill(signal);
  });
