import type { Page } from 'playwright-core';
import { words } from '../../src/web/words/index.ts';

/** The studio's settings. */
export function createSettingsPage(page: Page) {
  return {
    /** Exports everything to a file at `path`. */
    async exportTo(path: string): Promise<void> {
      const downloading = page.waitForEvent('download');
      await page.getByRole('link', { name: words.settings.keep.exportAction }).click();
      await (await downloading).saveAs(path);
    },
  };
}
