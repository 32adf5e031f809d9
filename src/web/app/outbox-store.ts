// Where the outbox survives a reload, a closed lid and a dead server: one object store of IndexedDB, shared by all windows
// of this browser. Each entry belongs to the page that made it, and no other page sends it while that page is open: it
// may still be growing there. A page shows that it is open by a lock that the browser lets go of when the page ends.

import { newId } from '../new-id.ts';
import type { OutboxEntry } from './outbox-queue.ts';

export interface OutboxStore {
  /**
   * Hands over, in order, what pages that are gone left behind, and makes it this page's: now what there is, later what a
   * page that is open now leaves when it closes. Resolves when what there is now was handed over.
   */
  adopt(take: (left: readonly OutboxEntry[]) => void): Promise<void>;
  put(entry: OutboxEntry): Promise<void>;
  remove(id: OutboxEntry['id']): Promise<void>;
}

const storeName = 'waiting';
const lockPrefix = 'levare-outbox ';

/** `page` names the lock of the page whose entry it is; earlier releases wrote none. */
type KeptEntry = OutboxEntry & { readonly page?: string };

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

/** Holds the lock of this name for as long as the page is open; resolves when it is held. */
function holdForLife(locks: LockManager, name: string): Promise<void> {
  return new Promise((held, failed) => {
    locks
      .request(name, () => {
        held();
        return new Promise<never>(() => {}); // only the end of the page lets go
      })
      .catch(failed);
  });
}

/** A store in this browser. Every call rejects where the browser keeps none (some private windows). */
export function createBrowserStore(): OutboxStore {
  // A browser has no locks on an address of plain http other than this machine's own; there pages cannot know of one another.
  const locks: LockManager | undefined = navigator.locks;
  const page = `${lockPrefix}${newId('page')}`;
  const isOpen = locks === undefined ? Promise.resolve() : holdForLife(locks, page);
  let database: Promise<IDBDatabase> | null = null;
  const storeFor = async (mode: IDBTransactionMode) => {
    await isOpen;
    database ??= open();
    // `relaxed` would let a power cut lose what was typed.
    return (await database).transaction(storeName, mode, { durability: 'strict' }).objectStore(storeName);
  };

  /** Makes this page's what was left by those that are chosen, in one transaction, so that two pages never both have it. */
  async function takeOver(isChosen: (entry: KeptEntry) => boolean): Promise<readonly OutboxEntry[]> {
    const store = await storeFor('readwrite');
    const all: KeptEntry[] = await done(store.getAll());
    const chosen = all.filter(isChosen).sort((a, b) => a.order - b.order);
    for (const entry of chosen) await done(store.put({ ...entry, page }));
    return chosen.map(({ page: _, ...entry }) => entry);
  }

  return {
    async adopt(take) {
      if (locks === undefined) return take(await takeOver(() => true));
      const takeWhenClosed = (name: string) =>
        void locks.request(name, async () => {
          const left = await takeOver((entry) => entry.page === name);
          if (left.length > 0) take(left);
        });
      await isOpen;
      const { held = [] } = await locks.query();
      const openPages = new Set(held.map(({ name }) => name));
      for (const name of openPages) if (name !== page && name?.startsWith(lockPrefix)) takeWhenClosed(name);
      // Pages look for one another when they open, so one that is open already has to be told of a new one.
      const pages = new BroadcastChannel('levare-outbox');
      pages.onmessage = ({ data }) => takeWhenClosed(String(data));
      pages.postMessage(page);
      take(await takeOver((entry) => entry.page === undefined || !openPages.has(entry.page)));
    },
    async put(entry) {
      await done((await storeFor('readwrite')).put({ ...entry, page }));
    },
    async remove(id) {
      await done((await storeFor('readwrite')).delete(id));
    },
  };
}
