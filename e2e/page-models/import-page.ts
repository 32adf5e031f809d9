import type { Page } from 'playwright-core';
import { words } from '../../src/web/words/index.ts';
import { touch } from './frame.ts';

const say = words.studentsImport;

/** Students from a spreadsheet. */
export function createImportPage(page: Page) {
  const row = (name: string) =>
    page.getByRole('row').filter({ has: page.getByRole('checkbox', { name: say.takeRow(name) }) });
  return {
    async choose(file: { readonly name: string; readonly text: string }): Promise<void> {
      const choosing = page.waitForEvent('filechooser');
      await page.getByRole('button', { name: say.file, exact: true }).click();
      await (await choosing).setFiles({
        name: file.name,
        mimeType: 'text/csv',
        buffer: Buffer.from(file.text, 'utf8'),
      });
      await page.getByRole('table').waitFor();
    },
    row,
    summary: (ready: number, faulty: number) => page.getByText(say.summary(ready, faulty)),
    /** Writes a cell anew and leaves it. */
    async mend(heading: string, line: number, text: string): Promise<void> {
      const cell = page.getByRole('textbox', { name: say.cell(heading, line) });
      await cell.fill(text);
      await cell.press('Enter');
    },
    async leaveOut(name: string): Promise<void> {
      await touch(page.getByRole('checkbox', { name: say.takeRow(name) }));
    },
    async importRows(count: number): Promise<void> {
      await page.getByRole('button', { name: say.action(count), exact: true }).click();
      await page.getByRole('heading', { level: 1, name: words.students.first.title }).waitFor();
    },
    /** Leaves times and first units for later. */
    async leaveFirstLessons(): Promise<void> {
      await page.getByRole('button', { name: words.students.first.later, exact: true }).click();
      await page.getByRole('heading', { level: 1, name: words.students.title, exact: true }).waitFor();
    },
  };
}
