import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { words } from '../../src/web/words/index.ts';

const say = words.materials;

/** Choosing, shaping and taking along a sheet. */
export function createMaterialsPage(page: Page) {
  const sheet = page.getByRole('region', { name: say.sheet, exact: true });
  return {
    sheet,
    /** Waits until the sheet on screen is the one wished for. */
    async drawn(): Promise<void> {
      await sheet.and(page.locator('[aria-busy="false"]')).locator('svg[role="img"]').first().waitFor();
    },
    async choosePlayer(name: string, instrument: string): Promise<void> {
      await page
        .getByLabel(say.player, { exact: true })
        .selectOption({ label: say.playerOf(name, instrument) });
    },
    /** The file behind one of the links, as text. */
    async take(file: keyof typeof say.files): Promise<string> {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('link', { name: say.files[file], exact: true }).click(),
      ]);
      return readFileSync(await download.path(), 'utf8');
    },
    async another(): Promise<void> {
      await page.getByRole('button', { name: say.another, exact: true }).click();
    },
    /** Keeps the sheet on an activity of a unit. */
    async keep(unit: string, activity: string): Promise<void> {
      await page.getByRole('button', { name: say.keep, exact: true }).click();
      const dialog = page.getByRole('dialog', { name: say.keeping.title });
      await dialog.getByLabel(say.keeping.unit, { exact: true }).selectOption({ label: unit });
      await dialog.getByLabel(say.keeping.activity, { exact: true }).selectOption({ label: activity });
      await dialog.getByRole('button', { name: say.keeping.keep, exact: true }).click();
      await dialog.waitFor({ state: 'detached' });
    },
  };
}
