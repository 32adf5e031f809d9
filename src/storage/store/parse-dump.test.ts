import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { createFixedClock, ok, type PlainDate, present } from '#core';
import { parseUnitFile } from '#planning';
import { createMemoryStore } from '#storage';
import type { StudioDump } from '#studio';
import { apply, putSample, sample, sampleLesson, sampleSegment } from '../contract/sample-studio.contract.ts';
import { parseDump } from './parse-dump.ts';

const open = () => createMemoryStore(createFixedClock('2026-03-04' as PlainDate));

/** The sample studio with the library's units, given, saved twice, taught from, undone. */
async function dumpOfStudio(): Promise<StudioDump> {
  const library = new URL('../../../library/units/', import.meta.url);
  const store = await open();
  await putSample(store);
  await apply(store, 'library', async (t) => {
    for (const file of readdirSync(library)) {
      const read = parseUnitFile(parse(readFileSync(new URL(file, library), 'utf8')));
      if (!read.ok) throw new Error(`${file}: ${JSON.stringify(read.error)}`);
      const document = read.value.unit;
      const { id, version, title, area } = document;
      await t.put('unit', { id, version, title, area, document, retired: false });
      const name = id.slice('unit:'.length);
      await t.put('unitVersion', {
        id: `unit-version:${name}-v1` as never,
        unit: id,
        version,
        document,
        savedAt: '',
      });
      await t.put('courseUnit', {
        ...sample.courseUnit,
        id: `course-unit:${name}` as never,
        unit: id,
        document,
      });
    }
    await t.remove('courseUnit', sample.courseUnit.id);
    await t.remove('unit', sample.unit.id);
    await t.put('segment', sampleSegment('one', { courseUnit: null, skill: sample.skill.id }));
    await t.put('lesson', sampleLesson('noted', { note: 'say "forte" 🎻', ongoing: ['a\0b'] }));
  });
  await apply(store, 'undo', (t) => t.markUndone('change:library' as never, 'change:undo' as never));
  const dump = await store.dump();
  await store.close();
  return dump;
}

const dumped = dumpOfStudio();

