import type { Page } from 'playwright-core';
import { words } from '../../src/web/words/index.ts';
import { touch } from './frame.ts';

const say = words.lesson.closing;

/** Closing a lesson, and what moved after it. */
export function createClosePage(page: Page) {
  return {
    /** Puts the minutes a segment took, with the steps beside it. */
    async setMinutes(title: string, minutes: number): Promise<void> {
      const field = page.getByRole('group', { name: say.minutesOf(title) });
      const read = async () => Number(await field.getByRole('status').locator('strong').innerText());
      for (let now = await read(); now !== minutes; now = await read())
        await field.getByRole('button', { name: now > minutes ? say.fewer : say.more, exact: true }).click();
    },
    async setOutcome(title: string, outcome: keyof typeof say.choice): Promise<void> {
      const group = page.getByRole('radiogroup', { name: say.outcomeOf(title) });
      await touch(group.getByRole('radio', { name: say.choice[outcome], exact: true }));
    },
    isOutcome: (title: string, outcome: keyof typeof say.choice) =>
      page
        .getByRole('radiogroup', { name: say.outcomeOf(title) })
        .getByRole('radio', { name: say.choice[outcome], exact: true })
        .isChecked(),
    async close(): Promise<void> {
      await page.getByRole('button', { name: say.do, exact: true }).click();
      await page.getByRole('heading', { name: say.moved }).waitFor();
    },
    /** The sentences of what moved and why. */
    async moves(): Promise<readonly string[]> {
      return page.getByRole('region', { name: say.moved }).locator('li').allTextContents();
    },
    toCourse: () => page.getByRole('link', { name: say.toCourse }).click(),
  };
}
