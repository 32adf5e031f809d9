// The durable way of a lesson's writing to the server: kept in this browser at once, sent in order, tried again until
// it is taken. The queue's rules are in outbox-queue.ts; this owns the store, the sending and the waiting.

import type { CommandReply } from '#contract';
import type { Id, Result } from '#core';
import type { ApiFault } from './api.ts';
import {
  backoffOf,
  begin,
  enqueue,
  mayWait,
  type OutboxCommand,
  type OutboxEntry,
  type OutboxQueue,
  rebase,
  settle,
  type WrittenText,
} from './outbox-queue.ts';
import type { OutboxStore } from './outbox-store.ts';

/** saved: nothing waits · saving: on its way · waiting: the server was not reached, kept here and tried again. */
export type OutboxState = 'saved' | 'saving' | 'waiting';

export interface OutboxStatus {
  readonly state: OutboxState;
  readonly pending: number;
  /** False where this browser keeps nothing: what waits is lost with the page. */
  readonly durable: boolean;
  /** Rises when the studio's texts were changed by other means (an undo, another window): echoes are over. */
  readonly epoch: number;
  /** What stands in the way until somebody mends it, in the server's words; else null. */
  readonly trouble: string | null;
}

export interface OutboxSettled {
  readonly command: OutboxCommand;
  readonly reply: Result<CommandReply, ApiFault>;
}

export interface Outbox {
  /** Takes a command and returns at once. `id` is that of a change that was sent already and had no answer. */
  post(command: OutboxCommand, id?: Id<'change'>): void;
  /** Sends what waits for more typing now; resolves when nothing is pending or the server is not reached. */
  flush(): Promise<void>;
  status(): OutboxStatus;
  subscribe(listener: () => void): () => void;
  /** Tells of every command the server took, or refused for good. */
  onSettled(listener: (settled: OutboxSettled) => void): () => void;
  /** The studio's texts were changed by other means (an undo, another window): a base is again what it says. */
  forgetWritten(): void;
  /** Picks up what pages that are gone left behind, now and when another closes, and starts sending. */
  start(): Promise<void>;
}

export interface OutboxParts {
  readonly store: OutboxStore;
  readonly send: (id: Id<'change'>, command: OutboxCommand) => Promise<Result<CommandReply, ApiFault>>;
  readonly newChangeId: () => Id<'change'>;
  /** Calls back after some milliseconds; returns how to call it off. */
  readonly after: (milliseconds: number, callback: () => void) => () => void;
  /** How long typing must rest before it is sent. */
  readonly restMilliseconds: number;
  /** The longest that typing waits, however fast it goes on. */
  readonly longestMilliseconds: number;
}

/** Tries of one entry over which the server breaks; then it is refused, and its text is shown. */
const mostBroken = 5;

/** Refused until somebody mends something: a link to be opened, a disk to be cleared. */
const isForTheTeacher = (fault: ApiFault): boolean =>
  fault.kind === 'NotSignedIn' || fault.kind === 'CannotKeep';

/** Makes an outbox over a store, a way to send and a clock. */
export function createOutbox(parts: OutboxParts): Outbox {
  let queue: OutboxQueue = [];
  let written: ReadonlyMap<string, WrittenText> = new Map();
  let failures = 0;
  /** Times in a row that the server broke over the entry at the head. */
  let broken = 0;
  /** After that it is left alone for a while, whoever asks. */
  let resting = false;
  let sending = false;
  let durable = true;
  let callOff: (() => void) | null = null;
  let longest: (() => void) | null = null;
  let epoch = 0;
  let trouble: string | null = null;
  let status: OutboxStatus = { state: 'saved', pending: 0, durable, epoch, trouble };
  const listeners = new Set<() => void>();
  const settledListeners = new Set<(settled: OutboxSettled) => void>();

  function publish(): void {
    const state: OutboxState = queue.length === 0 ? 'saved' : failures > 0 ? 'waiting' : 'saving';
    const next: OutboxStatus = { state, pending: queue.length, durable, epoch, trouble };
    if (JSON.stringify(next) === JSON.stringify(status)) return;
    status = next;
    for (const listener of listeners) listener();
  }

  function keep(work: Promise<void>): Promise<void> {
    return work.catch(() => {
      durable = false;
      publish();
    });
  }

  async function attempt(entry: OutboxEntry): Promise<boolean> {
    queue = begin(queue, entry.id);
    const begun = queue.find((e) => e.id === entry.id) ?? entry;
    // Kept as attempted before it leaves, so that a page that dies now does not join more to it.
    await keep(parts.store.put(begun));
    const reply = await parts.send(begun.id, begun.command);
    if (!reply.ok && isWorthAnotherTry(reply.error)) {
      failures++;
      trouble = isForTheTeacher(reply.error) ? reply.error.message : null;
      publish();
      return false;
    }
    failures = 0;
    trouble = null;
    broken = 0;
    queue = settle(queue, begun.id);
    await keep(parts.store.remove(begun.id));
    for (const listener of settledListeners) listener({ command: begun.command, reply });
    publish();
    return true;
  }

  /**
   * Not reached, not known here yet, or no room there: for ever. Broken over it: a few times, since it may be over what
   * was asked.
   */
  function isWorthAnotherTry(fault: ApiFault): boolean {
    if (fault.offline || isForTheTeacher(fault)) return true;
    if (fault.kind !== 'Broken') return false;
    broken++;
    resting = broken < mostBroken;
    return resting;
  }

  function forgetTimers(): void {
    callOff?.();
    longest?.();
    callOff = null;
    longest = null;
  }

  async function drain(): Promise<void> {
    if (resting) return;
    forgetTimers();
    if (sending) return;
    sending = true;
    try {
      for (let next = queue[0]; next; next = queue[0]) {
        if (!(await attempt(next))) {
          schedule(backoffOf(failures));
          return;
        }
      }
    } finally {
      sending = false;
    }
  }

  function schedule(milliseconds: number): void {
    callOff?.();
    callOff = parts.after(milliseconds, () => {
      resting = false;
      void drain();
    });
  }

  return {
    post(given, id = parts.newChangeId()) {
      const moved = rebase(given, written);
      written = moved.written;
      const before = queue;
      queue = enqueue(queue, moved.command, id);
      const changed = queue.filter((entry) => !before.includes(entry));
      for (const entry of changed) void keep(parts.store.put(entry));
      publish();
      if (sending || failures > 0) return;
      if (!mayWait(queue)) {
        void drain();
        return;
      }
      longest ??= parts.after(parts.longestMilliseconds, () => void drain());
      schedule(parts.restMilliseconds);
    },
    async flush() {
      if (!sending) {
        await drain();
        return;
      }
      await new Promise<void>((resolve) => {
        const look = () => {
          if (status.state === 'saving') return;
          listeners.delete(look);
          resolve();
        };
        listeners.add(look);
        look();
      });
    },
    status: () => status,
    subscribe(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    onSettled(listener) {
      settledListeners.add(listener);
      return () => settledListeners.delete(listener);
    },
    forgetWritten() {
      written = new Map();
      epoch++;
      publish();
    },
    async start() {
      try {
        await parts.store.adopt((left) => {
          // What this page made while loading comes after what an earlier one left.
          const top = left.at(-1)?.order ?? 0;
          const own = queue.filter((entry) => !left.some((e) => e.id === entry.id));
          queue = [...left, ...own.map((entry) => ({ ...entry, order: entry.order + top }))];
          publish();
          if (failures === 0) void drain();
        });
      } catch {
        durable = false;
        publish();
      }
      if (queue.length > 0) await drain();
    },
  };
}
