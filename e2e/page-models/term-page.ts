import type { Page } from 'playwright-core';
import { words } from '../../src/web/words/index.ts';

const say = words.term.terms;

/** Term dates, holidays, the week. */
export function createTermPage(page: Page) {
  return {
    /** Fills the open form of a term. */
    async addTerm(name: string, starts: string, ends: string): Promise<void> {
      const dialog = page.getByRole('dialog', { name: say.addTitle });
      await dialog.getByLabel(say.name).fill(name);
      await dialog.getByLabel(say.starts).fill(starts);
      await dialog.getByLabel(say.ends).fill(ends);
      await dialog.getByRole('button', { name: say.save }).click();
      await dialog.waitFor({ state: 'hidden' });
    },
    term: (name: string) => page.getByRole('main').getByRole('listitem').filter({ hasText: name }),
  };
}
