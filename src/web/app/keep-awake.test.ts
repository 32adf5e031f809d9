import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { keepAwake } from './keep-awake.ts';

/** A browser that counts its locks. */
function createBrowser() {
  const page = Object.assign(new EventTarget(), { visibilityState: 'visible' as DocumentVisibilityState });
  let refuses = false;
  const held = new Set<EventTarget>();
  const locks = {
    async request(): Promise<WakeLockSentinel> {
      if (refuses) throw new DOMException('low battery', 'NotAllowedError');
      const lock = Object.assign(new EventTarget(), {
        released: false,
        type: 'screen' as const,
        onrelease: null,
        async release() {
          held.delete(lock);
          lock.dispatchEvent(new Event('release'));
        },
      });
      held.add(lock);
      return lock;
    },
  };
  return {
    outside: { locks, page },
    locks: () => held.size,
    refuse: () => {
      refuses = true;
    },
    /** As a browser does when the page is put away: the lock is gone. */
    async see(state: DocumentVisibilityState) {
      page.visibilityState = state;
      if (state === 'hidden')
        for (const lock of held) {
          held.delete(lock);
          lock.dispatchEvent(new Event('release'));
        }
      page.dispatchEvent(new Event('visibilitychange'));
      await vi.advanceTimersByTimeAsync(0);
    },
  };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('a screen kept awake', () => {
  it('is let go when nobody wants it any more', async () => {
    const browser = createBrowser();
    const stop = keepAwake(browser.outside, 1000);
    await vi.advanceTimersByTimeAsync(0);
    expect(browser.locks()).toBe(1);
    stop();
    expect(browser.locks()).toBe(0);
  });
  it('is let go also when the lock comes late', async () => {
    const browser = createBrowser();
    keepAwake(browser.outside, 1000)();
    await vi.advanceTimersByTimeAsync(0);
    expect(browser.locks()).toBe(0);
  });
  it('is asked for again when the page comes back', async () => {
    const browser = createBrowser();
    keepAwake(browser.outside, 1000);
    await vi.advanceTimersByTimeAsync(0);
    await browser.see('hidden');
    expect(browser.locks()).toBe(0);
    await browser.see('visible');
    expect(browser.locks()).toBe(1);
  });
  it('goes dark when it is left alone, and wakes with a touch', async () => {
    const browser = createBrowser();
    keepAwake(browser.outside, 1000);
    await vi.advanceTimersByTimeAsync(900);
    browser.outside.page.dispatchEvent(new Event('pointerdown'));
    await vi.advanceTimersByTimeAsync(900);
    expect(browser.locks()).toBe(1);
    await vi.advanceTimersByTimeAsync(200);
    expect(browser.locks()).toBe(0);
    browser.outside.page.dispatchEvent(new Event('keydown'));
    await vi.advanceTimersByTimeAsync(0);
    expect(browser.locks()).toBe(1);
  });
  it('is nothing to stumble over where it is refused', async () => {
    const browser = createBrowser();
    browser.refuse();
    const stop = keepAwake(browser.outside, 1000);
    await vi.advanceTimersByTimeAsync(0);
    expect(browser.locks()).toBe(0);
    stop();
  });
});
