import type { Page } from 'playwright-core';
import type { Level } from '#planning';
import { words } from '../../src/web/words/index.ts';
import { touch } from './frame.ts';

const say = words.lesson;

/** Teaching mode. */
export function createLessonPage(page: Page) {
  const strip = page.getByRole('navigation', { name: say.segments });
  const dock = page.getByRole('region', { name: say.dock, exact: true });
  return {
    /** Shows a segment by its title. */
    async show(title: string): Promise<void> {
      await strip.getByRole('button').filter({ hasText: title }).first().click();
      await page.getByRole('heading', { level: 2, name: title }).waitFor();
    },
    segment: (title: string) => strip.getByRole('button').filter({ hasText: title }).first(),
    startClock: () => dock.getByRole('button', { name: say.start, exact: true }).click(),
    pauseClock: () => dock.getByRole('button', { name: say.pause, exact: true }).click(),
    clock: dock.getByRole('timer'),
    /** Says what came of the segment shown; for carrying on, also how much was done. */
    async judge(outcome: 'moveOn' | 'carryOn' | 'setAside' | 'notReached', share?: number): Promise<void> {
      await dock.getByRole('button', { name: say[outcome], exact: true }).click();
      if (share === undefined) return;
      const answer = dock.getByRole('button', { name: say.share(share), exact: true });
      await answer.waitFor();
      // The question waits a moment before it takes an answer, so that one touch does not give two.
      const shown = page.getByText(say.howMuch).first();
      for (let tries = 0; tries < 50 && (await answer.isVisible()); tries++) {
        await answer.click();
        await shown.waitFor({ state: 'hidden', timeout: 300 }).catch(() => undefined);
      }
    },
    /** Records a level of a skill of the segment shown. */
    async level(skill: string, level: Level): Promise<void> {
      const name = `${level}, ${words.levels[level].name}`;
      await touch(page.getByRole('radiogroup', { name: say.levelFor(skill) }).getByRole('radio', { name }));
    },
    note: page.getByRole('textbox', { name: say.lessonNote }),
    segmentNote: page.getByRole('textbox', { name: say.segmentNote }),
    async toClose(): Promise<void> {
      await page.getByRole('link', { name: say.toClose, exact: true }).click();
      await page.getByRole('heading', { name: say.closing.review }).waitFor();
    },
  };
}
