import type { Locator, Page } from 'playwright-core';
import type { CheckKind } from '#listening';
import type { Check, Stage } from '#planning';
import { sentenceCase } from '../../src/web/app/sentence-case.ts';
import { words } from '../../src/web/words/index.ts';
import { touch } from './frame.ts';

const say = words.units.editor;

/** What is written into the editor for one activity. */
export interface WrittenActivity {
  readonly title: string;
  readonly howTo: string;
  readonly shortest: number;
  readonly usual: number;
  readonly longest: number;
  readonly skill: string;
}

/** Writing a unit. */
export function createUnitEditorPage(page: Page) {
  const part = (name: string) => page.getByRole('region', { name, exact: true });
  /** Finds a skill by its words; one that is not in the map is written into it on the spot. */
  const chooseSkill = async (field: Locator, title: string, isNew: boolean) => {
    await field.fill(title);
    const list = page.getByRole('listbox', { name: say.skillsFound });
    if (!isNew) {
      await list.getByRole('option').filter({ hasText: title }).first().click();
      return;
    }
    await list.getByRole('option', { name: say.newSkill(title), exact: true }).click();
    const dialog = page.getByRole('dialog', { name: words.units.skills.addTitle });
    await dialog.getByRole('button', { name: words.units.skills.form.addAction }).click();
    await dialog.waitFor({ state: 'hidden' });
  };
  return {
    async begin(): Promise<void> {
      await page.getByRole('link', { name: words.units.create, exact: true }).click();
      await page.getByRole('heading', { level: 1, name: say.newTitle }).waitFor();
    },
    async writeAbout(title: string, goal: string, stages: readonly Stage[]): Promise<void> {
      await page.getByLabel(say.title, { exact: true }).first().fill(title);
      await page.getByLabel(say.goal).fill(goal);
      const suits = part(say.suits);
      for (const stage of stages)
        await touch(suits.getByRole('checkbox', { name: words.stageNames[stage], exact: true }));
    },
    /** Adds an activity at the end; `isNew` when its skill is not in the map yet. */
    async addActivity(activity: WrittenActivity, isNew: boolean): Promise<void> {
      const activities = part(say.activities);
      await activities.getByRole('button', { name: say.addActivity }).click();
      const row = activities.getByRole('list').first().locator('> li').last();
      await row.getByLabel(say.activityTitle, { exact: true }).fill(activity.title);
      await row.getByLabel(say.howTo).fill(activity.howTo);
      for (const which of ['shortest', 'usual', 'longest'] as const)
        await row.getByLabel(say[which], { exact: true }).fill(String(activity[which]));
      await chooseSkill(row.getByRole('combobox', { name: say.develops }), activity.skill, isNew);
      await row.getByRole('list', { name: say.develops }).getByText(activity.skill).waitFor();
    },
    /** A skill of every lesson, which no activity develops by itself. */
    async involve(skill: string): Promise<void> {
      const also = part(say.skills);
      await chooseSkill(also.getByRole('combobox'), skill, false);
      await also.getByRole('list', { name: say.skills }).getByText(skill).waitFor();
    },
    async addCheck(skill: string, level: Check['level'], lookFor: string): Promise<void> {
      const checks = part(say.checks);
      await checks.getByRole('button', { name: say.addCheck }).click();
      const check = checks.getByRole('group').last();
      await check.getByLabel(say.skill, { exact: true }).selectOption({ label: sentenceCase(skill) });
      await touch(check.getByRole('radio', { name: words.levels[level].name, exact: true }));
      await check.getByLabel(say.lookFor).fill(lookFor);
    },
    /** The check of this skill, opened for writing. */
    checkOf(skill: string): Locator {
      const chosen = page.locator(`option:checked`, { hasText: sentenceCase(skill) });
      return part(say.checks).locator('.editor-check').filter({ has: chosen });
    },
    /** Has a check listen for something, its figures by the names of their fields. */
    async listenFor(
      check: Locator,
      kind: CheckKind,
      figures: Readonly<Record<string, string>>,
    ): Promise<Locator> {
      const { add, what, kinds } = words.listenFor;
      await check.getByRole('button', { name: add, exact: true }).click();
      const spec = check.locator('.editor-spec').last();
      await spec.getByLabel(what, { exact: true }).selectOption(kind);
      for (const [name, figure] of Object.entries(figures)) {
        const label = kinds[kind].fields[name]?.label ?? name;
        const field = spec.getByLabel(label, { exact: true });
        if (name === 'value') await field.selectOption(figure);
        else await field.fill(figure);
      }
      return spec;
    },
    async saveAgain(title: string): Promise<void> {
      await page.getByRole('button', { name: say.save, exact: true }).click();
      await page.getByRole('link', { name: words.units.unit.change, exact: true }).waitFor();
      await page.getByRole('heading', { level: 1, name: title }).waitFor();
    },
    async save(title: string): Promise<void> {
      await page.getByRole('button', { name: say.saveNew, exact: true }).click();
      await page.getByRole('heading', { level: 1, name: title }).waitFor();
      await page.getByRole('link', { name: words.units.unit.change, exact: true }).waitFor();
    },
  };
}
