// What the server tells, read with the page's own cookie: the views the screens are drawn from.

import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import type { Command, CourseView, LessonBarView, StudentsView, StudioView } from '#contract';
import { createId } from '#core';
import { patience } from './browser.ts';

/** A view, as the page would get it. */
export async function readView<View>(page: Page, path: string): Promise<View> {
  const reply = await page.context().request.get(new URL(path, page.url()).href, { timeout: patience });
  if (!reply.ok()) throw new Error(`GET ${path} answered ${reply.status()}: ${await reply.text()}`);
  return (await reply.json()) as View;
}

/** Sends a command past the screens, as another device would. */
export async function sendCommand(page: Page, command: Command): Promise<void> {
  const { origin } = new URL(page.url());
  const reply = await page.context().request.post(`${origin}/api/commands`, {
    headers: { origin },
    data: { id: createId('change', { next: Math.random }), command },
    timeout: patience,
  });
  if (!reply.ok()) throw new Error(`${command.type} was refused: ${await reply.text()}`);
}

export const readStudio = (page: Page): Promise<StudioView> => readView(page, '/api/studio');

/** The course of the student of this name. */
export async function readCourseOf(page: Page, name: string): Promise<CourseView> {
  const { students } = await readView<StudentsView>(page, '/api/students');
  const id = students.find((student) => student.name === name)?.courses[0];
  if (id === undefined) throw new Error(`${name} has no course`);
  return readView(page, `/api/courses/${id}`);
}

/** Lessons of a course in order of date, of every status. */
export function lessonsOf(course: CourseView): readonly LessonBarView[] {
  return course.bars.filter((bar) => bar.kind === 'lesson');
}

/** Waits until a view is as wanted, and returns it. */
export async function untilView<View>(
  read: () => Promise<View>,
  isWanted: (view: View) => boolean,
  what: string,
): Promise<View> {
  let last = await read();
  await expect
    .poll(
      async () => {
        last = await read();
        return isWanted(last);
      },
      { timeout: patience, interval: 100, message: what },
    )
    .toBe(true);
  return last;
}
