// What waits to be sent while a lesson is taught, as plain data: nothing typed is lost, order is kept, and a burst of
// typing becomes one change. One queue in order of making keeps the order of every lesson.
//
// An entry that was ever attempted is frozen: its reply may have been lost after the server applied it, and the same id
// is applied once. What comes after it is a new entry whose `base` is the text before it.

import type { CommandOf } from '#contract';
import type { Id } from '#core';

export type OutboxCommand =
  | CommandOf<'lesson.write'>
  | CommandOf<'segment.write'>
  | CommandOf<'segment.log'>
  | CommandOf<'lesson.absent'>
  | CommandOf<'observe'>
  | CommandOf<'take.keep'>
  | CommandOf<'lesson.close'>;

export interface OutboxEntry {
  readonly id: Id<'change'>;
  /** Rises with every entry; the order of sending. */
  readonly order: number;
  readonly command: OutboxCommand;
  /** How often sending was begun. */
  readonly attempts: number;
}

export type OutboxQueue = readonly OutboxEntry[];

/** Which field a write, a log or an absence goes to; null for what is never joined. */
export function fieldOf(command: OutboxCommand): string | null {
  switch (command.type) {
    case 'lesson.write':
      return `${command.lesson} ${command.field}`;
    case 'segment.write':
      return `${command.segment} note`;
    case 'segment.log':
      return `${command.segment} log`;
    case 'lesson.absent':
      return `${command.lesson} absent`;
    default:
      return null;
  }
}

/** One command that says what two in a row said. Keeps the first `base` of writes. */
function joined(first: OutboxCommand, second: OutboxCommand): OutboxCommand | null {
  if (first.type === 'lesson.write' && second.type === 'lesson.write') return { ...second, base: first.base };
  if (first.type === 'segment.write' && second.type === 'segment.write')
    return { ...second, base: first.base };
  if (first.type === 'segment.log' && second.type === 'segment.log')
    return {
      ...second,
      seconds: second.seconds ?? first.seconds,
      outcome: second.outcome ?? first.outcome,
      share: second.outcome === null ? (second.share ?? first.share) : second.share,
    };
  // The newest says all of it.
  if (first.type === 'lesson.absent' && second.type === 'lesson.absent') return second;
  return null;
}

/**
 * The queue with one more command at its end. It joins the newest entry of the same field where that was never
 * attempted and nothing but writes and logs stands behind it; else it becomes an entry of its own with `id`.
 */
export function enqueue(queue: OutboxQueue, command: OutboxCommand, id: Id<'change'>): OutboxQueue {
  const field = fieldOf(command);
  for (let at = queue.length - 1; field !== null && at >= 0; at--) {
    const entry = queue[at];
    if (!entry || fieldOf(entry.command) === null) break;
    if (fieldOf(entry.command) !== field) continue;
    const both = entry.attempts === 0 ? joined(entry.command, command) : null;
    if (both === null) break;
    return queue.with(at, { ...entry, command: both });
  }
  const order = (queue.at(-1)?.order ?? 0) + 1;
  return [...queue, { id, order, command, attempts: 0 }];
}

/** The queue with this entry's sending begun once more. */
export function begin(queue: OutboxQueue, id: Id<'change'>): OutboxQueue {
  return queue.map((entry) => (entry.id === id ? { ...entry, attempts: entry.attempts + 1 } : entry));
}

/** The queue without an entry that the server has taken, or refused for good. */
export function settle(queue: OutboxQueue, id: Id<'change'>): OutboxQueue {
  return queue.filter((entry) => entry.id !== id);
}

/** Whether sending may wait for more typing: nothing but writes, and logs that only carry the clock. */
export function mayWait(queue: OutboxQueue): boolean {
  return queue.every(({ command, attempts }) => {
    if (attempts > 0) return false;
    if (command.type === 'segment.log') return command.outcome === null;
    return command.type === 'lesson.write' || command.type === 'segment.write';
  });
}

/** Milliseconds to wait before the next try after so many failures: 0.5 s, doubled each time, at most 15 s. */
export function backoffOf(failures: number): number {
  return Math.min(15_000, 500 * 2 ** Math.max(0, failures - 1));
}

/**
 * What each field was last given by this window. A caller's `base` is the text it began from; where this window has
 * written since, the true base is what it last wrote.
 */
export interface WrittenText {
  readonly from: string;
  readonly last: string;
}

/** The command with its `base` moved on to what this window last wrote in that field. */
export function rebase(
  command: OutboxCommand,
  written: ReadonlyMap<string, WrittenText>,
): { readonly command: OutboxCommand; readonly written: ReadonlyMap<string, WrittenText> } {
  if (command.type !== 'lesson.write' && command.type !== 'segment.write') return { command, written };
  const field = fieldOf(command) ?? '';
  const chain = written.get(field);
  const follows = chain !== undefined && (command.base === chain.from || command.base === chain.last);
  const next = new Map(written).set(field, {
    from: follows ? chain.from : command.base,
    last: command.text,
  });
  return { command: follows ? { ...command, base: chain.last } : command, written: next };
}
