// The built application as a real process on a free port with its own data folder: started, killed and started again.

import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export interface StudioProcess {
  readonly address: string;
  readonly dataFolder: string;
  /** The start-up link, good once. */
  readonly link: string;
  /** The same for other devices, where it is served to them. */
  readonly otherLinks: readonly string[];
  /** Ends it as a power cut would. */
  kill(): Promise<void>;
  /** Ends it politely. */
  stop(): Promise<void>;
  /** Lets it do nothing until it is woken, as a machine that is too busy does. */
  sleep(): void;
  wake(): void;
}

const program = join(import.meta.dirname, '..', '..', 'dist/cli/main.js');

/** A data folder for one test. */
export function createDataFolder(): { readonly path: string; remove(): void } {
  const path = mkdtempSync(join(tmpdir(), 'levare-e2e-'));
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}

/** Starts the studio; resolves when it says where it is. `port` 0 takes a free one; `more` are options beside the usual. */
export function startStudio(
  dataFolder: string,
  port = 0,
  more: readonly string[] = [],
): Promise<StudioProcess> {
  const child = spawn(
    process.execPath,
    [program, 'start', '--no-open', '--port', String(port), '--data', dataFolder, ...more],
    { stdio: ['ignore', 'pipe', 'pipe'], env: { ...process.env, CI: 'true' } },
  );
  let output = '';
  return new Promise((done, fail) => {
    const read = (chunk: Buffer) => {
      output += chunk.toString();
      if (!output.includes('Ctrl+C')) return;
      const [link, ...otherLinks] = output.match(/http:\/\/\S+\/enter\?token=\S+/g) ?? [];
      if (link === undefined) return;
      done({
        address: new URL(link).origin,
        dataFolder,
        link,
        otherLinks,
        kill: () => end(child, 'SIGKILL'),
        stop: () => end(child, 'SIGTERM'),
        sleep: () => void child.kill('SIGSTOP'),
        wake: () => void child.kill('SIGCONT'),
      });
    };
    child.stdout.on('data', read);
    child.stderr.on('data', read);
    child.once('exit', (code) =>
      fail(new Error(`The studio ended (${code}) before it was ready:\n${output}`)),
    );
  });
}

/** Starts a studio that has ended again, at the address that it had. */
export const startAgain = ({ dataFolder, address }: StudioProcess): Promise<StudioProcess> =>
  startStudio(dataFolder, Number(new URL(address).port));

/** Runs a command of Levare on a data folder and returns what it printed; throws where it ends with a fault. */
export const runLevare = (dataFolder: string, ...args: readonly string[]): string =>
  execFileSync(process.execPath, [program, ...args, '--data', dataFolder]).toString();

function end(child: ChildProcess, signal: NodeJS.Signals): Promise<void> {
  if (child.exitCode !== null || child.signalCode !== null) return Promise.resolve();
  return new Promise((done) => {
    child.once('exit', () => done());
    child.kill(signal);
  });
}
