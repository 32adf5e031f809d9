// A real Chromium, and pages that fail a test on any script error, refused resource or policy violation.

import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { findBrowser } from '../../tools/browser.mjs';

const quietFlags = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

/** The browser that npm test found (LEVARE_BROWSER), else one installed on this machine. `more` are flags beside the usual. */
export async function launchBrowser(more: readonly string[] = []): Promise<Browser> {
  const executablePath = findBrowser();
  if (executablePath === null)
    throw new Error('No Chromium, Chrome or Edge is installed; set LEVARE_BROWSER to one.');
  return chromium.launch({ executablePath, args: [...quietFlags, ...more] });
}

/** Flags that let a WAV file play the microphone. */
export const microphoneFlags = (file: string): readonly string[] => [
  '--use-fake-device-for-media-stream',
  '--use-fake-ui-for-media-stream',
  `--use-file-for-fake-audio-capture=${file}`,
  '--autoplay-policy=no-user-gesture-required',
];

export interface WatchedPage {
  readonly page: Page;
  readonly context: BrowserContext;
  /** What went wrong on the page so far; `allow` leaves out expected lines. */
  faults(allow?: RegExp): readonly string[];
}

/** A page whose errors are collected. */
export async function openPage(
  browser: Browser,
  options: Parameters<Browser['newContext']>[0] = {},
): Promise<WatchedPage> {
  const context = await browser.newContext({
    viewport: { width: 1440, height: 900 },
    locale: 'en-GB',
    ...options,
  });
  return watchPage(await context.newPage());
}

/** Another window of the same browser: it has the cookie, the local storage and the outbox of the first. */
export async function openWindow(context: BrowserContext): Promise<WatchedPage> {
  return watchPage(await context.newPage());
}

/** As long as a slow machine may take for one thing. */
export const patience = 60_000;

function watchPage(page: Page): WatchedPage {
  page.setDefaultTimeout(patience);
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(`page error: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(`console: ${message.text()}`);
  });
  return {
    page,
    context: page.context(),
    faults: (allow) => faults.filter((f) => !(allow?.test(f) ?? false)),
  };
}
