// How fast the built application feels: the first page from a cold browser, and an action's round trip to a committed row,
// on the demo studio with its embedded database on this machine's disk.

import type { CourseView, DayView, LessonView, StudentsView } from '#contract';
import { createId, createSeededRandom, present } from '#core';
import { launchBrowser } from '../e2e/harness/browser.ts';
import { createDataFolder, startStudio } from '../e2e/harness/studio-process.ts';
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
    for (let i = 0; i < actions; i++) {
      const course = present(courses[i % courses.length], 'a course');
      const view = await call<CourseView>(`/api/courses/${course}`);
      const lesson = present(
        view.bars.find((b) => b.kind === 'lesson' && b.status === 'planned'),
        'a planned lesson',
      );
      if (lesson.kind !== 'lesson') continue;
      const shown = await call<LessonView>(`/api/lessons/${lesson.lesson}`);
      const segment = present(shown.segments[0], 'a segment');
      const send = async (command: object) => {
        const from = performance.now();
        await call('/api/commands', { id: createId('change', random), command });
        return performance.now() - from;
      };
      trips.push(
        await send({ type: 'segment.write', segment: segment.id, base: segment.note, text: `note ${i}` }),
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
  making the demo studio (about 160 replans)  ${(demoMs / 1000).toFixed(1)} s
  first page, cold browser, to its heading    median ${ms(pages, 0.5)} ms, worst ${ms(pages, 1)} ms of ${pages.length}
  a note typed, to the committed row          median ${ms(trips, 0.5)} ms, p95 ${ms(trips, 0.95)} ms of ${trips.length}
  a course planned again, to committed rows   median ${ms(replans, 0.5)} ms, p95 ${ms(replans, 0.95)} ms of ${replans.length}`);
  } finally {
    await browser.close();
    await studio.stop();
    folder.remove();
  }
}
