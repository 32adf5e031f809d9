// Where the outbox survives a reload, a closed lid and a dead server: one object store of IndexedDB.

import type { OutboxEntry } from './outbox-queue.ts';

export interface OutboxStore {
  load(): Promise<readonly OutboxEntry[]>;
  put(entry: OutboxEntry): Promise<void>;
  remove(id: OutboxEntry['id']): Promise<void>;
}

const storeName = 'waiting';

function done<T>(request: IDBRequest<T>): Promise<T> {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

function open(): Promise<IDBDatabase> {
  const request = indexedDB.open('levare-outbox', 1);
  request.onupgradeneeded = () => request.result.createObjectStore(storeName, { keyPath: 'id' });
  return done(request);
}

/** A store in this browser. Every call rejects where the browser keeps none (some private windows). */
export function createBrowserStore(): OutboxStore {
  let database: Promise<IDBDatabase> | null = null;
  const storeFor = async (mode: IDBTransactionMode) => {
    database ??= open();
    // `relaxed` would let a power cut lose what was typed.
    return (await database).transaction(storeName, mode, { durability: 'strict' }).objectStore(storeName);
  };
  return {
    async load() {
      const all: OutboxEntry[] = await done((await storeFor('readonly')).getAll());
      return all.sort((a, b) => a.order - b.order);
    },
    async put(entry) {
      await done((await storeFor('readwrite')).put(entry));
    },
    async remove(id) {
      await done((await storeFor('readwrite')).delete(id));
    },
  };
}
