export const welcome = {
  title: 'Welcome',
  what: [
    'Levare lays the units of work you prepare onto every student’s own lessons: in order, in minutes, at their pace.',
    'After each lesson it plans the rest again, and says what moved and why.',
  ],
  yours: 'It runs on this computer and keeps everything here.',
  found: {
    title: 'Your studio',
    name: 'Name of the studio',
    namePlaceholder: 'Harbour Street Studio',
    teacher: 'Your name',
    timeZone: 'Time zone',
    timeZoneHelp: 'Taken from this browser. Lessons stand at this zone’s clock.',
    locale: 'Dates and numbers',
    starterUnits: 'Put the twelve starter units into my library',
    starterUnitsHelp:
      'Technique, improvisation, rhythm, reading, ear and repertoire, to use, change or retire.',
    action: 'Start with an empty studio',
    nameMissing: 'Give the studio a name; your own will do.',
  },
  demo: {
    title: 'Or look round first',
    text: 'A demo studio with 24 invented students, half-way through a term. Nothing in it is real, and it can be thrown away.',
    action: 'Look at a demo studio',
    busy: 'Setting up the demo studio: planning 24 courses',
    stop: 'Stop',
  },
  bring: {
    title: 'Or bring a studio here',
    text: 'A file that Levare’s export made, on this computer or another.',
  },
  start: {
    title: 'Three steps to a planned lesson',
    lead: 'Each is one action. Leave whenever you like; this page stays until they are done.',
    steps: {
      term: {
        name: 'Term dates',
        text: 'When lessons begin and end. Holidays can follow later.',
        action: 'Set the term dates',
      },
      students: {
        name: 'Students',
        text: 'Who comes, on which instrument, and when in the week. A spreadsheet will do.',
        action: 'Add a student',
        other: 'Import from a spreadsheet',
      },
      unit: {
        name: 'A unit of work',
        text: 'Give a student a unit, and their course stands in dated lessons, minute by minute.',
        action: 'Choose a student',
        give: (name: string) => `Give ${name} a unit`,
      },
    },
    done: 'done',
    next: 'Next:',
  },
} as const;
