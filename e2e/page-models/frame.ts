// What every screen shares: the places, messages with Undo, the state of what was written, choosing from radios.

import type { Locator, Page } from 'playwright-core';
import { words } from '../../src/web/words/index.ts';

export type Place = 'day' | 'students' | 'units' | 'term' | 'settings';

export function createFrame(page: Page) {
  const messages = page.getByRole('region', { name: words.frame.messages });
  return {
    messages,
    async goTo(place: Place): Promise<void> {
      const link = page.getByRole('link', { name: words.frame[place], exact: true });
      await (place === 'settings'
        ? link
        : page.getByRole('navigation').and(mainPlaces(page)).locator(link)
      ).click();
      await page.getByRole('heading', { level: 1 }).waitFor();
    },
    /** Takes back what the newest message tells of. */
    async undoFromMessage(): Promise<void> {
      await messages.getByRole('button', { name: words.frame.undo, exact: true }).last().click();
    },
    /** Waits until everything written here has reached the studio. */
    async waitUntilSaved(): Promise<void> {
      await page.locator('.save-state-saved').first().waitFor();
    },
    async setTheme(theme: 'paper' | 'hall'): Promise<void> {
      await page.evaluate((chosen) => {
        localStorage.setItem('levare-theme', chosen);
        document.documentElement.setAttribute('data-theme', chosen);
      }, theme);
    },
  };
}

const mainPlaces = (page: Page) => page.getByRole('navigation', { name: words.frame.navigation });

/** Chooses one of a group of radios or ticks by touching its label, as a hand does; the input itself is not drawn. */
export async function touch(input: Locator): Promise<void> {
  await input.locator('xpath=ancestor::label').first().click();
}
