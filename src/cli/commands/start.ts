// `levare start`: opens the studio's data, serves it on this machine, prints the way in, opens a browser where there is one.

import { createInterface } from 'node:readline';
import { readConfig, startSearchThread, startServer } from '#server';
import { openBrowser } from './open-browser.ts';
import { readWords, textOf } from './read-words.ts';
import { refuse } from './refuse.ts';

export async function start(words: readonly string[]): Promise<number> {
  const read = readWords(words, {
    port: { type: 'string' },
    data: { type: 'string' },
    host: { type: 'string' },
    'no-open': { type: 'boolean', default: false },
  });
  if (!read.ok) return refuse('start', read.error);
  if (read.value.positionals.length > 0) return refuse('start', 'it takes options only; see levare help');
  const config = readConfig({
    host: textOf(read.value, 'host'),
    port: textOf(read.value, 'port'),
    data: textOf(read.value, 'data'),
  });
  if (!config.ok) return refuse('start', config.error.message);
  startSearchThread();
  const server = await startServer(config.value, (line) => console.error(line));
  if (!server.ok) return refuse('start', server.error.message, 1);
  const { address, createLink, createOtherLinks, stop } = server.value;
  const link = createLink();
  console.log(`
Levare is running at ${address}
The studio's data: ${server.value.dataFolder}

Open this link once in the browser you teach with (it works for ten minutes; after that browser is known):
  ${link}
${sayOthers(createOtherLinks())}
Press Enter for other links, Ctrl+C to stop.`);
  if (read.value.values['no-open'] !== true) openBrowser(link);
  return new Promise((done) => {
    const keys = process.stdin.isTTY ? createInterface({ input: process.stdin }) : null;
    keys?.on('line', () => console.log([createLink(), ...createOtherLinks()].map(indent).join('\n')));
    const end = () => {
      keys?.close();
      void stop().then(() => done(0));
    };
    process.once('SIGINT', end);
    process.once('SIGTERM', end);
  });
}

const indent = (link: string): string => `  ${link}`;

/** For a tablet or another machine: whoever is in the same network can read along, so that is said with it. */
function sayOthers(links: readonly string[]): string {
  if (links.length === 0) return '';
  return `
On another device in the same network, open ${links.length === 1 ? 'this one' : 'the one of these that it reaches'} there:
${links.map(indent).join('\n')}
Nothing is encrypted on the way, so use a network of your own: its password is what keeps others from reading along.
`;
}
