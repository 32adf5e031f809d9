// A tablet on a music stand is looked at and not touched: its screen must not go dark in the middle of a lesson. The Screen
// Wake Lock API (W3C) asks for that; a browser without it, or one that refuses, dims as it always did.

export interface AwakeOutside {
  /** `navigator.wakeLock`, where the browser has one and the page came over a safe way. */
  readonly locks: Pick<WakeLock, 'request'>;
  /** The document: a screen that was hidden gives up its lock and has to be asked again. */
  readonly page: EventTarget & { readonly visibilityState: DocumentVisibilityState };
}

/**
 * Keeps the screen on until the answer is called, but no longer than `most` milliseconds after the last touch or key: a
 * tablet left on its stand does not burn all night.
 */
export function keepAwake({ locks, page }: AwakeOutside, most: number): () => void {
  let held: WakeLockSentinel | null = null;
  let asking = false;
  let wanted = true;
  let timer: ReturnType<typeof setTimeout> | undefined;

  const letGo = () => {
    void held?.release().catch(() => undefined);
    held = null;
  };
  const ask = async () => {
    if (held !== null || asking || page.visibilityState !== 'visible') return;
    asking = true;
    const lock = await locks.request('screen').catch(() => null); // a low battery may refuse
    asking = false;
    if (lock === null) return;
    held = lock;
    if (!wanted) return letGo();
    lock.addEventListener('release', () => {
      if (held === lock) held = null;
    });
  };
  const touched = () => {
    wanted = true;
    clearTimeout(timer);
    timer = setTimeout(() => {
      wanted = false;
      letGo();
    }, most);
    void ask();
  };
  const seen = () => {
    if (wanted) void ask();
  };

  page.addEventListener('visibilitychange', seen);
  page.addEventListener('pointerdown', touched);
  page.addEventListener('keydown', touched);
  touched();
  return () => {
    wanted = false;
    clearTimeout(timer);
    page.removeEventListener('visibilitychange', seen);
    page.removeEventListener('pointerdown', touched);
    page.removeEventListener('keydown', touched);
    letGo();
  };
}
