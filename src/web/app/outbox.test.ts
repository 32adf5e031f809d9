import { expect, test } from 'vitest';
import type { CommandReply } from '#contract';
import { applyEdit, err, type Id, ok, present, type Result } from '#core';
import type { ApiFault } from './api.ts';
import { createOutbox, type Outbox } from './outbox.ts';
import type { OutboxCommand, OutboxEntry } from './outbox-queue.ts';
import type { OutboxStore } from './outbox-store.ts';

const lesson = 'lesson:a' as Id<'lesson'>;
const write = (base: string, text: string): OutboxCommand => ({
  type: 'lesson.write',
  lesson,
  field: 'note',
  base,
  text,
});
const close: OutboxCommand = { type: 'lesson.close', lesson, minutes: null };
const offline: ApiFault = { kind: 'Broken', message: 'not reached', offline: true };
const reply = (change: Id<'change'>): CommandReply => ({ change, label: 'done', courses: [], notices: [] });

function createMemoryStore(): OutboxStore & { readonly kept: Map<string, OutboxEntry> } {
  const kept = new Map<string, OutboxEntry>();
  return {
    kept,
    adopt: async (take) => take([...kept.values()].sort((a, b) => a.order - b.order)),
    put: async (entry) => void kept.set(entry.id, entry),
    settle: async (id, changed) => {
      kept.delete(id);
      for (const entry of changed) kept.set(entry.id, entry);
    },
  };
}

/** A server that applies each id once, a clock moved by hand, and a store that outlives the page. */
function createBench(store = createMemoryStore()) {
  const applied = new Map<string, OutboxCommand>();
  const tried: string[] = [];
  let minted = 0;
  let now = 0;
  let timers: { at: number; callback: () => void }[] = [];
  const bench = {
    store,
    applied,
    tried,
    patience: [] as number[],
    alive: true,
    loseReply: false,
    /** What is answered in place of plain replies, in turn. */
    answers: [] as CommandReply[],
    /** Answers are held back. */
    isHeld: false,
    held: [] as (() => void)[],
    refuse: null as ApiFault | null,
    /** Lets promises settle without waiting on any clock. */
    async rest() {
      for (let n = 0; n < 50; n++) await Promise.resolve();
    },
    async pass(milliseconds: number) {
      if (!bench.isHeld) for (const go of bench.held.splice(0)) go();
      now += milliseconds;
      const due = timers.filter((t) => t.at <= now);
      timers = timers.filter((t) => t.at > now);
      for (const timer of due) timer.callback();
      await bench.rest();
    },
    page() {
      return createOutbox({
        store,
        newChangeId: () => `change:${++minted}` as Id<'change'>,
        restMilliseconds: 800,
        longestMilliseconds: 4000,
        after(milliseconds, callback) {
          const timer = { at: now + milliseconds, callback };
          timers.push(timer);
          return () => {
            timers = timers.filter((t) => t !== timer);
          };
        },
        async send(id, command, milliseconds): Promise<Result<CommandReply, ApiFault>> {
          tried.push(id);
          bench.patience.push(milliseconds);
          if (!bench.alive) return err(offline);
          if (bench.refuse) return err(bench.refuse);
          if (!applied.has(id)) applied.set(id, command);
          if (bench.isHeld) await new Promise<void>((go) => bench.held.push(go));
          return bench.loseReply ? err(offline) : ok(bench.answers.shift() ?? reply(id));
        },
      });
    },
  };
  return bench;
}

/** Each text over the one before, as keystrokes come. */
function typed(outbox: Outbox, ...texts: readonly string[]): void {
  for (const [at, text] of texts.slice(1).entries()) outbox.post(write(texts[at] ?? '', text));
}

test('typing is kept at once and sent when it rests, as one change', async () => {
  const bench = createBench();
  const outbox = bench.page();
  typed(outbox, '', 'L', 'Lo', 'Low');
  await bench.rest();
  expect([...bench.store.kept.values()].map((e) => e.command)).toEqual([write('', 'Low')]);
  expect(bench.applied.size).toBe(0);
  expect(outbox.status()).toEqual({
    state: 'saving',
    pending: 1,
    durable: true,
    trouble: null,
    refused: [],
    forgotten: 0,
  });
  await bench.pass(800);
  expect([...bench.applied.values()]).toEqual([write('', 'Low')]);
  expect(bench.store.kept.size).toBe(0);
  expect(outbox.status().state).toBe('saved');
});

