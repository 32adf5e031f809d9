// Where the outbox survives a reload, a closed lid and a dead server: one object store of IndexedDB, shared by all windows
// of this browser. Each entry belongs to the page that made it, and no other page sends it while that page is open: it
// may still be growing there.

import { newId } from '../new-id.ts';
import { createPages } from './open-pages.ts';
import type { OutboxEntry } from './outbox-queue.ts';

export interface OutboxStore {
  /**
   * Hands over, in order, what pages that are gone left behind, and makes it this page's: now what there is, later what a
   * page that is open now leaves when it closes. Resolves when what there is now was handed over.
   */
  adopt(take: (left: readonly OutboxEntry[]) => void): Promise<void>;
  put(entry: OutboxEntry): Promise<void>;
  /** Takes an entry out and puts others in, both or neither. */
  settle(id: OutboxEntry['id'], changed: readonly OutboxEntry[]): Promise<void>;
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

/** Resolves when all of it is on disk. */
function kept(transaction: IDBTransaction): Promise<void> {
  return new Promise((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error);
  });
}

/**
 * The newest words in a place that is written before the key is up: the database is written a moment later, and a page
 * that dies in that moment would lose a letter. It holds an entry until the database does.
 */
const mirror = {
  prefix: 'levare-outbox ',
  write(entry: KeptEntry): string {
    const text = JSON.stringify(entry);
    try {
      sessionStorage.setItem(mirror.prefix + entry.id, text);
    } catch {
      // Full or forbidden: the database will have it.
    }
    return text;
  },
  /** Lets go of an entry, if it is still as it was written. */
  drop(id: string, text: string | null = null) {
    try {
      const name = mirror.prefix + id;
      if (text === null || sessionStorage.getItem(name) === text) sessionStorage.removeItem(name);
    } catch {
      // Nothing was kept.
    }
  },
  read(): readonly KeptEntry[] {
    try {
      return Object.keys(sessionStorage)
        .filter((name) => name.startsWith(mirror.prefix))
        .map((name) => JSON.parse(sessionStorage.getItem(name) ?? '') as KeptEntry); // written by `write` alone
    } catch {
      return [];
    }
  },
};

/** A store in this browser. Every call rejects where the browser keeps none (some private windows). */
export function createBrowserStore(): OutboxStore {
  const page = `${lockPrefix}${newId('page')}`;
  const pages = createPages(page);
  let database: Promise<IDBDatabase> | null = null;
  const begin = async () => {
    await pages.isKnown;
    database ??= open();
    // `relaxed` would let a power cut lose what was typed.
    const transaction = (await database).transaction(storeName, 'readwrite', { durability: 'strict' });
    return { store: transaction.objectStore(storeName), isKept: kept(transaction) };
  };

  /** Makes this page's what was left by those that are chosen, in one transaction, so that two pages never both have it. */
  async function takeOver(isChosen: (entry: KeptEntry) => boolean): Promise<readonly OutboxEntry[]> {
    const { store, isKept } = await begin();
    const held: KeptEntry[] = await done(store.getAll());
    const newest = mirror.read();
    const all = [...held.filter((entry) => !newest.some(({ id }) => id === entry.id)), ...newest];
    const chosen = all.filter(isChosen).sort((a, b) => a.order - b.order);
    for (const entry of chosen) store.put({ ...entry, page });
    await isKept;
    for (const { id } of chosen) mirror.drop(id);
    return chosen.map(({ page: _, ...entry }) => entry);
  }

  return {
    async adopt(take) {
      pages.onClosed(async (name) => {
        const left = await takeOver((entry) => entry.page === name);
        if (left.length > 0) take(left);
      });
      const open = await pages.listOpen();
      take(await takeOver((entry) => entry.page === undefined || !open.has(entry.page)));
    },
    async put(entry) {
      const text = mirror.write({ ...entry, page });
      const { store, isKept } = await begin();
      store.put({ ...entry, page });
      await isKept;
      mirror.drop(entry.id, text);
    },
    async settle(id, changed) {
      const texts = changed.map((entry) => mirror.write({ ...entry, page }));
      mirror.drop(id);
      const { store, isKept } = await begin();
      store.delete(id);
      for (const entry of changed) store.put({ ...entry, page });
      await isKept;
      for (const [at, entry] of changed.entries()) mirror.drop(entry.id, texts[at]);
    },
  };
}
