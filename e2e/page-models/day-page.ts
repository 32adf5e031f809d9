import type { Page } from 'playwright-core';
import { words } from '../../src/web/words/index.ts';

const say = words.day;

/** The day's lessons in order. */
export function createDayPage(page: Page) {
  const lesson = (name: string) => page.getByRole('article', { name });
  return {
    lesson,
    /** Opens a lesson for teaching, whatever the time of day is: one that is over offers closing first. */
    async teach(name: string): Promise<void> {
      const { teach, open, close } = say;
      await lesson(name)
        .getByRole('link', { name: new RegExp(`^(${teach}|${open}|${close}) `) })
        .click();
      const heading = page.getByRole('heading', { level: 1 });
      await heading.filter({ hasText: name }).waitFor();
      if (/\/close$/.test(new URL(page.url()).pathname))
        await page.getByRole('link', { name: words.lesson.closing.back }).click();
      await page.getByRole('navigation', { name: words.lesson.segments }).waitFor();
    },
  };
}