describe('reading an exported studio', () => {
  test('what was exported is read, and loads to the same studio', async () => {
    const dump = await dumped;
    expect(dump.tables.courseUnit.length).toBeGreaterThanOrEqual(12);
    const read = parseDump(JSON.stringify(dump));
    expect(read).toEqual(ok(dump));
    const store = await open();
    expect(await store.load(present(read.ok ? read.value : null, 'the dump'))).toEqual(ok(null));
    expect(await store.dump()).toEqual(dump);
    await store.close();
  });

  type Loose = { tables: Record<string, Record<string, unknown>[]>; changes: Record<string, unknown>[] };
  const rowOf = (dump: Loose, table: string) => present(dump.tables[table]?.[0], `a row of ${table}`);

  test.each<readonly [string, (dump: Loose) => unknown, RegExp]>([
    ['a table missing', (d) => delete d.tables['holiday'], /table holiday is missing/],
    ['two rows with one id', (d) => d.tables['lesson']?.push(rowOf(d, 'lesson')), /lesson holds two rows/],
    ['a row that is none', (d) => d.tables['lesson']?.push(null as never), /lesson\[2\] is not a row/],
    ['a strange field', (d) => Object.assign(rowOf(d, 'slot'), { colour: 'red' }), /slot\[0\].*colour/],
    ['a field missing', (d) => delete rowOf(d, 'slot')['minutes'], /slot\[0\].minutes/],
    ['a text for a number', (d) => Object.assign(rowOf(d, 'slot'), { minutes: '30' }), /slot\[0\].minutes/],
    ['a fraction', (d) => Object.assign(rowOf(d, 'slot'), { minutes: 30.5 }), /slot\[0\].minutes/],
    ['null for something', (d) => Object.assign(rowOf(d, 'slot'), { time: null }), /slot\[0\].time/],
    ['a NUL character', (d) => Object.assign(rowOf(d, 'lesson'), { note: 'a\0' }), /lesson\[\d\].note/],
    ['a lost course', (d) => Object.assign(rowOf(d, 'slot'), { course: 'course:x' }), /names course:x/],
    ['a lost skill', (d) => Object.assign(rowOf(d, 'segment'), { skill: 'skill:x' }), /names skill:x/],
    ['a unit that is none', (d) => Object.assign(rowOf(d, 'unit'), { document: {} }), /unit\[0\].document/],
    [
      'a day that does not exist',
      (d) => Object.assign(rowOf(d, 'lesson'), { date: '2026-02-31' }),
      /lesson\[0\].date/,
    ],
    ['a time of no day', (d) => Object.assign(rowOf(d, 'slot'), { time: '25:61' }), /slot\[0\].time/],
    ['a strange stage', (d) => Object.assign(rowOf(d, 'course'), { stage: 'x' }), /course\[0\].stage/],
    [
      'a lesson of no status',
      (d) => Object.assign(rowOf(d, 'lesson'), { status: 'held' }),
      /lesson\[0\].status/,
    ],
    ['contacts that are none', (d) => Object.assign(rowOf(d, 'student'), { contacts: {} }), /contacts/],
    ['a member lost', (d) => Object.assign(rowOf(d, 'group'), { members: ['student:x'] }), /names student:x/],
    [
      'an absence of nobody known',
      (d) => Object.assign(rowOf(d, 'lesson'), { absent: ['student:x'] }),
      /absent names student:x/,
    ],
    ['a reason of nothing', (d) => Object.assign(rowOf(d, 'segment'), { reasons: [null] }), /reasons/],
    [
      'a course for nobody',
      (d) => Object.assign(rowOf(d, 'course'), { student: null, group: null }),
      /one student/,
    ],
    [
      'a change that would put back no row',
      (d) =>
        Object.assign(present(d.changes[0], 'a change'), {
          rows: [{ table: 'student', rowId: 'student:a', before: { name: 5 }, after: null }],
        }),
      /list of changes/,
    ],
    ['no changes', (d) => Object.assign(d, { changes: 'none' }), /list of changes/],
    ['a change without a label', (d) => delete d.changes[0]?.['label'], /list of changes/],
    ['a change twice', (d) => d.changes.push(present(d.changes[0], 'a change')), /one change twice/],
    [
      'a lost undoing',
      (d) => Object.assign(present(d.changes[0], 'a change'), { undoneBy: 'change:x' }),
      /undone by/,
    ],
    [
      'a strange table',
      (d) =>
        Object.assign(present(d.changes[0], 'a change'), {
          rows: [{ table: 'x', rowId: 'y', before: null, after: null }],
        }),
      /list of changes/,
    ],
  ])('a file with %s is refused with the place', async (_, spoil, message) => {
    const dump = JSON.parse(JSON.stringify(await dumped)) as Loose;
    spoil(dump);
    const read = parseDump(JSON.stringify(dump));
    expect(read.ok ? 'read' : read.error).toMatch(message);
  });

  test.each([
    '',
    'null',
    '[]',
    '{}',
    '{"format":"levare-studio/1"}',
    '{"format":"x","tables":{}}',
    '{"format":',
  ])('the text %j is no studio', (text) => expect(parseDump(text).ok).toBe(false));

  const whole = '{\n  "format": "levare-studio/1",\n  "tables": {}\n}';
  test.each([
    ['', 'This file is empty. Choose a file that Levare exported.'],
    [' \n', 'This file is empty. Choose a file that Levare exported.'],
    [
      'name,instrument\nAna,flute',
      'This is not an exported studio: it does not begin with {. Choose a file that Levare exported.',
    ],
    [
      whole.slice(0, -6),
      'This file ends too early, at line 3, column 11, and nothing was read. Copy the whole file again, or export the studio again.',
    ],
    [
      whole.slice(0, 20),
      'This file ends too early, at line 2, column 19, and nothing was read. Copy the whole file again, or export the studio again.',
    ],
    [
      whole.replace('"tables":', '"tables"'),
      'This file is damaged, and nothing was read: its text (line 3, column 12) is not JSON. Put a colon here. Or export the studio again.',
    ],
    [
      whole.replace('"tables"', '"format"'),
      'This file is damaged, and nothing was read: its text (line 3, column 3) says "format" twice. Keep one of the two. Or export the studio again.',
    ],
  ])('of the text %j it says what is wrong with it, where, and how to mend it', (text, said) => {
    expect(parseDump(text)).toEqual({ ok: false, error: said });
  });
});
