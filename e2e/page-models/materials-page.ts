import { readFileSync } from 'node:fs';
import type { Locator, Page } from 'playwright-core';
import { words } from '../../src/web/words/index.ts';

const say = words.materials;

interface KeepWish {
  /** Of the dialog. */
  readonly title?: string;
  readonly name?: string;
}

/** Choosing, shaping and taking along a sheet. */
export function createMaterialsPage(page: Page) {
  const sheet = page.getByRole('region', { name: say.sheet, exact: true });
  const openKeeping = async (title: string) => {
    await page.getByRole('button', { name: say.keep, exact: true }).click();
    return page.getByRole('dialog', { name: title });
  };
  const finish = async (dialog: Locator) => {
    await dialog.getByRole('button', { name: say.keeping.keep, exact: true }).click();
    await dialog.waitFor({ state: 'detached' });
  };
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
    /** One of the files to take along. */
    async takeBytes(file: keyof typeof say.files): Promise<Buffer> {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        page.getByRole('button', { name: say.files[file], exact: true }).click(),
      ]);
      return readFileSync(await download.path());
    },
    /** The same, as text. */
    async take(file: keyof typeof say.files): Promise<string> {
      return (await this.takeBytes(file)).toString('utf8');
    },
    async another(): Promise<void> {
      await page.getByRole('button', { name: say.another, exact: true }).click();
    },
    /** Keeps the sheet, or the band's backing, on an activity of a unit. */
    async keep(unit: string, activity: string, title: string = say.keeping.title): Promise<void> {
      const dialog = await openKeeping(title);
      await dialog.getByLabel(say.keeping.place, { exact: true }).selectOption({ label: unit });
      await dialog.getByLabel(say.keeping.activity, { exact: true }).selectOption({ label: activity });
      await finish(dialog);
    },
    /** Keeps it on a practice sheet: on this learner's, or as proposed. */
    async keepOnSheet(
      learner: string | null,
      { title = say.keeping.title, name }: KeepWish = {},
    ): Promise<void> {
      const dialog = await openKeeping(title);
      const place = dialog.getByLabel(say.keeping.place, { exact: true });
      if (learner !== null) await place.selectOption({ label: learner });
      if (name !== undefined) await dialog.getByLabel(say.keeping.name, { exact: true }).fill(name);
      await finish(dialog);
    },
  };
}
