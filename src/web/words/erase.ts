const count = (many: number, one: string, several: string) =>
  many === 1 ? `1 ${one}` : `${many} ${several}`;

export const erase = {
  title: 'Erase a student for good',
  titleOf: (name: string) => `Erase ${name} for good`,
  lead: 'There is no Undo for this, and nothing in Levare brings a student back who was erased.',
  law: 'Local law says when what is kept of somebody has to be erased, and whether anything has to be kept. If in doubt, ask somebody qualified first. If a student only stops coming, say on which day they leave instead.',
  file: {
    title: 'Before you do',
    text: 'One file with everything that is kept of this student, recordings included: for the family, if they ask for it.',
    action: 'Take the file',
  },
  goes: {
    title: 'What goes',
    person: 'Name, date of birth, contacts, notes and consents.',
    lessons: (taught: number, planned: number) => {
      const counts = [
        ...(taught > 0 ? [count(taught, 'lesson that was taught', 'lessons that were taught')] : []),
        ...(planned > 0 ? [count(planned, 'lesson that is planned', 'lessons that are planned')] : []),
      ];
      return `${counts.join(' and ')}, with notes, practice sheets and the units on the course. The time in the week is free again.`;
    },
    noLessons: 'The course, with its units and times.',
    levels: (levels: number) => `${count(levels, 'level', 'levels')}.`,
    takes: (takes: number, sounds: number) =>
      `${count(takes, 'take', 'takes')}${sounds > 0 ? `, ${sounds} with sound` : ''}.`,
    stays: (group: string) =>
      `Their part in ${group}. The group’s course goes on, planned for those who stay.`,
    groupGoes: (group: string) => `The group ${group}: nobody else was ever in it.`,
    changes:
      'All of it in the list of changes too: what was about this student alone cannot be taken back any more.',
    money:
      'Levare keeps no invoices and no payments. Where you keep such records, local law says for how long you have to.',
  },
  names: {
    title: 'Where the name stands elsewhere',
    text: 'These places stay, because they are others’ or the studio’s. Where you leave the tick, the name is replaced by “[name erased]”, now and in the list of changes; take it off where somebody else is meant, or a word.',
    none: 'The name stands in nothing that stays.',
    words: (words: readonly string[]) => `Looked for: ${words.join(', ')}.`,
    called: 'Another name used in notes',
    calledHelp: 'A nickname, or how the name is spelt at home. Separate several by commas.',
    look: 'Look for it',
    replace: (where: string) => `Replace the name in: ${where}`,
    picture: 'Other texts about this student that do not name them are for you to find.',
  },
  copies: {
    title: 'Backups',
    tick: (files: number) =>
      files === 1 ? 'Erase the student in the backup too' : `Erase the student in the ${files} backups too`,
    days: (oldest: string, newest: string) =>
      oldest === newest ? `Of ${oldest}.` : `From ${oldest} to ${newest}.`,
    help: 'Backups keep everything else. Where you leave the student in them, they are there until the backups’ time is over, which takes five weeks at least, and back again if one is restored.',
    none: 'There are no backups yet.',
    elsewhere:
      'Copies and exports kept elsewhere, printed sheets and files that were sent are yours to look after; so is a tablet with something on it that was never sent.',
    server:
      'This studio is on a database server. Its tables are written anew, but its log of changes, its backups and copies of it still hold the student for a while: that they are gone from there cannot be seen to from here. Ask whoever looks after the server.',
  },
  confirm: {
    title: 'Erase',
    name: 'Type the name of the student',
    help: (name: string) => `As it stands here: ${name}`,
    action: 'Erase for good',
    busy: 'Erasing. Each backup takes a moment.',
    leave: 'Do not erase',
  },
  done: 'Erased for good. Nothing of the student is in the studio any more.',
} as const;
