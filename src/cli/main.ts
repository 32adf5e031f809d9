#!/usr/bin/env node
// The command line: one command, one file. Exit 0 done, 1 could not be done, 2 the words or files given are at fault.

import { type CommandRun, commands } from './commands/commands.ts';

const [name = 'help', ...words] = process.argv.slice(2);
const wantsHelp = [name, ...words].some((word) => word === '--help' || word === '-h');
const run: CommandRun | undefined = commands[wantsHelp ? 'help' : name];
if (run === undefined) {
  console.error(`levare: there is no command "${name}". \`levare help\` lists them.`);
  process.exitCode = 2;
} else {
  process.exitCode = await run(words);
}
