// What our way from spec to SVG costs above bare Verovio on the same MusicXML, in one run and turn about; and whether a
// thousand sheets in a row make the process grow.
/// <reference path="../src/engraving/verovio/verovio-modules.d.ts" />

import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { enableLog, LOG_OFF, VerovioToolkit } from 'verovio/esm';
import createVerovioModule from 'verovio/wasm';
import { drawSheet } from '#engraving';
import {
  createSheet,
  listInstruments,
  type MaterialSpec,
  parseMaterialSpec,
  type SheetFor,
  scoreToMusicXml,
  stages,
} from '#music';
import { barePage } from './bare-page.ts';
import { quantile } from './quantile.ts';

const mostRatio = 1.15;
const specs: readonly unknown[] = [
  { kind: 'scale', fingerings: true },
  { kind: 'arpeggio', quality: 'dominant_7' },
  { kind: 'rhythm' },
  { kind: 'reading' },
  { kind: 'phrase', content: 'written' },
  { kind: 'line', chart: '| Dm7 | G7 | Cmaj7 | A7 | Dm7 | G7 | C6 | % |', content: 'approach_notes' },
  { kind: 'chart', chart: '[A] |: Bb7 | Eb7 | Bb7 | % | Eb7 | % | Bb7 | G7 | Cm7 | F7 | Bb7 | F7 :|' },
];

interface Job {
  readonly spec: MaterialSpec;
  readonly student: SheetFor;
  readonly musicXml: string;
}

/** Sheets of every kind for instruments and stages in turn; those that are refused are left out. */
function listJobs(count: number): readonly Job[] {
  const instruments = listInstruments();
  const jobs: Job[] = [];
  for (let i = 0; jobs.length < count; i++) {
    const spec = parseMaterialSpec(specs[i % specs.length]);
    const instrument = instruments[(i * 5) % instruments.length];
    const stage = stages[(i * 3 + Math.floor(i / 7)) % stages.length];
    if (!spec.ok || instrument === undefined || stage === undefined)
      throw new Error('a spec of the bench is sound');
    const student = { instrument, stage, age: null, seed: i };
    const sheet = createSheet(spec.value, student);
    if (sheet.ok) jobs.push({ spec: spec.value, student, musicXml: scoreToMusicXml(sheet.value.score) });
  }
  return jobs;
}

/** Bare Verovio with the page and breaks that we use, and nothing around it. */
async function createBare(): Promise<(musicXml: string) => number> {
  const module = await createVerovioModule();
  enableLog(LOG_OFF, module);
  const toolkit = new VerovioToolkit(module);
  toolkit.setOptions(barePage);
  return (musicXml) => {
    toolkit.loadData(musicXml);
    let bytes = 0;
    for (let page = 1; page <= toolkit.getPageCount(); page++) bytes += toolkit.renderToSVG(page).length;
    return bytes;
  };
}

async function draw({ spec, student }: Job): Promise<void> {
  const drawn = await drawSheet(spec, student, { form: 'a4' });
  if (!drawn.ok) throw new Error(drawn.error.message);
}

/** Processor time in milliseconds: the machine's other work does not count. */
async function timed(work: () => unknown): Promise<number> {
  const started = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(started);
  return (user + system) / 1000;
}

async function compareWithBare(jobs: readonly Job[]): Promise<number> {
  const bare = await createBare();
  for (const job of jobs) {
    bare(job.musicXml);
    await draw(job);
  }
  const ours: number[] = [];
  const theirs: number[] = [];
  for (const job of jobs) {
    let best = Number.POSITIVE_INFINITY;
    let bestBare = Number.POSITIVE_INFINITY;
    for (let turn = 0; turn < 3; turn++) {
      bestBare = Math.min(bestBare, await timed(() => bare(job.musicXml)));
      best = Math.min(best, await timed(() => draw(job)));
    }
    ours.push(best);
    theirs.push(bestBare);
  }
  const sum = (all: readonly number[]) => all.reduce((a, b) => a + b, 0);
  const ratio = sum(ours) / sum(theirs);
  const line = (name: string, all: readonly number[]) =>
    console.log(
      `${name.padEnd(28)} mean ${(sum(all) / all.length).toFixed(1)} ms, median ${quantile(all, 0.5).toFixed(1)}, p95 ${quantile(all, 0.95).toFixed(1)}`,
    );
  console.log(`Engraving: ${jobs.length} sheets of 7 kinds, best of 3 turns each, processor time`);
  line('bare Verovio, same MusicXML', theirs);
  line('spec → SVG', ours);
  console.log(`ratio ${ratio.toFixed(3)} (at most ${mostRatio})\n`);
  return ratio;
}

const mb = (bytes: number): string => `${(bytes / 1e6).toFixed(0)} MB`;

/** Whether the process after 1,000 sheets is as large as after 200. */
async function watchMemory(jobs: readonly Job[]): Promise<boolean> {
  setFlagsFromString('--expose-gc');
  const collect: unknown = runInNewContext('gc');
  const settle = () => {
    if (typeof collect === 'function') collect();
    return process.memoryUsage();
  };
  let early = settle();
  console.log('A thousand sheets in a row');
  for (let i = 1; i <= 1000; i++) {
    const job = jobs[i % jobs.length];
    if (job !== undefined) await draw(job);
    if (i % 200 !== 0) continue;
    const now = settle();
    if (i === 200) early = now;
    console.log(`${String(i).padStart(6)} sheets: heap ${mb(now.heapUsed)}, rss ${mb(now.rss)}`);
    if (i === 1000) {
      const grown = now.heapUsed - early.heapUsed > 3e6 || now.rss > early.rss * 1.1;
      console.log(grown ? 'The process grew.\n' : 'The process did not grow.\n');
      return !grown;
    }
  }
  return false;
}

/** Prints cost and memory; whether both keep their bounds. */
export async function runEngravingBench(): Promise<boolean> {
  const jobs = listJobs(70);
  const ratio = await compareWithBare(jobs);
  const isSteady = await watchMemory(jobs);
  return ratio <= mostRatio && isSteady;
}