test('typing that never rests is sent all the same', async () => {
  const bench = createBench();
  const outbox = bench.page();
  for (let n = 1; n <= 10; n++) {
    outbox.post(write('x'.repeat(n - 1), 'x'.repeat(n)));
    await bench.pass(500);
  }
  expect(bench.applied.size).toBeGreaterThan(0);
});

test('a close takes the writing before it along, in order', async () => {
  const bench = createBench();
  const outbox = bench.page();
  outbox.post(write('', 'a'));
  outbox.post(close);
  await bench.rest();
  expect([...bench.applied.values()]).toEqual([write('', 'a'), close]);
});

test('what was sent before without an answer keeps its id, and is applied once', async () => {
  const bench = createBench();
  const outbox = bench.page();
  const id = 'change:sent-before' as Id<'change'>;
  bench.applied.set(id, close);
  outbox.post(close, id);
  await bench.rest();
  expect(bench.tried).toEqual([id]);
  expect([...bench.applied]).toEqual([[id, close]]);
});

test('a dead server: kept, tried again with the same id, applied once', async () => {
  const bench = createBench();
  const outbox = bench.page();
  bench.alive = false;
  outbox.post(write('', 'a'));
  await bench.pass(800);
  expect(outbox.status()).toEqual({
    state: 'waiting',
    pending: 1,
    durable: true,
    trouble: null,
    refused: [],
    forgotten: 0,
  });
  typed(outbox, 'a', 'ab', 'abc');
  await bench.pass(500);
  bench.alive = true;
  await bench.pass(15_000);
  expect([...bench.applied.values()]).toEqual([write('', 'a'), write('a', 'abc')]);
  expect(new Set(bench.tried).size).toBe(2);
  expect(outbox.status().state).toBe('saved');
});

test('a reply lost on its way: the same change is sent again and counts once', async () => {
  const bench = createBench();
  const outbox = bench.page();
  bench.loseReply = true;
  outbox.post(close);
  await bench.rest();
  bench.loseReply = false;
  await bench.pass(500);
  expect(bench.tried).toEqual(['change:1', 'change:1']);
  expect(bench.applied.size).toBe(1);
  expect(outbox.status().state).toBe('saved');
});

test('a page that dies leaves its queue to the next', async () => {
  const store = createMemoryStore();
  const first = createBench(store);
  first.alive = false;
  const dying = first.page();
  dying.post(write('', 'typed before the lid closed'));
  dying.post(close);
  await first.rest();
  const second = createBench(store);
  await second.page().start();
  await second.rest();
  expect([...second.applied.values()]).toEqual([write('', 'typed before the lid closed'), close]);
  expect(store.kept.size).toBe(0);
});

test('a refusal is told and does not hold up what follows', async () => {
  const bench = createBench();
  const outbox = bench.page();
  const told: unknown[] = [];
  outbox.onSettled(({ command, reply: r }) => told.push([command.type, r.ok]));
  bench.refuse = { kind: 'NotFound', message: 'No such lesson.' };
  outbox.post(close);
  await bench.rest();
  bench.refuse = null;
  outbox.post(write('', 'a'));
  await outbox.flush();
  expect(told).toEqual([
    ['lesson.close', false],
    ['lesson.write', true],
  ]);
});

const broken: ApiFault = { kind: 'Broken', message: 'Something in Levare went wrong.' };

test('a server that breaks over a change is asked again with the same id, and nothing is dropped', async () => {
  const bench = createBench();
  const outbox = bench.page();
  bench.refuse = broken;
  outbox.post(write('', 'a'));
  await bench.pass(800);
  for (const wait of [500, 1000, 2000]) {
    expect(outbox.status()).toMatchObject({ state: 'waiting', pending: 1 });
    expect(bench.store.kept.size).toBe(1);
    // Asking for it does not use up a try before its time.
    await outbox.flush();
    await bench.pass(wait);
  }
  expect(bench.tried).toEqual(Array(4).fill('change:1'));
  bench.refuse = null;
  await bench.pass(4000);
  expect([...bench.applied.values()]).toEqual([write('', 'a')]);
  expect(outbox.status()).toMatchObject({ state: 'saved', pending: 0 });
});

test('a server that has no room keeps it waiting for as long as that lasts, and says why', async () => {
  const bench = createBench();
  const outbox = bench.page();
  bench.refuse = { kind: 'CannotKeep', message: 'The disk is full.' };
  outbox.post(write('', 'a'));
  await bench.pass(800);
  for (let n = 0; n < 12; n++) await bench.pass(15_000);
  expect(outbox.status()).toMatchObject({ state: 'waiting', pending: 1, trouble: 'The disk is full.' });
  bench.refuse = null;
  await bench.pass(15_000);
  expect([...bench.applied.values()]).toEqual([write('', 'a')]);
  expect(outbox.status()).toMatchObject({ state: 'saved', trouble: null });
});

