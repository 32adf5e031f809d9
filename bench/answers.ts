// How soon the screen answers the teacher: from a press to the frame that shows what came of it, on the page's own clock,
// so that what drives the browser is not counted. On the demo studio, one go for each of twelve students' courses.

import { loadavg } from 'node:os';
import type { Page } from 'playwright-core';
import type { CourseView, LessonBarView, StudentsView } from '#contract';
import { present } from '#core';
import { lessonsOf, readView } from '../e2e/harness/api.ts';
import { createFrame } from '../e2e/page-models/frame.ts';
import { createStudentPage } from '../e2e/page-models/student-page.ts';
import { words } from '../src/web/words/index.ts';
import { quantile } from './quantile.ts';

const most = 12;
/** What the screen does unasked after an action, such as asking for its views again, is over by then. */
const restMs = 700;

/** Takes a press and tells how long each of these took to stand on the page. */
type Ask = (act: () => Promise<unknown>, answers: Readonly<Record<string, string>>) => Promise<void>;

/** Prints the figures; the page shows a demo studio. */
export async function runAnswersBench(page: Page): Promise<void> {
  const { students } = await readView<StudentsView>(page, '/api/students');
  const times = new Map<string, number[]>();
  const ask: Ask = async (act, answers) => {
    const watched = await Promise.all(
      Object.entries(answers).map(async ([name, selector]) => ({
        name,
        watch: await page.evaluateHandle(watchFor, selector),
      })),
    );
    await act();
    for (const { name, watch } of watched) {
      const milliseconds = await watch.evaluate(({ answered }) => answered);
      times.set(name, [...(times.get(name) ?? []), milliseconds]);
    }
    await page.waitForTimeout(restMs);
  };
  let goes = 0;
  for (const student of students) {
    const course = await readView<CourseView>(page, `/api/courses/${student.courses[0]}`);
    const open = lessonsOf(course).filter((l) => l.status === 'planned' && l.date > course.today);
    const movable = open[0]?.segments.find((s) => s.kind === 'work');
    if (open.length < 3 || !movable || course.learner.group !== null || goes === most) continue;
    goes++;
    await createFrame(page).goTo('students');
    const name = page.getByRole('link', { name: student.name, exact: true });
    await ask(() => name.first().click(), { 'a student’s page, to its score': '.score-system [data-id]' });
    await tryOut(page, ask, open);
    await give(page, ask);
    await cancel(page, ask, present(open[1], 'a lesson'));
    await moveByKeys(page, ask, movable.id);
    await createFrame(page).goTo('day');
    await page.waitForTimeout(restMs);
  }
  console.log(`
The screen’s answers (from the press to the frame that shows it, ${goes} demo courses, load ${loadavg()[0]?.toFixed(1)})`);
  for (const [name, all] of times)
    console.log(
      `  ${name.padEnd(48)}median ${quantile(all, 0.5).toFixed(0)} ms, worst ${quantile(all, 1).toFixed(0)} ms of ${all.length}`,
    );
}

async function tryOut(page: Page, ask: Ask, [, first, last]: readonly LessonBarView[]): Promise<void> {
  const say = words.student.whatIf;
  await createStudentPage(page).openWhatIf();
  await page.getByLabel(say.awayFrom, { exact: true }).fill(present(first, 'a lesson').date);
  await page.getByLabel(say.awayTo, { exact: true }).fill(present(last, 'a later one').date);
  await ask(() => page.getByRole('button', { name: say.show }).click(), {
    'what if two lessons fall out, to its answer': '.imagining',
  });
  await createStudentPage(page).leaveWhatIf();
}

async function give(page: Page, ask: Ask): Promise<void> {
  const say = words.student.give;
  await ask(() => page.getByRole('button', { name: words.student.units.give }).first().click(), {
    'the form to give a unit': '.give-list li',
  });
  const dialog = page.getByRole('dialog', { name: say.title });
  await dialog.locator('.give-list button').nth(1).click();
  await ask(() => dialog.getByRole('button', { name: say.preview }).click(), {
    'what giving a unit would do': '.imagining',
  });
  await ask(() => dialog.getByRole('button', { name: say.give, exact: true }).click(), {
    'a unit given, to the message': '.toast',
  });
  await takeBack(page);
}

async function cancel(page: Page, ask: Ask, { lesson }: LessonBarView): Promise<void> {
  await page.locator(`[data-id="${lesson}"]`).focus();
  await ask(() => page.keyboard.press('Enter'), { 'the menu of a lesson': '.menu' });
  await page.getByRole('menuitem', { name: words.score.menu.cancel, exact: true }).click();
  const cancelled = page.getByRole('dialog').getByRole('button', { name: words.score.dialog.cancelDo });
  await ask(() => cancelled.click(), {
    'a lesson cancelled, to the message': '.toast',
    'a lesson cancelled, to the score': `.bar.cancelled [data-id="${lesson}"]`,
  });
  await takeBack(page);
}

async function moveByKeys(page: Page, ask: Ask, segment: string): Promise<void> {
  await page.locator(`[data-id="${segment}"]`).focus();
  await page.keyboard.press('m');
  await ask(() => page.keyboard.press('ArrowRight'), { 'a segment’s next place by a key': '.landing-place' });
  await ask(() => page.keyboard.press('Enter'), { 'a segment moved, to the message': '.toast' });
  await takeBack(page);
}

/** Takes the last change back and puts the messages away. */
async function takeBack(page: Page): Promise<void> {
  const { messages, undoFromMessage } = createFrame(page);
  await undoFromMessage();
  await page.waitForTimeout(restMs);
  for (const one of await messages.getByRole('button', { name: words.frame.dismiss }).all())
    await one.click();
}

/** In the page: milliseconds from the next press of a pointer or key to the frame after this stands on it. */
function watchFor(selector: string): { readonly answered: Promise<number> } {
  return {
    answered: new Promise((answer) => {
      let pressed: number | null = null;
      for (const type of ['pointerup', 'keydown'])
        addEventListener(type, (event) => (pressed ??= event.timeStamp), { capture: true, once: true });
      new MutationObserver((_, observer) => {
        if (pressed === null || document.querySelector(selector) === null) return;
        observer.disconnect();
        const from = pressed;
        requestAnimationFrame(() => setTimeout(() => answer(performance.now() - from)));
      }).observe(document, { subtree: true, childList: true, attributes: true });
    }),
  };
}
