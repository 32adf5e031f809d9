import type { StudentColumn } from '#contract';

const columns: Readonly<Record<StudentColumn, string>> = {
  name: 'Name',
  born: 'Date of birth',
  birthYear: 'Year of birth',
  age: 'Age',
  instrument: 'Instrument',
  stage: 'Stage',
  family: 'Family, or sibling of',
  contactName: 'Contact: name',
  contactRelation: 'Contact: relation',
  phone: 'Telephone',
  email: 'E-mail',
  note: 'Note',
  weekday: 'Lesson: day, or day and time',
  time: 'Lesson: time',
  minutes: 'Lesson: minutes',
};

export const studentsImport = {
  title: 'Import students',
  lead: 'From a spreadsheet saved as CSV. You see every row first; nothing is kept until you say so.',
  file: 'Choose a file',
  another: 'Choose another file',
  paste: 'or paste the rows here, with their headings',
  read: 'Read the rows',
  example: 'Name, birth year, instrument, stage, day, time, minutes: any headings, in any order.',
  columns,
  /** In the order of the select. */
  columnNames: Object.keys(columns).filter((name): name is StudentColumn => name in columns),
  leaveOut: 'leave out',
  columnFor: (heading: string) => `Column ${heading} is`,
  take: 'Take',
  takeRow: (name: string) => `Take ${name}`,
  line: 'Row',
  faults: 'To mend',
  cell: (heading: string, line: number) => `${heading}, row ${line}`,
  twin: 'A student of this name is here already.',
  turn: (as: string, turned: string) => `Turn names round: “${as}” becomes “${turned}”`,
  siblings: 'Siblings',
  siblingsHelp: 'Siblings share their contacts, and their lessons are offered next to each other.',
  siblingNames: (names: readonly string[]) =>
    names.length < 3 ? names.join(' and ') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`,
  byColumn: 'by the file',
  byContact: 'the same surname and contact',
  good: 'ready',
  opens: 'opens a course',
  summary: (ready: number, faulty: number) =>
    faulty === 0
      ? `${ready === 1 ? '1 row is' : `${ready} rows are`} ready.`
      : `${ready === 1 ? '1 row is' : `${ready} rows are`} ready; ${faulty === 1 ? '1 row needs' : `${faulty} rows need`} mending, here in the table or in the file. Rows left unmended are not imported.`,
  action: (count: number) =>
    count === 0 ? 'Import students' : count === 1 ? 'Import 1 student' : `Import ${count} students`,
  done: (studentCount: number, courseCount: number) => {
    const people = studentCount === 1 ? '1 student' : `${studentCount} students`;
    if (courseCount === 0) return `Imported ${people}`;
    return `Imported ${people} and opened ${courseCount === 1 ? '1 course' : `${courseCount} courses`}`;
  },
  leftOut: (headings: readonly string[]) =>
    `Left out: ${headings.join(', ')}. Say over a column what it holds, and it comes in too.`,
  empty: 'There are no rows in this text.',
  minor:
    'The file holds records of children where students are under age: import only what teaching needs, with consent, and follow the safeguarding and privacy rules where you teach.',
} as const;
