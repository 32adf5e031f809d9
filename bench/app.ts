// How fast the built application feels: the first page from a cold browser, and an action's round trip to a committed row,
// on the demo studio with its embedded database on this machine's disk.

import type { Command, CourseView, DayView, LessonView, StudentsView, UnitRow } from '#contract';
import { createId, createSeededRandom, present } from '#core';
import { lessonsOf } from '../e2e/harness/api.ts';
import { launchBrowser } from '../e2e/harness/browser.ts';
import { createDataFolder, startStudio } from '../e2e/harness/studio-process.ts';
import { runAnswersBench } from './answers.ts';
import { quantile } from './quantile.ts';

const loads = 7;
const actions = 60;

/** Prints the figures. */
export async function runAppBench(): Promise<void> {
  const folder = createDataFolder();
  const started = performance.now();
  const studio = await startStudio(folder.path);
  const startMs = performance.now() - started;
  const browser = await launchBrowser();
  try {
    const context = await browser.newContext();
    const page = await context.newPage();
    await page.goto(studio.link);
    const headers = { origin: studio.address };
    const call = async <T>(path: string, body?: unknown): Promise<T> => {
      const reply =
        body === undefined
          ? await context.request.get(studio.address + path)
          : await context.request.post(studio.address + path, { data: body, headers });
      if (!reply.ok()) throw new Error(`${path}: ${await reply.text()}`);
      return (await reply.json()) as T;
    };
    const demoStarted = performance.now();
    await call('/api/demo', {});
    const demoMs = performance.now() - demoStarted;

    const pages: number[] = [];
    for (let i = 0; i < loads; i++) {
      const cold = await browser.newContext({ storageState: await context.storageState() });
      const fresh = await cold.newPage();
      const from = performance.now();
      await fresh.goto(studio.address);
      await fresh.getByRole('heading', { level: 1 }).first().waitFor();
      pages.push(performance.now() - from);
      await cold.close();
    }

    const random = createSeededRandom(1);
    const { students } = await call<StudentsView>('/api/students');
    const courses = students.flatMap((s) => s.courses);
    const trips: number[] = [];
    const replans: number[] = [];
    const whatIfs: number[] = [];
    const gives: number[] = [];
    const cancels: number[] = [];
    const { units } = await call<{ readonly units: readonly UnitRow[] }>('/api/units');
    for (let i = 0; i < actions; i++) {
      const course = present(courses[i % courses.length], 'a course');
      const view = await call<CourseView>(`/api/courses/${course}`);
      const planned = lessonsOf(view).filter((b) => b.status === 'planned');
      const lesson = present(planned[0], 'a planned lesson');
      const later = present(planned.at(-1), 'a later one');
      const shown = await call<LessonView>(`/api/lessons/${lesson.lesson}`);
      const segment = present(shown.segments[0], 'a segment');
      const timed = async (path: string, body: unknown) => {
        const from = performance.now();
        await call(path, body);
        return performance.now() - from;
      };
      const send = (command: Command, id = createId('change', random)) =>
        timed('/api/commands', { id, command });
      /** Done and taken back again. */
      const sendAndUndo = async (command: Command) => {
        const change = createId('change', random);
        const taken = await send(command, change);
        await send({ type: 'undo', change });
        return taken;
      };
      const cancel: Command = { type: 'lesson.cancel', lesson: later.lesson, reason: '' };
      // First, while the open page has nothing to fetch again.
      trips.push(
        await send({ type: 'segment.write', segment: segment.id, base: segment.note, text: `note ${i}` }),
      );
      whatIfs.push(await timed(`/api/courses/${course}/what-if`, { commands: [cancel] }));
      cancels.push(await sendAndUndo(cancel));
      gives.push(
        await sendAndUndo({
          type: 'courseUnit.give',
          seen: (await call<CourseView>(`/api/courses/${course}`)).revision,
          course,
          courseUnit: createId('course-unit', random),
          unit: present(units[i % units.length], 'a unit').id,
          strand: present(view.strands[0], 'a strand').id,
        }),
      );
      replans.push(
        await send({
          type: 'course.replan',
          seen: (await call<CourseView>(`/api/courses/${course}`)).revision,
          course,
        }),
      );
    }
    const day = await call<DayView>(`/api/days/${(await call<{ today: string }>('/api/studio')).today}`);
    const ms = (values: readonly number[], q: number) => quantile(values, q).toFixed(0);
    console.log(`
The application (demo studio, ${courses.length} courses, ${day.lessons.length} lessons today; embedded database)
  start of the server, empty studio           ${startMs.toFixed(0)} ms
  making the demo studio (about 200 plans)    ${(demoMs / 1000).toFixed(1)} s
  first page, cold browser, to its heading    median ${ms(pages, 0.5)} ms, worst ${ms(pages, 1)} ms of ${pages.length}
  a note typed, to the committed row          median ${ms(trips, 0.5)} ms, p95 ${ms(trips, 0.95)} ms of ${trips.length}
  a course planned again, to committed rows   median ${ms(replans, 0.5)} ms, p95 ${ms(replans, 0.95)} ms of ${replans.length}
  a lesson cancelled, to committed rows       median ${ms(cancels, 0.5)} ms, p95 ${ms(cancels, 0.95)} ms of ${cancels.length}
  a unit given, to committed rows             median ${ms(gives, 0.5)} ms, p95 ${ms(gives, 0.95)} ms of ${gives.length}
  what if a lesson is cancelled               median ${ms(whatIfs, 0.5)} ms, p95 ${ms(whatIfs, 0.95)} ms of ${whatIfs.length}`);
    await page.setViewportSize({ width: 1440, height: 900 });
    await page.reload();
    await runAnswersBench(page);
  } finally {
    await browser.close();
    await studio.stop();
    folder.remove();
  }
}
