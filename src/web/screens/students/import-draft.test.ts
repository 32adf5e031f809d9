import { expect, test } from 'vitest';
import { type SiblingsFound, type StudentImportPreview, sendSchema } from '#contract';
import { createId, createSeededRandom, type Id, type PlainDate, type PlainTime } from '#core';
import {
  csvCell,
  findTurnedNames,
  isSiblingsAtFirst,
  isTakenAtFirst,
  listSiblings,
  mendCell,
  type PreviewRow,
  rowsToCommands,
  rowsToCsv,
  turnName,
  turnNames,
} from './import-draft.ts';

const today = '2026-11-25' as PlainDate;
const random = createSeededRandom(3);
const mint = <P extends string>(prefix: P) => createId(prefix, random);
const ready: PreviewRow = {
  line: 2,
  cells: ['Ida', 'flute'],
  student: {
    name: 'Ida',
    born: null,
    birthYear: 2014,
    instruments: [{ instrument: 'flute', stage: 'beginner' }],
    contacts: [],
    note: '',
    slot: { weekday: 2, time: '16:30' as PlainTime, minutes: 30 },
  },
  faults: [],
  twin: null,
};
const withoutSlot: PreviewRow = { ...ready, student: ready.student && { ...ready.student, slot: null } };
const faulty: PreviewRow = {
  ...ready,
  line: 3,
  cells: ['Bo'],
  student: null,
  faults: [{ column: 'instrument', message: 'No such instrument.' }],
};

// Source: RFC 4180, Common Format and MIME Type for CSV Files (2005), section 2, rules 6 and 7.
test('cells with commas, quotes or line breaks are quoted, and quotes doubled', () => {
  expect(rowsToCsv(['aaa', 'bbb', 'ccc'], [['zzz', 'yyy', 'x,x']])).toBe('aaa,bbb,ccc\r\nzzz,yyy,"x,x"');
  expect(csvCell('b"bb')).toBe('"b""bb"');
  expect(csvCell('b\r\nbb')).toBe('"b\r\nbb"');
  expect(csvCell('plain')).toBe('plain');
});

test('a mended cell goes into its own row, and short rows are filled up', () => {
  const preview: StudentImportPreview = {
    header: ['Name', 'Plays'],
    mapping: ['name', 'instrument'],
    rows: [ready, faulty],
    siblings: [],
  };
  expect(mendCell(preview, 1, 1, 'tuba')).toBe('Name,Plays\r\nIda,flute\r\nBo,tuba');
});

test('rows become commands that the contract takes; a time in the week opens a course', () => {
  const commands = rowsToCommands([ready, withoutSlot], [], today, mint);
  expect(commands?.add.students).toHaveLength(2);
  expect(commands?.courses).toHaveLength(1);
  for (const command of commands ? [commands.add, ...commands.courses] : [])
    expect(sendSchema.safeParse({ id: mint('change'), command }).error?.issues).toBeUndefined();
  expect(rowsToCommands([faulty], [], today, mint)).toBeNull();
});

test('siblings among the rows taken are joined, with one who is here already; of one alone nobody is', () => {
  const [first, second] = [ready, { ...withoutSlot, line: ready.line + 1 }];
  const here = [{ id: 'student:cleo' as Id<'student'>, name: 'Cleo Sund' }];
  const found = { lines: [first.line, second.line], here: [], family: null, why: 'contact' } as const;
  const withHere = { ...found, here, family: 'family:sund' as Id<'family'> };
  const listed = (rows: readonly (typeof ready)[], one: SiblingsFound = found) =>
    listSiblings({ siblings: [one] }, rows).map(({ names }) => names);
  expect(listed([first, second])).toEqual([[first.student?.name, second.student?.name]]);
  expect(listed([first])).toEqual([]);
  expect(listed([first], withHere)).toEqual([['Cleo Sund', first.student?.name]]);
  expect(listed([], withHere)).toEqual([]);
  const commands = rowsToCommands([first, second], [found, withHere], today, mint);
  const ids = commands?.add.students.map(({ id }) => id) ?? [];
  expect(commands?.siblings).toMatchObject([
    { type: 'family.join', students: ids },
    { type: 'family.join', family: 'family:sund', students: ['student:cleo', ...ids] },
  ]);
  for (const command of commands?.siblings ?? [])
    expect(sendSchema.safeParse({ id: mint('change'), command }).error?.issues).toBeUndefined();
  expect(rowsToCommands([first], [found], today, mint)?.siblings).toEqual([]);
  // What the file says stands at first; what is guessed waits for the teacher.
  expect([isSiblingsAtFirst({ ...found, why: 'column' }), isSiblingsAtFirst(found)]).toEqual([true, false]);
});

test('a faulty row and a twin are left out at first', () => {
  expect([ready, faulty, { ...ready, twin: 'student:x' as Id<'student'> }].map(isTakenAtFirst)).toEqual([
    true,
    false,
    false,
  ]);
});

test('a name with its family name first is turned round, any other is none to turn', () => {
  expect(turnName('Löwe, Marie')).toBe('Marie Löwe');
  expect(turnName(' van der Aa ,Jan Piet ')).toBe('Jan Piet van der Aa');
  for (const name of ['Marie Löwe', 'Löwe,', ', Marie', 'Löwe, Marie, Dr', ''])
    expect(turnName(name)).toBeNull();
});

test('names are turned where most have their one comma, and back again but for what was mended', () => {
  const preview = (...names: readonly string[]): StudentImportPreview => ({
    header: ['Plays', 'Name'],
    mapping: ['instrument', 'name'],
    rows: names.map((name, at) => ({ ...ready, line: at + 2, cells: ['tuba', name] })),
    siblings: [],
  });
  expect(findTurnedNames(preview('Löwe, Marie', 'Ida Berg'))).toBeNull();
  expect(findTurnedNames(preview(''))).toBeNull();
  expect(findTurnedNames(preview('Löwe, Marie', 'Ida Berg', 'TOTAL', 'Berg, Ida'))).toBeNull();
  const most = preview('Löwe, Marie', 'Ida Berg', 'Berg, Ida');
  const mixed = findTurnedNames(most);
  expect(mixed && turnNames(most, mixed, 'turned')).toBe(
    'Plays,Name\r\ntuba,Marie Löwe\r\ntuba,Ida Berg\r\ntuba,Ida Berg',
  );
  expect(findTurnedNames({ ...preview('Löwe, Marie'), mapping: ['instrument', null] })).toBeNull();
  const given = preview('Löwe, Marie', '', 'Berg, Ida');
  const names = findTurnedNames(given);
  if (names === null) throw new Error('every name has its comma');
  expect(turnNames(given, names, 'turned')).toBe('Plays,Name\r\ntuba,Marie Löwe\r\ntuba,\r\ntuba,Ida Berg');
  expect(turnNames(preview('Marie Löwe', '', 'Ida Berger'), names, 'as')).toBe(
    'Plays,Name\r\ntuba,"Löwe, Marie"\r\ntuba,\r\ntuba,Ida Berger',
  );
});
