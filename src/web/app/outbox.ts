// The durable way of a lesson's writing to the server: kept in this browser at once, sent in order, tried again until
// it is taken. The queue's rules are in outbox-queue.ts; this owns the store, the sending and the waiting.

import type { CommandReply } from '#contract';
import type { Edit, Id, Result } from '#core';
import type { ApiFault } from './api.ts';
import {
  backoffOf,
  begin,
  carryOn,
  enqueue,
  fieldOf,
  keptThough,
  mayWait,
  type OutboxCommand,
  type OutboxEntry,
  type OutboxQueue,
  patienceOf,
  queueAfter,
  settle,
  textOnItsWay,
} from './outbox-queue.ts';
import type { OutboxStore } from './outbox-store.ts';

/** saved: nothing waits · saving: on its way · waiting: the server was not reached, kept here and tried again. */
export type OutboxState = 'saved' | 'saving' | 'waiting';

export interface OutboxStatus {
  readonly state: OutboxState;
  readonly pending: number;
  /** False where this browser keeps nothing: what waits is lost with the page. */
  readonly durable: boolean;
  /** What stands in the way until somebody mends it, in the server's words; else null. */
  readonly trouble: string | null;
  /** Takes that the studio refused, and the levels that rest on them: kept here, and no longer sent. */
  readonly refused: OutboxQueue;
  /** How often what was written here was forgotten (`forgetKnown`): then texts are to be looked at anew. */
  readonly forgotten: number;
}

export interface OutboxSettled {
  readonly command: OutboxCommand;
  readonly reply: Result<CommandReply, ApiFault>;
}

/** The text of a field as this window knows it best. */
export interface KnownText {
  readonly text: string;
  /** The revision of the course that first had it; null while the text is still on its way. */
  readonly revision: number | null;
}

export type CarriedListener = (field: string, from: string, edit: Edit) => void;

export interface Outbox {
  /**
   * Takes a command and returns at once. `id` is that of a change that was sent already and had no answer; `sent` where that
   * one may still come: then it is not sent beside it.
   */
  post(command: OutboxCommand, id?: Id<'change'>, sent?: Promise<Result<CommandReply, ApiFault>>): void;
  /** Sends a refused take once more, with its levels. */
  tryAgain(id: Id<'change'>): void;
  /** Lets go of a refused take for good, with its levels. */
  discard(id: Id<'change'>): void;
  /** Sends what waits for more typing now; resolves when nothing is pending or the server is not reached. */
  flush(): Promise<void>;
  status(): OutboxStatus;
  subscribe(listener: () => void): () => void;
  /** Tells of every command the server took, or refused for good. */
  onSettled(listener: (settled: OutboxSettled) => void): () => void;
  /** What this window wrote in a field (see `fieldOf`), or has on its way there; null where it wrote nothing. */
  known(field: string): KnownText | null;
  /** Tells what others did, as an edit of the text `from` that this window has on its way. */
  onCarried(listener: CarriedListener): () => void;
  /**
   * The studio may be another than before: what it tells next is true, whatever its revision. `told` ends when it has been asked
   * for all anew; until then what was written here is known better than what is still on screen from before.
   */
  forgetKnown(told: Promise<unknown>): Promise<void>;
  /** Picks up what pages that are gone left behind, now and when another closes, and starts sending. */
  start(): Promise<void>;
}

export interface OutboxParts {
  readonly store: OutboxStore;
  /** Gives up after so many milliseconds, as where the server is not reached: a network that went away says nothing. */
  readonly send: (
    id: Id<'change'>,
    command: OutboxCommand,
    milliseconds: number,
  ) => Promise<Result<CommandReply, ApiFault>>;
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
  let refused: OutboxQueue = [];
  const underway = new Map<string, Promise<Result<CommandReply, ApiFault>>>();
  /** Sent for a window that closed, in a field that is written here too: it stands on what that one had on screen. */
  const strange = new Set<OutboxEntry['id']>();
  const known = new Map<string, KnownText & { readonly revision: number }>();
  let failures = 0;
  /** Times in a row that the server broke over the entry at the head. */
  let broken = 0;
  /** After that it is left alone for a while, whoever asks. */
  let resting = false;
  let sending = false;
  let durable = true;
  let callOff: (() => void) | null = null;
  let longest: (() => void) | null = null;
  let trouble: string | null = null;
  let forgotten = 0;
  let status: OutboxStatus = { state: 'saved', pending: 0, durable, trouble, refused, forgotten };
  const listeners = new Set<() => void>();
  const settledListeners = new Set<(settled: OutboxSettled) => void>();
  const carriedListeners = new Set<CarriedListener>();

