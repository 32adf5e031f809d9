import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { once } from 'node:events';
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { build } from 'vite';
import { afterAll, expect, onTestFinished, test } from 'vitest';
import { createSeededRandom, randomInteger } from '#core';
import { createTurnedClock, newStudioPath, openStudio } from '../contract/data-folder.contract.ts';

const times = 20;
const seed = Math.floor(Math.random() * 2 ** 31);
const bundle = fileURLToPath(new URL(`../../../dist/.crash-${process.pid}/`, import.meta.url));
afterAll(() => rmSync(bundle, { recursive: true, force: true }));

test(`killed ${times} times at any moment (seed ${seed}), each change is wholly there or wholly absent`, async () => {
  const path = newStudioPath();
  const random = createSeededRandom(seed);
  await bundleWriter();
  let reached = 0;
  let next = startWriter(path); // one ahead, because starting takes longer than everything else
  for (let nth = 0; nth < times; nth++) {
    const child = next;
    next = startWriter(path);
    const answered = await writeUntilKilled(
      child,
      randomInteger(random, 0, 6),
      randomInteger(random, 0, 3000),
    );

    const look = new Database(path, { readonly: true });
    expect(look.pragma('integrity_check', { simple: true })).toBe('ok');
    look.close();

    const store = await openStudio({ path, clock: createTurnedClock('2026-03-04') }); // the dead program's lock is gone
    const { tables, changes } = await store.dump();
    await store.close();
    const revision = tables.course[0]?.revision ?? 0;
    expect(revision).toBeGreaterThanOrEqual(answered); // what was answered is there
    expect(new Set(tables.segment.map((segment) => segment.minutes))).toEqual(
      new Set(revision === 0 ? [] : [revision]),
    );
    expect(changes.map((change) => change.label)).toEqual([
      'Step sample',
      ...Array.from({ length: revision }, (_, i) => `Change ${i + 1}`),
    ]);
    for (const change of changes.slice(1)) expect(change.rows).toHaveLength(41);
    reached = revision;
  }
  expect(reached).toBeGreaterThan(times); // it was killed at work, not before
}, 300_000);

/** Makes one JavaScript file of the writer, so that twenty starts do not compile it twenty times. */
async function bundleWriter(): Promise<void> {
  const conditions = ['levare-source', 'node'];
  await build({
    configFile: false,
    logLevel: 'error',
    resolve: { conditions },
    ssr: { resolve: { conditions } },
    build: {
      ssr: fileURLToPath(new URL('./crash-writer.contract.ts', import.meta.url)),
      outDir: bundle,
      rollupOptions: { output: { entryFileNames: 'writer.mjs' } },
    },
  });
}

function startWriter(path: string): ChildProcessWithoutNullStreams {
  const child = spawn(process.execPath, [join(bundle, 'writer.mjs'), path]);
  onTestFinished(() => void child.kill('SIGKILL'));
  return child;
}

/** Lets a writer answer `changes` changes and go on for a while, then kills it; the last number it said. */
async function writeUntilKilled(
  child: ChildProcessWithoutNullStreams,
  changes: number,
  microseconds: number,
): Promise<number> {
  let complaint = '';
  child.stderr.on('data', (text: Buffer) => {
    complaint += text.toString();
  });
  const exited = once(child, 'exit');
  child.stdin.write('begin\n');
  let answered = 0;
  let seen = 0;
  for await (const line of createInterface({ input: child.stdout })) {
    answered = Number(line);
    if (seen++ !== changes) continue;
    const until = process.hrtime.bigint() + BigInt(microseconds) * 1000n;
    while (process.hrtime.bigint() < until) {
      // Timers are too coarse to hit the middle of a change.
    }
    child.kill('SIGKILL');
  }
  await exited;
  expect(complaint).toBe('');
  expect(child.signalCode).toBe('SIGKILL');
  return answered;
}
