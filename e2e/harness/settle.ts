import type { Page } from 'playwright-core';

/** Waits until what watches the width has drawn, and colours that fade over have arrived. */
export const settle = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    const frame = () => new Promise(requestAnimationFrame);
    // What one change sets going may set another going when it arrives.
    for (let quiet = 0; quiet < 3; quiet++) {
      await frame();
      const moving = document.getAnimations().filter((one) => one.playState === 'running');
      if (moving.length > 0) quiet = 0;
      await Promise.allSettled(moving.map((one) => one.finished));
    }
  });
