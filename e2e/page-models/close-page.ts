import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { words } from '../../src/web/words/index.ts';
import { touch } from './frame.ts';

const say = words.lesson.closing;

/** Closing a lesson, and what moved after it. */
export function createClosePage(page: Page) {
  return {
    /** Types the minutes a segment took. */
    async setMinutes(title: string, minutes: number): Promise<void> {
      const field = page.getByRole('textbox', { name: say.minutesOf(title), exact: true });
      await field.click();
      await field.pressSequentially(String(minutes));
      await field.press('Enter');
      expect(await field.inputValue()).toBe(String(minutes));
    },
    /** Holds the button beside the minutes a segment took until it has gone on by itself. */
    async holdMore(title: string): Promise<void> {
      const group = page.getByRole('group', { name: say.minutesOf(title), exact: true });
      const field = group.getByRole('textbox');
      const before = Number(await field.inputValue());
      await group.getByRole('button', { name: say.more, exact: true }).hover();
      await page.mouse.down();
      await expect.poll(async () => Number(await field.inputValue())).toBeGreaterThan(before + 2);
      await page.mouse.up();
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