test('after five tries it is refused with its text, and what follows goes on with tries of its own', async () => {
  const bench = createBench();
  const outbox = bench.page();
  const told: unknown[] = [];
  outbox.onSettled(({ command, reply: r }) => told.push([command, r.ok ? 'taken' : r.error.kind]));
  bench.refuse = broken;
  outbox.post(write('', 'a'));
  await bench.pass(800);
  outbox.post(close);
  for (const wait of [500, 1000, 2000, 4000]) await bench.pass(wait);
  expect(told).toEqual([[write('', 'a'), 'Broken']]);
  expect(bench.tried.filter((id) => id === 'change:1')).toHaveLength(5);
  expect(outbox.status()).toMatchObject({ state: 'waiting', pending: 1 });
  bench.refuse = null;
  await bench.pass(15_000);
  expect([...bench.applied.values()]).toEqual([close]);
  expect(told).toHaveLength(2);
});

const wrote = (text: string, over?: string, typedThere?: string): CommandReply => ({
  change: 'change:there' as Id<'change'>,
  label: 'done',
  courses: [{ course: 'course:a' as Id<'course'>, revision: 7, moved: 0 }],
  notices: [],
  wrote: over === undefined ? { text } : { text, over, typed: typedThere ?? text },
});

test('what others had written goes into what waits, and is told as an edit of what is on screen', async () => {
  const bench = createBench();
  bench.answers = [wrote('Theirs\n\nMine', 'Theirs', 'Mine')];
  const outbox = bench.page();
  const carried: unknown[] = [];
  outbox.onCarried((field, from, edit) => carried.push([field, applyEdit(from, edit)]));
  outbox.post(write('', 'Mine'));
  bench.isHeld = true;
  await bench.pass(800);
  outbox.post(write('Mine', 'Mine too'));
  expect(outbox.known(`${lesson} note`)).toEqual({ text: 'Mine too', revision: null });
  bench.isHeld = false;
  await bench.pass(0);
  expect([...bench.applied.values()][1]).toEqual(write('Theirs\n\nMine', 'Theirs\n\nMine too'));
  expect(carried[0]).toEqual([`${lesson} note`, 'Theirs\n\nMine too']);
});

test('once all is taken, the text and the revision that has it are known, until the studio may be another', async () => {
  const bench = createBench();
  bench.answers = [wrote('a')];
  const outbox = bench.page();
  outbox.post(write('', 'a'));
  await bench.pass(800);
  expect(outbox.known(`${lesson} note`)).toEqual({ text: 'a', revision: 7 });
  let tellAll = () => {};
  let heard = 0;
  const forgetting = outbox.forgetKnown(new Promise<void>((told) => (tellAll = told)));
  await bench.rest();
  // What is on screen is from before, until all was told anew.
  expect(outbox.known(`${lesson} note`)).toEqual({ text: 'a', revision: 7 });
  outbox.subscribe(() => heard++);
  tellAll();
  await forgetting;
  expect(outbox.known(`${lesson} note`)).toBeNull();
  // Fields have to look once more: what was told meanwhile had a lower revision.
  expect([heard, outbox.status().forgotten]).toEqual([1, 1]);
});

test('what was written while the studio told all anew is not forgotten with the rest', async () => {
  const bench = createBench();
  bench.answers = [wrote('a'), wrote('b')];
  const outbox = bench.page();
  outbox.post(write('', 'a'));
  await bench.pass(800);
  let tellAll = () => {};
  const forgetting = outbox.forgetKnown(new Promise<void>((told) => (tellAll = told)));
  outbox.post(write('a', 'b'));
  await bench.pass(800);
  tellAll();
  await forgetting;
  expect(outbox.known(`${lesson} note`)).toEqual({ text: 'b', revision: 7 });
});

test('where another window had sent it before more was typed, the rest is sent as a change of its own', async () => {
  const bench = createBench();
  const outbox = bench.page();
  bench.answers = [wrote('Warm')];
  typed(outbox, '', 'Warm', 'Warm tone');
  await bench.pass(800);
  await bench.pass(800);
  expect([...bench.applied.values()]).toEqual([write('', 'Warm tone'), write('Warm', 'Warm tone')]);
  expect(new Set(bench.tried).size).toBe(2);
});

test('a browser that keeps nothing still sends, and says that it keeps nothing', async () => {
  const bench = createBench();
  bench.store.put = () => Promise.reject(new Error('no storage here'));
  const outbox = bench.page();
  outbox.post(close);
  await bench.rest();
  expect(bench.applied.size).toBe(1);
  expect(outbox.status().durable).toBe(false);
});

