// A story told in several tests, one after another on the same state: when one fails, those after it are left out, since
// they would only wait for what cannot come. A failing test leaves a picture of each open page in e2e/output.

import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { test } from 'vitest';

export const outputFolder = join(import.meta.dirname, '..', 'output');

/** Tests of one story; `pages` are pictured when one of them fails. */
export function createStory(pages: () => readonly Page[]) {
  let broken: string | null = null;
  return (title: string, tell: () => Promise<void>): void => {
    test(title, async (context) => {
      if (broken !== null) context.skip(`left out, because this failed before it: ${broken}`);
      try {
        await tell();
      } catch (error) {
        broken = title;
        await picture(pages(), title);
        throw error;
      }
    });
  };
}

/** Keeps a picture of what is on screen, to be looked at. */
export async function takePicture(page: Page, name: string): Promise<void> {
  mkdirSync(outputFolder, { recursive: true });
  await page.screenshot({ path: join(outputFolder, `${name}.png`) });
}

async function picture(pages: readonly Page[], title: string): Promise<void> {
  const name = title.replace(/\W+/g, '-').slice(0, 60);
  for (const [at, page] of pages.entries()) {
    if (page.isClosed()) continue;
    // The picture is a help; the failure itself is what counts.
    await takePicture(page, `failed-${name}-${at}`).catch(() => undefined);
  }
}
