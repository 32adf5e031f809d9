// Ears of a screen reader: what the page's live regions say, in order, one line for each change (WAI-ARIA 1.2, live regions).

import type { Page } from 'playwright-core';

declare global {
  interface Window {
    levareHeard?: string[];
  }
}

export interface Listener {
  /** All that was said since the last call. */
  heard(): Promise<readonly string[]>;
}

/** Call before the page is opened. */
export async function listenTo(page: Page): Promise<Listener> {
  await page.addInitScript(() => {
    const said: string[] = [];
    window.levareHeard = said;
    new MutationObserver((changes) => {
      for (const { type, target, addedNodes } of changes)
        for (const node of type === 'characterData' ? [target] : addedNodes) {
          const element = node instanceof Element ? node : node.parentElement;
          // A region that comes with its words says nothing: it has to be there before.
          const region = node.parentElement?.closest('[aria-live], [role=status], [role=alert], [role=log]');
          const text = node.textContent?.trim() ?? '';
          if (!region || region.getAttribute('aria-live') === 'off' || text === '') continue;
          if (!element?.closest('[aria-hidden=true]')) said.push(text);
        }
    }).observe(document, { subtree: true, childList: true, characterData: true });
  });
  return {
    heard: () => page.evaluate(() => window.levareHeard?.splice(0) ?? []),
  };
}
