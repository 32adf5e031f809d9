import type { CourseSettings } from '#planning';

/** One planning default: its name, what it does in a sentence, its unit. */
export interface DefaultWords {
  readonly name: string;
  readonly help: string;
  readonly unit: string;
}

const defaults: Readonly<Record<keyof CourseSettings, DefaultWords>> = {
  overrun: {
    name: 'Chance of overrun',
    help: 'How likely a lesson may be to run out of time. Less plans fewer minutes into each lesson.',
    unit: '%',
  },
  retention: {
    name: 'Wanted recall',
    help: 'A skill comes back for a revisit before its predicted recall falls below this.',
    unit: '%',
  },
  maxRun: {
    name: 'Most lessons in a row',
    help: 'After so many lessons running, an activity rests, so that it is not worked past its use.',
    unit: 'lessons',
  },
  parkGap: {
    name: 'Rest after that',
    help: 'How many lessons it rests before it comes back.',
    unit: 'lessons',
  },
  settlingIn: {
    name: 'Settling in',
    help: 'Kept free at the start: unpacking, tuning, hello.',
    unit: 'minutes',
  },
  settingPractice: {
    name: 'Setting practice',
    help: 'Kept free at the end, for what to do at home.',
    unit: 'minutes',
  },
  recap: { name: 'Recap', help: 'Opens every lesson but the first.', unit: 'minutes' },
  revisit: { name: 'Most time for revisits', help: 'In one lesson, all revisits together.', unit: 'minutes' },
  mostBlocks: {
    name: 'Most blocks of work',
    help: 'In one lesson; fewer keeps it calm, more keeps it lively.',
    unit: 'blocks',
  },
  mostStrands: { name: 'Most strands', help: 'Side by side in one lesson.', unit: 'strands' },
};

export const settings = {
  title: 'Settings',
  studio: {
    title: 'Studio',
    name: 'Name of the studio',
    nameMissing: 'The studio needs a name.',
    teacher: 'Teacher',
    save: 'Save',
  },
  region: {
    title: 'Place and paper',
    locale: 'Dates and numbers',
    localeExample: (example: string) => `Written like ${example}.`,
    timeZone: 'Time zone',
    timeZoneHelp: 'Lessons stand at this zone’s clock.',
    noteNames: 'Names of notes',
    noteNamesOptions: { british: 'crotchet, quaver, bar', american: 'quarter note, eighth note, measure' },
    paper: 'Paper',
  },
  look: { title: 'Look', help: 'Kept in this browser only.' },
  planning: {
    title: 'Planning',
    lead: 'Where a new course starts. Each course can be changed on its own; courses already open stay as they are.',
    reset: 'Back to the starting values',
    usual: (value: string) => `Usually ${value}.`,
    between: (low: number, high: number, unit: string) =>
      unit === '%' ? `Between ${low} and ${high}%.` : `A whole number from ${low} to ${high}.`,
    save: 'Save the defaults',
    defaults,
  },
  keep: {
    title: 'Keeping and moving',
    exportText:
      'Everything in the studio as one file: students, units, courses, lessons, notes, levels. Keep a copy somewhere safe; it holds personal data.',
    exportAction: 'Export everything',
    importText: 'Bring a file made by Export into this studio, while it is still empty.',
    importAction: 'Import a studio',
    importing: 'Reading the file',
    imported: 'The studio is here.',
  },
  changes: {
    title: 'Changes',
    text: 'Everything that was changed, newest first; each can be taken back.',
    action: 'Look at the changes',
  },
} as const;
