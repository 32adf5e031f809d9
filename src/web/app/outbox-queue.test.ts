import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CommandOf } from '#contract';
import type { Id } from '#core';
import {
  backoffOf,
  begin,
  carryOn,
  enqueue,
  mayWait,
  type OutboxCommand,
  type OutboxQueue,
  patienceOf,
  queueAfter,
  settle,
  textOnItsWay,
} from './outbox-queue.ts';

const change = (n: number) => `change:${n}` as Id<'change'>;
const lesson = (n: number) => `lesson:${n}` as Id<'lesson'>;
const segment = (n: number) => `segment:${n}` as Id<'segment'>;
const write = (n: number, base: string, text: string): CommandOf<'lesson.write'> => ({
  type: 'lesson.write',
  lesson: lesson(n),
  field: 'note',
  base,
  text,
});
const log = (n: number, seconds: number | null, outcome: 'finished' | 'partly' | null): OutboxCommand => ({
  type: 'segment.log',
  segment: segment(n),
  seconds,
  outcome,
  share: null,
});
const close = (n: number): OutboxCommand => ({ type: 'lesson.close', lesson: lesson(n), minutes: null });
const queueOf = (...commands: OutboxCommand[]) =>
  commands.reduce<OutboxQueue>((queue, command, n) => enqueue(queue, command, change(n)), []);

describe('joining', () => {
  test('typing in one field is one change with the first base', () => {
    const queue = queueOf(write(1, '', 'L'), write(1, 'L', 'Lo'), write(1, 'Lo', 'Low F'));
    expect(queue).toEqual([{ id: change(0), order: 1, attempts: 0, command: write(1, '', 'Low F') }]);
  });

  test('another field in between does not part two writes', () => {
    const queue = queueOf(write(1, '', 'a'), log(1, 10, null), write(1, 'a', 'ab'));
    expect(queue.map((e) => e.command)).toEqual([write(1, '', 'ab'), log(1, 10, null)]);
  });

  test('a closed lesson parts what comes before from what comes after', () => {
    const queue = queueOf(write(1, '', 'a'), close(1), write(1, 'a', 'ab'));
    expect(queue.map((e) => e.command.type)).toEqual(['lesson.write', 'lesson.close', 'lesson.write']);
  });

  test('an entry once attempted is left as it is', () => {
    const begun = begin(queueOf(write(1, '', 'a')), change(0));
    const queue = enqueue(begun, write(1, 'a', 'ab'), change(1));
    expect(queue.map((e) => [e.id, e.command])).toEqual([
      [change(0), write(1, '', 'a')],
      [change(1), write(1, 'a', 'ab')],
    ]);
    expect(enqueue(queue, write(1, 'ab', 'abc'), change(2))).toHaveLength(2);
    // What was typed over another text stands on that one.
    expect(enqueue(queue, write(1, 'a', 'abc'), change(2))).toHaveLength(3);
  });

  test('a clock joined to an outcome keeps both', () => {
    expect(queueOf(log(1, 300, null), log(1, null, 'finished')).map((e) => e.command)).toEqual([
      log(1, 300, 'finished'),
    ]);
    expect(queueOf(log(1, 300, 'partly'), log(1, 320, null)).map((e) => e.command)).toEqual([
      log(1, 320, 'partly'),
    ]);
  });

  test('law: the last text of every field is what the queue ends on, whatever is attempted or settled', () => {
    const step = fc.oneof(
      fc.record({
        kind: fc.constant('write' as const),
        n: fc.integer({ min: 1, max: 3 }),
        text: fc.string(),
      }),
      fc.record({
        kind: fc.constant('close' as const),
        n: fc.integer({ min: 1, max: 3 }),
        text: fc.constant(''),
      }),
      fc.record({ kind: fc.constant('begin' as const), n: fc.constant(0), text: fc.constant('') }),
      fc.record({ kind: fc.constant('settle' as const), n: fc.constant(0), text: fc.constant('') }),
    );
    fc.assert(
      fc.property(fc.array(step, { maxLength: 40 }), (steps) => {
        let queue: OutboxQueue = [];
        const stored = new Map<string, string>();
        const wanted = new Map<string, string>();
        const apply = (command: OutboxCommand) => {
          if (command.type !== 'lesson.write') return;
          // The server keeps both texts where the stored one is not the base: it must never come to that here.
          expect(stored.get(command.lesson) ?? '').toBe(command.base);
          stored.set(command.lesson, command.text);
        };
        steps.forEach((s, n) => {
          if (s.kind === 'write') {
            queue = enqueue(queue, write(s.n, wanted.get(lesson(s.n)) ?? '', s.text), change(n));
            wanted.set(lesson(s.n), s.text);
          } else if (s.kind === 'close') queue = enqueue(queue, close(s.n), change(n));
          else {
            const first = queue[0];
            if (!first) return;
            queue = begin(queue, first.id);
            if (s.kind === 'settle') {
              apply(first.command);
              queue = settle(queue, first.id);
            }
          }
          const orders = queue.map((e) => e.order);
          expect(orders).toEqual([...orders].sort((a, b) => a - b));
        });
        for (const entry of queue) apply(entry.command);
        expect(stored).toEqual(wanted);
      }),
      { numRuns: 500 },
    );
  });
});

