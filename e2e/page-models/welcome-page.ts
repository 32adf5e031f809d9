import type { Page } from 'playwright-core';
import { words } from '../../src/web/words/index.ts';
import { patience } from '../harness/browser.ts';

const say = words.welcome;

/** The first run: a studio is founded, looked round in, or brought. */
export function createWelcomePage(page: Page) {
  return {
    async open(link: string): Promise<void> {
      await page.goto(link);
      await page.getByRole('heading', { name: say.found.title }).waitFor();
    },
    async found(name: string, teacher: string): Promise<void> {
      await page.getByLabel(say.found.name).fill(name);
      await page.getByLabel(say.found.teacher).fill(teacher);
      await page.getByRole('button', { name: say.found.action }).click();
      await page.getByRole('heading', { name: say.start.title }).waitFor();
    },
    /** Looks at the demo studio; resolves when the day stands there. */
    async lookRound(): Promise<void> {
      await page.getByRole('button', { name: say.demo.action }).click();
      await page.getByRole('navigation', { name: words.frame.navigation }).waitFor({ timeout: 5 * patience });
    },
    async bring(file: string): Promise<void> {
      const choosing = page.waitForEvent('filechooser');
      await page.getByRole('button', { name: words.settings.keep.importAction }).click();
      await (await choosing).setFiles(file);
      await page.getByRole('navigation', { name: words.frame.navigation }).waitFor();
    },
    /** One of the three steps after founding. */
    async takeStep(action: string): Promise<void> {
      await page.getByRole('link', { name: action, exact: true }).click();
    },
  };
}
