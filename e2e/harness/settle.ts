import type { Page } from 'playwright-core';

/**
 * Waits until what watches the width has drawn, and colours that fade over have arrived. A browser without a head may
 * stop drawing a page that stands still, and its animations with it: then as long as a frame and a fade would take at most.
 */
export const settle = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    const atMost = (wanted: Promise<unknown>) =>
      Promise.race([wanted, new Promise((done) => setTimeout(done, 400))]);
    // What one change sets going may set another going when it arrives.
    for (let quiet = 0, n = 0; quiet < 3 && n < 12; quiet++, n++) {
      await atMost(new Promise(requestAnimationFrame));
      const moving = document.getAnimations().filter((one) => one.playState === 'running');
      if (moving.length > 0) quiet = 0;
      await atMost(Promise.allSettled(moving.map((one) => one.finished)));
    }
  });