test('a server that does not answer is given longer at each try', async () => {
  const bench = createBench();
  const outbox = bench.page();
  bench.alive = false;
  outbox.post(close);
  await bench.rest();
  for (let n = 0; n < 4; n++) await bench.pass(20_000);
  expect(bench.patience).toEqual([10_000, 20_000, 40_000, 80_000, 80_000]);
});

const keepTake = {
  type: 'take.keep',
  take: { id: 'take:a', title: 'Blues' },
  sound: { id: 'sound:a', type: 'audio/webm', data: 'AAAA' },
} as unknown as OutboxCommand;
const levelOfTake = { type: 'observe', take: 'take:a' } as unknown as OutboxCommand;
const otherLevel = { type: 'observe', take: 'take:b' } as unknown as OutboxCommand;
const gone: ApiFault = { kind: 'NotFound', message: 'The student of this take is not in the studio.' };

/** A page whose take was refused, with a level that rests on it; a level of another take was sent. */
async function refuseTake() {
  const bench = createBench();
  const outbox = bench.page();
  bench.alive = false;
  for (const command of [keepTake, levelOfTake, otherLevel]) outbox.post(command);
  await bench.rest();
  bench.alive = true;
  bench.refuse = gone;
  const stop = outbox.onSettled(() => {
    bench.refuse = null;
  });
  await bench.pass(500);
  stop();
  return { bench, outbox };
}

test('a refused take stays with the levels that rest on it, and holds up nothing', async () => {
  const { bench, outbox } = await refuseTake();
  expect([...bench.applied.values()]).toEqual([otherLevel]);
  expect(outbox.status()).toMatchObject({ state: 'saved', pending: 0, trouble: null });
  const kept = [
    { command: keepTake, refused: gone },
    { command: levelOfTake, refused: gone },
  ];
  expect(outbox.status().refused).toMatchObject(kept);
  const stored = [...bench.store.kept.values()].sort((one, other) => one.order - other.order);
  expect(stored).toMatchObject(kept);
  // Typing still rests before it is sent.
  typed(outbox, '', 'L', 'Lo');
  await bench.pass(799);
  expect(bench.applied.size).toBe(1);
  await bench.pass(1);
  expect([...bench.applied.values()].at(-1)).toEqual(write('', 'Lo'));
  // Nor does the next page send it by itself.
  const next = createBench(bench.store);
  const page = next.page();
  await page.start();
  await next.pass(20_000);
  expect(next.tried).toEqual([]);
  expect(page.status()).toMatchObject({ pending: 0, refused: kept });
});

test('a refused take is sent once more when it is asked for, in order and with the same ids', async () => {
  const { bench, outbox } = await refuseTake();
  const [take, level] = outbox.status().refused.map(({ id }) => id);
  bench.alive = false;
  outbox.tryAgain(present(take, 'a take'));
  await bench.rest();
  expect(outbox.status()).toMatchObject({ state: 'waiting', pending: 2, refused: [] });
  expect(bench.store.kept.get(take ?? '')?.refused).toBeUndefined();
  bench.alive = true;
  await bench.pass(500);
  expect([...bench.applied].slice(1)).toEqual([
    [take, keepTake],
    [level, levelOfTake],
  ]);
  expect(bench.store.kept.size).toBe(0);
});

test('a refused take that is discarded is gone with its levels', async () => {
  const { bench, outbox } = await refuseTake();
  outbox.discard(present(outbox.status().refused[0], 'a take').id);
  await bench.rest();
  expect(outbox.status().refused).toEqual([]);
  expect(bench.store.kept.size).toBe(0);
});

test('what may still be answered is not sent beside it; where it is not, it is sent again with the same id', async () => {
  for (const comes of [ok(reply('change:slow' as Id<'change'>)), err(offline)] as const) {
    const bench = createBench();
    const outbox = bench.page();
    let answer: (reply: Result<CommandReply, ApiFault>) => void = () => {};
    outbox.post(keepTake, 'change:slow' as Id<'change'>, new Promise((done) => (answer = done)));
    await bench.pass(20_000);
    expect(outbox.status()).toMatchObject({ state: 'saving', pending: 1 });
    expect([bench.tried, bench.store.kept.size]).toEqual([[], 1]);
    answer(comes);
    await bench.pass(500);
    await bench.pass(500);
    expect(bench.tried).toEqual(comes.ok ? [] : ['change:slow']);
    expect([outbox.status().pending, bench.store.kept.size]).toEqual([0, 0]);
  }
});