describe('carrying on', () => {
  const first = { id: change(0), order: 1, attempts: 1, command: write(1, '', 'Low F') };
  const rest = change(9);

  test('what others had written goes into what was typed since, and into nothing else', () => {
    const queue = queueOf(
      write(1, 'Low F', 'Low F sharp'),
      close(1),
      write(1, 'Low F sharp', 'Low F sharp.'),
      write(2, '', 'Low F'),
    );
    const wrote = { text: 'Theirs\n\nLow F', typed: 'Low F', over: 'Theirs' };
    expect(carryOn(queue, first, wrote, rest)?.queue.map((e) => e.command)).toEqual([
      write(1, 'Theirs\n\nLow F', 'Theirs\n\nLow F sharp'),
      close(1),
      write(1, 'Theirs\n\nLow F sharp', 'Theirs\n\nLow F sharp.'),
      write(2, '', 'Low F'),
    ]);
  });

  test('what was attempted stays as it is, since it may have been taken', () => {
    const queue = begin(queueOf(write(1, 'Low F', 'Low F sharp')), change(0));
    const wrote = { text: 'Theirs\n\nLow F', typed: 'Low F', over: 'Theirs' };
    expect(carryOn(queue, first, wrote, rest)?.queue).toEqual(queue);
  });

  test('the rest of what was taken too early is sent too', () => {
    const wrote = { text: 'Theirs\n\nLow', typed: 'Low', over: 'Theirs' };
    expect(carryOn([], first, wrote, rest)?.queue).toEqual([
      { id: rest, order: 1, attempts: 0, command: write(1, 'Theirs\n\nLow', 'Theirs\n\nLow F') },
    ]);
  });
});

test('what an earlier page left comes first, and is what is on its way where nothing else is', () => {
  const left = queueOf(write(1, '', 'left'), close(1));
  const all = queueAfter(left, [
    ...left.slice(0, 1),
    { id: change(7), order: 1, attempts: 0, command: write(2, '', 'own') },
  ]);
  expect(all.map((e) => [e.id, e.order])).toEqual([
    [change(0), 1],
    [change(1), 2],
    [change(7), 3],
  ]);
  expect(textOnItsWay(all, `${lesson(1)} note`)).toBe('left');
  expect(textOnItsWay(all, `${lesson(3)} note`)).toBeNull();
});

test('only fresh typing may wait; a level, an outcome or a close goes at once', () => {
  expect(mayWait(queueOf(write(1, '', 'a'), log(1, 10, null)))).toBe(true);
  expect(mayWait(queueOf(write(1, '', 'a'), log(1, null, 'finished')))).toBe(false);
  expect(mayWait(queueOf(write(1, '', 'a'), close(1)))).toBe(false);
  expect(mayWait(begin(queueOf(write(1, '', 'a')), change(0)))).toBe(false);
});

test('tries come further apart, up to 15 s', () => {
  expect([1, 2, 3, 6, 20].map(backoffOf)).toEqual([500, 1000, 2000, 15_000, 15_000]);
});

test('an answer is waited for longer each time, and for a take as long as a slow network takes', () => {
  // Our own choice, no source.
  expect([0, 1, 2, 3, 9].map((failures) => patienceOf(close(1), failures) / 1000)).toEqual([
    10, 20, 40, 80, 80,
  ]);
  const megabytes = 2 ** 21;
  const take = { type: 'take.keep', sound: { data: 'x'.repeat(megabytes) } } as unknown as OutboxCommand;
  expect(patienceOf(take, 0)).toBeGreaterThan(megabytes / 16);
});
