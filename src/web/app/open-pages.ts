// Which pages of this browser are open, so that what one that is gone left unsent is sent by another, and what one that
// is open may still be typing is not. A page shows that it is open by a lock that the browser lets go of when the page
// ends. A browser gives locks only to this machine's own address and to https; elsewhere pages ask one another, and one
// that does not answer is gone.

export interface OpenPages {
  /** Resolves when other pages can tell that this one is open. */
  readonly isKnown: Promise<void>;
  /** The names of the pages that are open now, this one among them. */
  listOpen(): Promise<ReadonlySet<string>>;
  /** Tells of each page that closes from now on. Without locks none is told of: the next page to open finds it gone. */
  onClosed(tell: (name: string) => Promise<void>): void;
}

/** As long as an open page may take to answer another; one that was put to sleep may answer later. */
const answerMilliseconds = 3000;

/** Makes this page known by its name. */
export function createPages(page: string): OpenPages {
  const channel = new BroadcastChannel('levare-outbox');
  const locks: LockManager | undefined = navigator.locks;
  return locks === undefined ? askPages(page, channel) : lockPages(page, channel, locks);
}

function lockPages(page: string, channel: BroadcastChannel, locks: LockManager): OpenPages {
  const isKnown = new Promise<void>((held, failed) => {
    locks
      .request(page, () => {
        held();
        return new Promise<never>(() => {}); // only the end of the page lets go
      })
      .catch(failed);
  });
  const listOpen = async () => {
    await isKnown;
    const { held = [] } = await locks.query();
    return new Set(held.flatMap(({ name }) => name ?? []));
  };
  return {
    isKnown,
    listOpen,
    onClosed(tell) {
      const tellWhenClosed = (name: string) => void locks.request(name, () => tell(name));
      // Pages look for one another when they open, so one that is open already has to be told of a new one.
      channel.onmessage = ({ data }) => tellWhenClosed(String(data));
      void listOpen().then((names) => {
        channel.postMessage(page);
        for (const name of names) if (name !== page) tellWhenClosed(name);
      });
    },
  };
}

const question = 'who is there?';

function askPages(page: string, channel: BroadcastChannel): OpenPages {
  const heard = new Set([page]);
  channel.onmessage = ({ data }) => {
    if (data === question) channel.postMessage(page);
    else heard.add(String(data));
  };
  return {
    isKnown: Promise.resolve(),
    listOpen() {
      channel.postMessage(question);
      return new Promise((list) => setTimeout(() => list(new Set(heard)), answerMilliseconds));
    },
    onClosed() {},
  };
}
