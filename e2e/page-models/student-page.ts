import type { Locator, Page } from 'playwright-core';
import { words } from '../../src/web/words/index.ts';
import { touch } from './frame.ts';

const say = words.student;

/** One line of the score's table twin. */
export interface TableLine {
  /** Minute within the lesson. */
  readonly from: number;
  readonly what: string;
  readonly strand: string;
  readonly minutes: number;
  readonly remarks: string;
}
export interface TableLesson {
  /** Number, day, time, length, as the head of the lesson says it. */
  readonly head: string;
  readonly lines: readonly TableLine[];
}

/** One student: the score, its table twin, the units of the course. */
export function createStudentPage(page: Page) {
  const table = page.getByRole('table');
  const showAs = async (form: string, there: Locator) => {
    await touch(page.getByRole('radio', { name: form, exact: true }));
    await there.waitFor();
  };
  return {
    score: page.getByRole('application'),
    table,
    moved: page.getByRole('region', { name: words.score.moves.title }),
    units: page.getByRole('region', { name: say.units.title }),
    /** Says that what moved was looked at; the list goes. */
    async lookedAtMoves(): Promise<void> {
      const list = page.getByRole('region', { name: words.score.moves.title });
      await list.getByRole('button', { name: words.score.moves.looked, exact: true }).click();
      await list.waitFor({ state: 'detached' });
    },
    facts: page.getByRole('main'),

    /** Chooses a unit and a strand, sees what it would do, and gives it. Returns the changes that were foretold. */
    async giveUnit(title: string, strand: string): Promise<readonly string[]> {
      await page.getByRole('button', { name: say.units.give }).first().click();
      const dialog = page.getByRole('dialog', { name: say.give.title });
      await dialog.getByLabel(say.give.find).fill(title);
      await dialog.getByRole('button', { name: title }).click();
      await dialog.getByLabel(say.give.strand, { exact: true }).selectOption({ label: strand });
      await dialog.getByRole('button', { name: say.give.preview }).click();
      const give = dialog.getByRole('button', { name: say.give.give, exact: true });
      await give.waitFor();
      const foretold = await dialog.locator('.imagined-changes').getByRole('listitem').allInnerTexts();
      await give.click();
      await dialog.waitFor({ state: 'hidden' });
      await page
        .getByRole('region', { name: say.units.title })
        .getByRole('link', { name: title, exact: true })
        .waitFor();
      return foretold;
    },
    showTable: () => showAs(words.score.asTable, table),
    showScore: () => showAs(words.score.asScore, page.getByRole('application')),

    /** The whole table twin. */
    async readTable(): Promise<readonly TableLesson[]> {
      const groups = await table
        .getByRole('rowgroup')
        .filter({ has: page.locator('th[scope=rowgroup]') })
        .evaluateAll((bodies) =>
          bodies.map((body) =>
            [...body.querySelectorAll('tr')].map((row) =>
              [...row.children].map((cell) => (cell.textContent ?? '').trim()),
            ),
          ),
        );
      return groups.map(([head, ...rows]) => ({
        head: head?.[0] ?? '',
        lines: rows.map(([from, what, strand, minutes, remarks]) => ({
          from: Number(from),
          what: what ?? '',
          strand: strand ?? '',
          minutes: Number(minutes),
          remarks: remarks ?? '',
        })),
      }));
    },
    /** Opens what can be done with a lesson or a segment, in the table twin, and chooses; the first of that title. */
    async act(title: string, deed: string): Promise<void> {
      await table
        .getByRole('button', { name: words.score.menu.actions(title), exact: true })
        .first()
        .click();
      await page.getByRole('menuitem', { name: deed, exact: true }).click();
    },
    async cancelLesson(title: string, reason: string): Promise<void> {
      await this.act(title, words.score.menu.cancel);
      const dialog = page.getByRole('dialog');
      await dialog.getByLabel(words.score.dialog.reason).fill(reason);
      await dialog.getByRole('button', { name: words.score.dialog.cancelDo }).click();
      await dialog.waitFor({ state: 'hidden' });
    },
    async openWhatIf(): Promise<void> {
      await page.getByRole('button', { name: say.whatIf.open }).click();
      await page.getByRole('heading', { name: say.whatIf.title }).waitFor();
    },
    /** Fills "away" and asks; resolves with the foretold changes. */
    async imagineAway(from: string, to: string): Promise<readonly string[]> {
      const panel = page.getByRole('region', { name: say.whatIf.title });
      await panel.getByLabel(say.whatIf.awayFrom, { exact: true }).fill(from);
      await panel.getByLabel(say.whatIf.awayTo, { exact: true }).fill(to);
      await panel.getByRole('button', { name: say.whatIf.show }).click();
      await panel.getByRole('heading', { name: say.whatIf.changes }).waitFor();
      return panel.locator('.imagined-changes').getByRole('listitem').allInnerTexts();
    },
    leaveWhatIf: () => page.getByRole('button', { name: say.whatIf.leave }).click(),
  };
}