  function publish(): void {
    const state: OutboxState = queue.length === 0 ? 'saved' : failures > 0 ? 'waiting' : 'saving';
    const next: OutboxStatus = { state, pending: queue.length, durable, trouble, refused, forgotten };
    const keys = Object.keys(next) as (keyof OutboxStatus)[];
    if (keys.every((key) => next[key] === status[key])) return;
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
    const sent = underway.get(begun.id);
    underway.delete(begun.id);
    const reply = await (sent ?? parts.send(begun.id, begun.command, patienceOf(begun.command, failures)));
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
    const kept: OutboxQueue = reply.ok
      ? []
      : keptThough(begun, queue).map((one) => ({ ...one, refused: reply.error }));
    if (kept.length > 0) refused = [...refused, ...kept];
    queue = queue.filter(({ id }) => !kept.some((one) => one.id === id));
    const before = queue;
    if (reply.ok) hearWritten(begun, reply.value);
    await keep(parts.store.settle(begun.id, [...kept, ...queue.filter((entry) => !before.includes(entry))]));
    for (const listener of settledListeners) listener({ command: begun.command, reply });
    publish();
    return true;
  }

  function isWrittenHere(command: OutboxCommand): boolean {
    const field = fieldOf(command);
    return field !== null && (known.has(field) || queue.some((own) => fieldOf(own.command) === field));
  }

  /** What others wrote meanwhile goes into what follows, and into what is on screen. */
  function hearWritten(taken: OutboxEntry, { wrote, courses }: CommandReply): void {
    const carried = wrote && carryOn(queue, taken, wrote, parts.newChangeId());
    if (!carried) return;
    const { field, from, edit } = carried;
    queue = carried.queue;
    known.set(field, { text: wrote.text, revision: courses[0]?.revision ?? known.get(field)?.revision ?? 0 });
    if (edit.length > 0) for (const listener of carriedListeners) listener(field, from, edit);
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

  const post: Outbox['post'] = (given, id = parts.newChangeId(), sent = undefined) => {
    const before = queue;
    queue = enqueue(queue, given, id);
    if (sent !== undefined) underway.set(id, sent);
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
  };

  /** Takes a refused take and its levels out of what is kept. */
  function takeOut(id: Id<'change'>): OutboxQueue {
    const entry = refused.find((one) => one.id === id);
    const out = entry === undefined ? [] : keptThough(entry, refused);
    refused = refused.filter((one) => !out.includes(one));
    return out;
  }

  return {
    post,
    tryAgain(id) {
      for (const { command, id: change } of takeOut(id)) post(command, change);
      void drain();
    },
    discard(id) {
      for (const { id: change } of takeOut(id)) void keep(parts.store.settle(change, []));
      publish();
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
    known(field) {
      const own = queue.filter(({ id }) => !strange.has(id));
      const text = textOnItsWay(own, field);
      return text === null ? (known.get(field) ?? null) : { text, revision: null };
    },
    onCarried(listener) {
      carriedListeners.add(listener);
      return () => carriedListeners.delete(listener);
    },
    async forgetKnown(told) {
      const doubtful = [...known];
      await told;
      for (const [field, text] of doubtful) if (known.get(field) === text) known.delete(field);
      forgotten++;
      publish();
    },
    async start() {
      try {
        await parts.store.adopt((left) => {
          const unsent = left.filter((entry) => entry.refused === undefined);
          for (const { id, command } of unsent) if (isWrittenHere(command)) strange.add(id);
          queue = queueAfter(unsent, queue);
          if (unsent.length < left.length)
            refused = [...refused, ...left.filter((entry) => entry.refused !== undefined)];
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
