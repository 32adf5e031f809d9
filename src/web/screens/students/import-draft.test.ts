import { expect, test } from 'vitest';
import { type StudentImportPreview, sendSchema } from '#contract';
import { createId, createSeededRandom, type Id, type PlainDate, type PlainTime } from '#core';
import {
  csvCell,
  findTurnedNames,
  isTakenAtFirst,
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
  };
  expect(mendCell(preview, 1, 1, 'tuba')).toBe('Name,Plays\r\nIda,flute\r\nBo,tuba');
});

test('rows become commands that the contract takes; a time in the week opens a course', () => {
  const commands = rowsToCommands([ready, withoutSlot], today, mint);
  expect(commands?.add.students).toHaveLength(2);
  expect(commands?.courses).toHaveLength(1);
  for (const command of commands ? [commands.add, ...commands.courses] : [])
    expect(sendSchema.safeParse({ id: mint('change'), command }).error?.issues).toBeUndefined();
  expect(rowsToCommands([faulty], today, mint)).toBeNull();
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

test('names are turned only where all have their one comma, and back again but for what was mended', () => {
  const preview = (...names: readonly string[]): StudentImportPreview => ({
    header: ['Plays', 'Name'],
    mapping: ['instrument', 'name'],
    rows: names.map((name, at) => ({ ...ready, line: at + 2, cells: ['tuba', name] })),
  });
  expect(findTurnedNames(preview('Löwe, Marie', 'Ida Berg'))).toBeNull();
  expect(findTurnedNames(preview(''))).toBeNull();
  expect(findTurnedNames({ ...preview('Löwe, Marie'), mapping: ['instrument', null] })).toBeNull();
  const given = preview('Löwe, Marie', '', 'Berg, Ida');
  const names = findTurnedNames(given);
  if (names === null) throw new Error('every name has its comma');
  expect(turnNames(given, names, 'turned')).toBe('Plays,Name\r\ntuba,Marie Löwe\r\ntuba,\r\ntuba,Ida Berg');
  expect(turnNames(preview('Marie Löwe', '', 'Ida Berger'), names, 'as')).toBe(
    'Plays,Name\r\ntuba,"Löwe, Marie"\r\ntuba,\r\ntuba,Ida Berger',
  );
});
