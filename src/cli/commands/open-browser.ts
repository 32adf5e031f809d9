// Opens a page in the person's browser, only where there is one to see: never on a server without a screen or in CI.

import { spawn } from 'node:child_process';
import { platform } from 'node:os';

export function openBrowser(url: string): void {
  const command = browserCommand();
  if (command === null) return;
  const child = spawn(command.program, [...command.words, url], { stdio: 'ignore', detached: true });
  child.on('error', () => {}); // no opener installed: the printed link is enough
  child.unref();
}

function browserCommand(): { readonly program: string; readonly words: readonly string[] } | null {
  const environment = process.env;
  if (environment['CI'] || environment['SSH_CONNECTION']) return null;
  if (platform() === 'darwin') return { program: 'open', words: [] };
  if (platform() === 'win32') return { program: 'rundll32', words: ['url.dll,FileProtocolHandler'] };
  if (!environment['DISPLAY'] && !environment['WAYLAND_DISPLAY']) return null;
  return { program: 'xdg-open', words: [] };
}
