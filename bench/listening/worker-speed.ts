// How fast the browser listens: the worker that the built application ships, in Chromium, started anew for every take as
// the recording screen does.

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { join } from 'node:path';
import { present } from '#core';
import { launchBrowser } from '../../e2e/harness/browser.ts';
import { readTakes } from './read-takes.ts';
import { readTakeSound } from './score-table.ts';

const assets = join(import.meta.dirname, '../../dist/app/assets');
const sampleRate = 44_100;
const lengths: readonly number[] = [60, 300];
const context = { tempo: 100, metre: [4, 4] };

/** Prints how many seconds of sound the worker hears in a second. */
export async function runWorkerBench(dir: string): Promise<void> {
  const name = existsSync(assets)
    ? readdirSync(assets).find((file) => file.startsWith('listen.worker-'))
    : undefined;
  if (name === undefined) {
    console.log('The browser worker is not measured: run `npm run build` first.');
    return;
  }
  const sound = joinTakes(dir, Math.max(...lengths));
  const server = createServer((request, response) => {
    const path = request.url ?? '/';
    if (path === '/sound') response.end(Buffer.from(sound.buffer));
    else if (path.startsWith('/assets/')) {
      response.setHeader('content-type', 'text/javascript');
      response.end(readFileSync(join(assets, path.slice('/assets/'.length))));
    } else {
      response.setHeader('content-type', 'text/html');
      response.end('<!doctype html>');
    }
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const address = server.address();
  const port = typeof address === 'object' && address !== null ? address.port : 0;
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage();
    await page.goto(`http://127.0.0.1:${port}/`);
    console.log(`\nThe browser's worker, started anew for each take (${browser.version()})`);
    for (const seconds of lengths) {
      const taken = await page.evaluate(listenInPage, {
        worker: `/assets/${name}`,
        seconds,
        sampleRate,
        context,
      });
      console.log(
        `  ${seconds} s heard in ${taken.toFixed(2)} s: ${(seconds / taken).toFixed(0)} × real time`,
      );
    }
  } finally {
    await browser.close();
    server.close();
  }
}

/** Runs in the page: seconds from the wish to the answer. */
async function listenInPage(wish: {
  readonly worker: string;
  readonly seconds: number;
  readonly sampleRate: number;
  readonly context: object;
}): Promise<number> {
  const bytes = await (await fetch('/sound')).arrayBuffer();
  const samples = new Float32Array(bytes).slice(0, wish.seconds * wish.sampleRate);
  return new Promise((done, fail) => {
    const from = performance.now();
    const worker = new Worker(wish.worker, { type: 'module' });
    worker.addEventListener('error', (event) => fail(new Error(event.message)));
    worker.addEventListener('message', ({ data }: MessageEvent<object>) => {
      if ('progress' in data) return;
      worker.terminate();
      if ('fault' in data) fail(new Error(String(data.fault)));
      else done((performance.now() - from) / 1000);
    });
    worker.postMessage({ samples, sampleRate: wish.sampleRate, context: wish.context });
  });
}

/** Takes one after another until `seconds` are full. */
function joinTakes(dir: string, seconds: number): Float32Array<ArrayBuffer> {
  const takes = readTakes({ dir }).filter(({ truth }) => truth.sampleRate === sampleRate);
  const sound = new Float32Array(seconds * sampleRate);
  for (let at = 0, i = 0; at < sound.length; i++) {
    const part = readTakeSound(present(takes[i % takes.length], 'a take').path);
    sound.set(part.subarray(0, sound.length - at), at);
    at += part.length;
  }
  return sound;
}
