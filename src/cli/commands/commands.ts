// The list of commands; `help` is made from it. A command is loaded when it is asked for, with what it needs and no more.

/** Takes the words after the command's name and gives the exit status. */
export type CommandRun = (words: readonly string[]) => Promise<number>;

const help: CommandRun = async () => {
  console.log(`levare COMMAND

  start [--port N] [--data FOLDER] [--host ADDRESS] [--no-open]   start the studio and open it in a browser
                                           (--host 0.0.0.0: for a tablet in your network too)
  plan PROBLEM.json                        print the plan of a planning problem as JSON
  units check FILE…                        say what is wrong with unit files (.yaml, .json)
  units markdown FILE…                     print units as Markdown
  sheet SPEC.json --instrument ID --stage STAGE --format musicxml|svg|pdf|midi|text
        [--age N] [--seed N] [--page a4|letter] [--out FILE]     make a sheet from a material spec
  backing SPEC.json --format wav|flac|midi [--seed N] [--out FILE]   let the band play a chart
  chart "| Dm7 G7 | C |" --for ID          write a chart of sounding chords as the instrument reads it
  listen AUDIO.wav [--context CONTEXT.json] [--checks CHECKS.json] [--beside EARLIER.wav]
                                           print what is heard in a take as JSON
  export FILE [--data FOLDER] [--without-changes]
                                           write the whole studio into one file, or all but its list of changes
  import FILE [--data FOLDER]              read such a file into an empty studio
  restore [BACKUP] [--data FOLDER]         list the backups, or put one back
  help                                     this page`);
  return 0;
};

export const commands: Readonly<Record<string, CommandRun>> = {
  start: async (words) => (await import('./start.ts')).start(words),
  plan: async (words) => (await import('./plan.ts')).plan(words),
  units: async (words) => (await import('./units.ts')).units(words),
  sheet: async (words) => (await import('./sheet.ts')).sheet(words),
  backing: async (words) => (await import('./backing.ts')).backing(words),
  chart: async (words) => (await import('./chart.ts')).chart(words),
  listen: async (words) => (await import('./listen.ts')).listen(words),
  export: async (words) => (await import('./export.ts')).exportStudio(words),
  import: async (words) => (await import('./import.ts')).importStudio(words),
  restore: async (words) => (await import('./restore.ts')).restore(words),
  help,
};
