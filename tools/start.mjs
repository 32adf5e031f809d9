// `npm start`: everything a fresh machine needs, then the studio. Extra words go to the application:
// `npm start -- --port 5000 --data ./my-studio --no-open`.
import { spawn } from 'node:child_process';
import { prepare } from './prepare.mjs';

prepare({ build: true });
const child = spawn(process.execPath, ['dist/cli/main.js', 'start', ...process.argv.slice(2)], {
  stdio: 'inherit',
});
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => child.kill(signal));
child.on('exit', (code, signal) => process.exit(code ?? (signal === null ? 1 : 0)));
