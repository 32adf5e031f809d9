// `levare listen AUDIO.wav --context CONTEXT.json`: what is heard in a take, as JSON.

import { closeSync, fstatSync, openSync, readFileSync, readSync } from 'node:fs';
import { err, ok, type Result } from '#core';
import {
  type CheckSpec,
  compareTakes,
  describeCheck,
  describeProblem,
  judgeCheck,
  type Listening,
  listen as listenTo,
  parseCheckSpec,
  parseTakeContext,
  type TakeContext,
  unknownContext,
} from '#listening';
import { parseWav, type WavSound } from '../wav/parse-wav.ts';
import { explainUnread, readJsonFile } from './read-file.ts';
import { readName, readWords, textOf } from './read-words.ts';
import { refuse } from './refuse.ts';

export async function listen(words: readonly string[]): Promise<number> {
  const read = await readTake(words);
  if (!read.ok) return refuse('listen', read.error);
  const { sound, earlier, context, checks } = read.value;
  const heard = listenTo(sound.samples, sound.sampleRate, context);
  const before = earlier === null ? null : listenTo(earlier.samples, earlier.sampleRate, context);
  const report = {
    ...formatListening(heard),
    ...(checks.length === 0
      ? {}
      : {
          checks: checks.map((spec) => ({
            spec,
            listensFor: describeCheck(spec),
            ...judgeCheck(spec, heard.evidence, heard.notes),
          })),
        }),
    ...(before === null ? {} : { beside: compareTakes(before.evidence, heard.evidence) }),
  };
  console.log(JSON.stringify(report, roundNumbers));
  return 0;
}

interface Asked {
  readonly sound: WavSound;
  readonly earlier: WavSound | null;
  readonly context: TakeContext;
  readonly checks: readonly CheckSpec[];
}

async function readTake(words: readonly string[]): Promise<Result<Asked, string>> {
  const told = readWords(words, {
    context: { type: 'string' },
    checks: { type: 'string' },
    beside: { type: 'string' },
  });
  if (!told.ok) return told;
  const path = readName(told.value, 'recording', 'levare listen AUDIO.wav');
  if (!path.ok) return path;
  const context = await readContext(textOf(told.value, 'context'));
  if (!context.ok) return context;
  const checks = await readChecks(textOf(told.value, 'checks'));
  if (!checks.ok) return checks;
  const sound = readWavFile(path.value);
  if (!sound.ok) return sound;
  const besidePath = textOf(told.value, 'beside');
  const earlier = besidePath === undefined ? ok(null) : readWavFile(besidePath);
  if (!earlier.ok) return earlier;
  return ok({ sound: sound.value, earlier: earlier.value, context: context.value, checks: checks.value });
}

/** Reads a recording a piece at a time: of an hour nothing is kept but why it is too long. */
function readWavFile(path: string): Result<WavSound, string> {
  let file: number | null = null;
  try {
    file = openSync(path, 'r');
    const handle = file;
    const status = fstatSync(handle);
    if (status.isDirectory()) return err(`${path} is a folder; name a file.`);
    let piece = new Uint8Array(0);
    const read = (at: number, count: number) => {
      if (piece.length < count) piece = new Uint8Array(count);
      return piece.subarray(0, readSync(handle, piece, 0, count, at));
    };
    // A pipe has no size and no places to go back to.
    const sound = parseWav(status.isFile() ? { length: status.size, read } : readFileSync(handle));
    return sound.ok ? sound : err(`${path} ${sound.error}.`);
  } catch (fault) {
    return err(explainUnread(path, fault));
  } finally {
    if (file !== null) closeSync(file);
  }
}

async function readContext(path: string | undefined): Promise<Result<TakeContext, string>> {
  if (path === undefined) return ok(unknownContext);
  const value = await readJsonFile(path);
  if (!value.ok) return value;
  const context = parseTakeContext(value.value);
  return context.ok ? context : err(`${path}: ${context.error.message}`);
}

async function readChecks(path: string | undefined): Promise<Result<readonly CheckSpec[], string>> {
  if (path === undefined) return ok([]);
  const value = await readJsonFile(path);
  if (!value.ok) return value;
  const specs: CheckSpec[] = [];
  for (const given of Array.isArray(value.value) ? (value.value as unknown[]) : [value.value]) {
    const spec = parseCheckSpec(given);
    if (!spec.ok) return err(`${path}: ${spec.error.message}`);
    specs.push(spec.value);
  }
  return ok(specs);
}

function formatListening(heard: Listening): object {
  const { alignment } = heard;
  return {
    seconds: heard.seconds,
    notes: heard.notes,
    grid:
      alignment === null
        ? null
        : {
            offset: alignment.grid.offset,
            tempo: alignment.grid.tempo,
            swing: alignment.grid.swing,
            drift: alignment.grid.drift,
            isGiven: alignment.grid.isGiven,
            fit: alignment.fit,
          },
    rhythm: alignment?.rhythm ?? [],
    f0: heard.f0,
    evidence: heard.evidence,
    problems: heard.problems.map((problem) => ({ ...problem, message: describeProblem(problem) })),
  };
}

/** No more digits than were measured: a tenth of a millisecond, a hundredth of a cent. */
function roundNumbers(_key: string, value: unknown): unknown {
  return typeof value === 'number' ? Math.round(value * 1e4) / 1e4 : value;
}
