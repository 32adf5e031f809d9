// Finds a Chromium-family browser for the end-to-end tests: one that is installed, else Debian's where apt can install.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';

const candidates = () => {
  const programFiles = [
    process.env.PROGRAMFILES,
    process.env['PROGRAMFILES(X86)'],
    process.env.LOCALAPPDATA,
  ].filter(Boolean);
  return [
    process.env.LEVARE_BROWSER,
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
    '/usr/bin/google-chrome-stable',
    '/usr/bin/microsoft-edge',
    '/snap/bin/chromium',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
    ...programFiles.flatMap((p) => [
      join(p, 'Google/Chrome/Application/chrome.exe'),
      join(p, 'Microsoft/Edge/Application/msedge.exe'),
    ]),
  ].filter(Boolean);
};

/** Path of an installed browser, or null. */
export const findBrowser = () => candidates().find((path) => existsSync(path)) ?? null;

/** Path of a browser, installing Debian's where this user may; null when there is none and none can be had. */
export function findOrInstallBrowser() {
  const found = findBrowser();
  if (found) return found;
  const mayInstall =
    process.platform === 'linux' && process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
  if (!mayInstall) return null;
  console.log('· Installing a browser for the tests (Debian package chromium)');
  spawnSync('apt-get', ['update', '-qq'], { stdio: 'inherit' });
  spawnSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], {
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
  return findBrowser();
}
