// A small studio and a browser whose microphone a line plays into, for the journeys of takes.

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { launchBrowser, microphoneFlags, openPage, type WatchedPage } from './browser.ts';
import { type PlayedLine, playLine } from './played-line.ts';
import { foundSmallStudio, type SmallStudio } from './small-studio.ts';
import { type StudioProcess, startStudio } from './studio-process.ts';

export interface TakeStudio {
  readonly studio: StudioProcess;
  readonly browser: Browser;
  readonly window: WatchedPage;
  readonly small: SmallStudio;
}

export interface TakeStudioWish {
  readonly folder: string;
  readonly line: PlayedLine;
  readonly page?: Parameters<typeof openPage>[1];
  /** Runs in each page before anything else. */
  readonly inPage?: () => void;
}

/** Where the microphone's file is; what is written there is heard when a page opens the microphone next. */
export const microphoneIn = (folder: string): string => join(folder, 'microphone.wav');

/** Starts both and founds the small studio in the first window. */
export async function startTakeStudio({ folder, line, page, inPage }: TakeStudioWish): Promise<TakeStudio> {
  const microphone = microphoneIn(folder);
  writeFileSync(microphone, playLine(line));
  const [studio, browser] = await Promise.all([
    startStudio(folder),
    launchBrowser(microphoneFlags(microphone)),
  ]);
  const window = await openPage(browser, page);
  if (inPage !== undefined) await window.page.addInitScript(inPage);
  await window.page.goto(studio.link);
  return { studio, browser, window, small: await foundSmallStudio(window.page) };
}
