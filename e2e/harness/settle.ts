import type { Page } from 'playwright-core';

/** Waits until what watches the width has drawn, and colours that fade over have arrived. */
export const settle = (page: Page): Promise<void> =>
  page.evaluate(async () => {
    // What one change sets going may set another going when it arrives. Frames are counted, since a fade does not always tell
    // of its end: where an element is drawn anew in the middle of it, its promise is never kept.
    for (let quiet = 0; quiet < 3; quiet++) {
      await new Promise(requestAnimationFrame);
      if (document.getAnimations().some((one) => one.playState === 'running')) quiet = 0;
    }
  });
