// Tells every open window that something changed, so that two windows on one course see the same.

export type LiveNews =
  | {
      readonly event: 'change';
      readonly change: string;
      readonly courses: readonly string[];
      /** A student was erased: nothing says whose courses went, so windows look at everything anew. */
      readonly erased?: true;
    }
  /** How far a long piece of work is, 0 to 1. */
  | { readonly event: 'progress'; readonly work: 'demo' | 'erase'; readonly share: number };

export interface Hub {
  /** Calls `hear` after every change until the returned function is called. */
  listen(hear: (news: LiveNews) => void): () => void;
  tell(news: LiveNews): void;
  /** How many changes were told so far, counted on from where the hub began. */
  told(): number;
}

/** A hub within one process. `from` is where it counts from: more than an earlier one ever told, as milliseconds are. */
export function createHub(from: number): Hub {
  let told = from;
  const listeners = new Set<(news: LiveNews) => void>();
  return {
    listen(hear) {
      listeners.add(hear);
      return () => listeners.delete(hear);
    },
    tell(news) {
      if (news.event === 'change') told++;
      for (const hear of listeners) hear(news);
    },
    told: () => told,
  };
}
