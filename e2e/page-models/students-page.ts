import type { Page } from 'playwright-core';
import { words } from '../../src/web/words/index.ts';

const say = words.students;

/** The list of students. */
export function createStudentsPage(page: Page) {
  return {
    /** The names in the list, as they stand. */
    async names(): Promise<readonly string[]> {
      await page.getByRole('table').waitFor();
      return page.getByRole('table').getByRole('rowheader').allInnerTexts();
    },
    count: (count: number) => page.getByRole('status').filter({ hasText: say.count(count) }),
    row: (name: string) =>
      page.getByRole('row').filter({ has: page.getByRole('link', { name, exact: true }) }),
    async open(name: string): Promise<void> {
      await page.getByRole('link', { name, exact: true }).click();
      await page.getByRole('heading', { level: 1, name }).waitFor();
    },
  };
}
