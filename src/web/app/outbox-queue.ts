// What waits to be sent while a lesson is taught, as plain data: nothing typed is lost, order is kept, and a burst of
// typing becomes one change. One queue in order of making keeps the order of every lesson.
//
// An entry that was ever attempted is frozen: its reply may have been lost after the server applied it, and the same id
// is applied once. What comes after it is a new entry whose `base` is the text before it. Once the reply tells what others
// had written meanwhile, that is carried into all that follows, so that a `base` is a text that the studio had.

import type { CommandOf, Fault, WrittenText } from '#contract';
import { applyEdit, type Edit, editBetween, type Id, mergeEdits, mergeTexts } from '#core';

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
  /** Why the studio refused it, where it is kept all the same, out of the queue, until somebody decides. */
  readonly refused?: Fault;
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

/** Text on its way to its field. */
type Write = CommandOf<'lesson.write'> | CommandOf<'segment.write'>;

const isWrite = (command: OutboxCommand): command is Write =>
  command.type === 'lesson.write' || command.type === 'segment.write';

/** One command that says what two in a row said. Keeps the first `base` of writes. */
function joined(first: OutboxCommand, second: OutboxCommand): OutboxCommand | null {
  if (isWrite(first) && isWrite(second))
    return second.base === first.text ? { ...second, base: first.base } : null;
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

/** The text that a field will have once all that waits has arrived; null where nothing waits for it. */
export function textOnItsWay(queue: OutboxQueue, field: string): string | null {
  const last = queue.findLast(({ command }) => isWrite(command) && fieldOf(command) === field)?.command;
  return last && isWrite(last) ? last.text : null;
}

/**
 * The queue with one more command at its end. It joins the newest entry of the same field where that was never
 * attempted and nothing but writes and logs stands behind it; else it becomes an entry of its own with `id`. A text joins
 * only the text that it was typed over.
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

/** The queue with what a page that is gone left before it, each entry once. */
export function queueAfter(left: OutboxQueue, own: OutboxQueue): OutboxQueue {
  const top = left.at(-1)?.order ?? 0;
  const rest = own.filter((entry) => !left.some(({ id }) => id === entry.id));
  return [...left, ...rest.map((entry) => ({ ...entry, order: entry.order + top }))];
}

/** The queue with this entry's sending begun once more. */
export function begin(queue: OutboxQueue, id: Id<'change'>): OutboxQueue {
  return queue.map((entry) => (entry.id === id ? { ...entry, attempts: entry.attempts + 1 } : entry));
}

/** The queue without an entry that the server has taken, or refused for good. */
export function settle(queue: OutboxQueue, id: Id<'change'>): OutboxQueue {
  return queue.filter((entry) => entry.id !== id);
}

/**
 * What is kept where this entry is refused: a take, since nobody can play it again, with the levels in `others` that rest on
 * it. What was typed is given back on screen instead.
 */
export function keptThough(entry: OutboxEntry, others: OutboxQueue): OutboxQueue {
  const { command } = entry;
  if (command.type !== 'take.keep') return [];
  const restsOnIt = ({ command: other }: OutboxEntry) =>
    other.type === 'observe' && other.take === command.take.id;
  return [entry, ...others.filter(restsOnIt)];
}

export interface Carried {
  readonly queue: OutboxQueue;
  readonly field: string;
  /** The last text that was typed over the one that was taken, and what others did as an edit of it. */
  readonly from: string;
  readonly edit: Edit;
}

/**
 * The queue once the server has told what became of a text that it took (`taken` is no longer in it): what others had
 * written goes into every later text that was typed over it. Where the server took another text under this id, because another
 * window had sent it before more was typed, the rest is sent as `rest`.
 */
export function carryOn(
  queue: OutboxQueue,
  taken: OutboxEntry,
  wrote: WrittenText,
  rest: Id<'change'>,
): Carried | null {
  const { command } = taken;
  if (!isWrite(command)) return null;
  const field = fieldOf(command) ?? '';
  const typed = wrote.typed ?? wrote.text;
  const more: OutboxQueue =
    typed === command.text
      ? []
      : [{ ...taken, id: rest, attempts: 0, command: { ...command, base: typed, text: command.text } }];
  const merged = mergeTexts({ base: command.base, theirs: wrote.over ?? command.base, mine: typed });
  let edit = merged.text === wrote.text ? merged.overMine : editBetween(typed, wrote.text);
  let from = more.length > 0 ? typed : command.text;
  const carried = [...more, ...queue].map((entry): OutboxEntry => {
    const later = entry.command;
    // What was attempted may have been taken as it is, and what was typed over another text stands on that.
    if (!isWrite(later) || fieldOf(later) !== field || later.base !== from || entry.attempts > 0)
      return entry;
    const both = mergeEdits(from, edit, editBetween(from, later.text), true);
    const base = applyEdit(from, edit);
    from = later.text;
    edit = both.overMine;
    return { ...entry, command: { ...later, base, text: both.text } };
  });
  return { queue: carried, field, from, edit };
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
 * Milliseconds in which an answer is looked for after so many failures: 10 s, doubled up to 80 s for a machine that is
 * busy, and the time that a take takes over a slow network (16 bytes a millisecond).
 */
export function patienceOf(command: OutboxCommand, failures: number): number {
  const bytes = command.type === 'take.keep' ? JSON.stringify(command).length : 0;
  return 10_000 * 2 ** Math.min(3, failures) + Math.ceil(bytes / 16);
}
