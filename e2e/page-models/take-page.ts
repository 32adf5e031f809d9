import type { Page } from 'playwright-core';
import type { Level } from '#planning';
import { words } from '../../src/web/words/index.ts';
import { touch } from './frame.ts';

const say = words.takes;

/** The recording sheet, over a lesson or a student. */
export function createTakePage(page: Page) {
  const sheet = page.getByRole('dialog');
  const button = (name: string) => sheet.getByRole('button', { name, exact: true });
  return {
    sheet,
    open: () => page.getByRole('button', { name: say.record, exact: true }).first().click(),
    async giveConsent(by: string, relation: string): Promise<void> {
      await sheet.getByLabel(say.consent.givenBy).fill(by);
      await sheet.getByLabel(say.consent.relation).fill(relation);
      await button(say.consent.give).click();
    },
    tempo: sheet.getByLabel(say.setUp.tempo, { exact: true }),
    /** Has a band play over these chords. */
    async withBand(chords: string): Promise<void> {
      await sheet.getByLabel(say.setUp.company).selectOption('band');
      await sheet.getByLabel(say.setUp.chart).fill(chords);
    },
    /** Opens the microphone, unless it opens by itself, and waits until something is heard in it. */
    async soundCheck(): Promise<void> {
      await button(say.setUp.check).or(sheet.locator('.level-meter')).first().waitFor();
      if (
        await button(say.setUp.check)
          .isEnabled({ timeout: 1000 })
          .catch(() => false)
      )
        await button(say.setUp.check).click();
      await sheet.getByText(say.setUp.levelRight).waitFor();
    },
    /** Begins to record, until the clock says so many seconds. */
    async begin(seconds: number): Promise<void> {
      await button(say.recording.begin).click();
      await this.until(seconds);
    },
    /** Until the clock of the recording says so many seconds. */
    async until(seconds: number): Promise<void> {
      await page.waitForFunction((least) => {
        const [minutes = 0, rest = 0] = (document.querySelector('.record-clock')?.textContent ?? '')
          .split(':')
          .map(Number);
        return minutes * 60 + rest >= least;
      }, seconds);
    },
    /** Until what was heard is shown. */
    heard: () => sheet.getByRole('heading', { name: say.result.evidence }).waitFor(),
    /** Records until the clock says so many seconds. */
    async record(seconds: number): Promise<void> {
      await this.begin(seconds);
      await button(say.recording.stop).click();
      await this.heard();
    },
    file: sheet.locator('input[type=file]'),
    /** The row of evidence of this name, as it reads. */
    row: (name: keyof typeof say.rows) =>
      sheet.locator('.evidence-row').filter({ has: page.getByText(say.rows[name], { exact: true }) }),
    /** What it was listened to for. */
    checks: sheet.getByRole('region', { name: words.listenFor.checks }),
    title: sheet.getByLabel(say.result.what),
    async level(skill: string, level: Level): Promise<void> {
      const name = `${level}, ${words.levels[level].name}`;
      await touch(sheet.getByRole('radiogroup', { name: skill }).getByRole('radio', { name }));
    },
    skill: sheet.getByLabel(say.result.skill, { exact: true }),
    /** Keeps it, without waiting for it. */
    press: () => sheet.getByRole('button', { name: /^Keep/ }).click(),
    async keep(): Promise<void> {
      await this.press();
      await sheet.waitFor({ state: 'hidden' });
    },
  };
}
