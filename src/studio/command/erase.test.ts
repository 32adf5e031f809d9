import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { createFixedClock, present } from '#core';
import { createMemoryStore, createSqliteStore, parseDump } from '#storage';
import type { TableName } from '../record/records.ts';
import { listMissing } from '../record/row-links.ts';
import {
  duo,
  duoCourse,
  eraseZelda,
  fullName,
  openFullStudio,
  soloGroup,
  traces,
  zelda,
  zeldaCourse,
} from '../testing/full-student.contract.ts';
import {
  ana,
  anaCourse,
  day,
  emptyTake,
  id,
  openStore,
  type TestStudio,
} from '../testing/open-studio.contract.ts';
import { readTables } from '../testing/random-command.contract.ts';
import { loadStudentFile } from '../transfer/load-student-file.ts';
import { viewChanges } from '../view/view-changes.ts';
import { viewErasure } from '../view/view-erasure.ts';

const folder = mkdtempSync(join(tmpdir(), 'levare-erase-'));
afterAll(() => rmSync(folder, { recursive: true }));

const full = await (await openFullStudio()).store.dump();

/** The full studio, in memory. */
async function openFull(): Promise<TestStudio> {
  const store = await createMemoryStore(createFixedClock(day('2026-09-07')));
  await store.load(full);
  return openStore('2026-09-07', undefined, store);
}

const tracesIn = (text: string | Buffer) => traces.filter((trace) => text.includes(trace));
const changeWith = async (studio: TestStudio, label: string) => {
  const changes = await studio.store.read((r) => r.listChanges(1000));
  return present(
    changes.find((change) => change.label.includes(label)),
    `a change called ${label}`,
  ).id;
};

describe('[R-ERASE] a student erased for good', () => {
  test('leaves no trace in the bytes of the file and what lies beside it, and nothing of others is lost', async () => {
    const path = join(folder, 'studio.sqlite');
    const opened = await createSqliteStore({ path, clock: createFixedClock(day('2026-09-07')) });
    if (!opened.ok) throw new Error(opened.error.kind);
    const studio = await openFullStudio(opened.value);
    const bytes = () =>
      readdirSync(folder)
        .filter((file) => file.startsWith('studio'))
        .map((file) => readFileSync(join(folder, file)));
    // It would prove nothing to look for what was never there.
    expect(tracesIn(Buffer.concat(bytes()))).toEqual(traces);
    const before = await studio.store.read(readTables);
    await eraseZelda(studio);
    expect(readdirSync(folder)).toContain('studio.sqlite-wal'); // looked at while the studio is open
    expect(tracesIn(Buffer.concat(bytes()))).toEqual([]);
    const dump = await studio.store.dump();
    expect(tracesIn(JSON.stringify(dump))).toEqual([]);

    const after = await studio.store.read(readTables);
    await studio.store.read(async (r) => {
      for (const [table, rows] of Object.entries(after))
        for (const row of rows) expect(await listMissing(r, table as TableName, row), table).toEqual([]);
    });
    const ofAna = <R extends { readonly course: string }>(rows: readonly R[]) =>
      rows.filter((row) => row.course === anaCourse);
    expect(ofAna(after.lesson)).toEqual(ofAna(before.lesson));
    expect(ofAna(after.segment)).toEqual(ofAna(before.segment));
    const levels = (rows: typeof before.observation) => rows.filter((row) => row.student === ana);
    expect(levels(after.observation)).toEqual(levels(before.observation));
    expect(after.unit.map((u) => [u.id, u.version])).toEqual(before.unit.map((u) => [u.id, u.version]));
    expect(after.student.map((s) => s.name).sort()).toEqual(['Ana', 'Tom Reed']);
    await studio.store.close();
    expect(tracesIn(readFileSync(path))).toEqual([]);
    // What is left is a whole studio, which goes out and in again.
    expect(parseDump(JSON.stringify(dump)).ok).toBe(true);
    const other = await createMemoryStore(createFixedClock(day('2026-09-07')));
    expect((await other.load(dump)).ok).toBe(true);
  });

  test('a group goes on without them, and is planned for those who stay; one that was theirs alone goes too', async () => {
    const studio = await openFull();
    await eraseZelda(studio);
    const after = await studio.store.read(readTables);
    expect(after.group).toMatchObject([{ id: duo, name: 'The duo', members: [ana] }]);
    expect(after.group.some((group) => group.id === soloGroup)).toBe(false);
    const [first, second] = await studio.lessons(duoCourse);
    expect(first?.note).toBe('[name erased]’s and Ana’s first duet went well');
    expect(second?.absent).toBeNull();
    expect(after.student.find((s) => s.name === 'Tom Reed')?.note).toBe('Shares lifts with [name erased].');
    // Her level held the duo back: Ana alone has the beat, which is worked no more.
    const left = after.observation.filter((o) => o.course === duoCourse);
    expect(left.map((o) => o.student)).toEqual([ana]);
  });

  test('what is said to be about somebody else stays as it is, now and in the list of changes', async () => {
    const studio = await openFull();
    const view = present(await studio.store.read((r) => viewErasure(r, zelda, ['Zezé'])), 'an erasure');
    expect(view).toMatchObject({
      name: fullName,
      lessonsTaught: 1,
      takes: 1,
      sounds: 1,
      groupsThatStay: ['The duo'],
      groupsThatGo: ['Zelinda alone'],
    });
    expect(view.words).toEqual([
      'Zezé Quillfeather-Old',
      fullName,
      'Quillfeather-Old',
      'Quillfeather',
      'Zelinda',
      'Zezé',
    ]);
    expect(view.mentions.map((m) => [m.where, m.isSure])).toEqual([
      ['The duo’s lesson of 7 September', true],
      ['The page of Tom Reed', true],
      ['The unit Answers in two bars', false],
    ]);
    const [lesson] = await studio.lessons(duoCourse);
    await eraseZelda(studio, { keep: [present(lesson, 'a lesson').id] });
    expect((await studio.lessons(duoCourse))[0]?.note).toBe('Zelinda’s and Ana’s first duet went well');
    const note = await changeWith(studio, 'Wrote the note of The duo');
    const rows = await studio.store.read((r) => r.listChangedRows(note));
    expect(rows.find(({ table }) => table === 'lesson')).toMatchObject({
      before: { note: 'Zelinda’s and Ana’s first' },
      after: { note: 'Zelinda’s and Ana’s first duet went well' },
    });
  });

  test('is asked for by the name typed by hand, of the student as they were seen', async () => {
    const studio = await openFull();
    const erase = {
      type: 'student.erase' as const,
      student: zelda,
      called: [],
      keep: [],
      copies: false,
    };
    expect((await studio.refused({ ...erase, seen: 2, name: 'Zelinda' })).message).toContain(fullName);
    expect((await studio.refused({ ...erase, seen: 1, name: fullName })).kind).toBe('ChangedElsewhere');
    await studio.done({ ...erase, seen: 2, name: ` ${fullName.replace(' ', '  ')} ` });
    expect((await studio.refused({ ...erase, seen: 2, name: fullName })).message).toContain(
      'erased for good',
    );
  });

  test('a sibling keeps the contacts they shared, and a family of one is none', async () => {
    const studio = await openFull();
    const family = id('family', 'shared');
    const contact = { name: 'Ida Quillfeather', relation: 'mother', phone: '555 0199', email: '' };
    await studio.done({ type: 'family.join', family, students: [ana, zelda], contacts: [contact] });
    const joined = await changeWith(studio, 'siblings');
    const seen = present(await studio.store.read((r) => r.get('student', zelda)), 'her').revision;
    await studio.done({
      type: 'student.erase',
      seen,
      student: zelda,
      name: fullName,
      called: [],
      keep: [],
      copies: false,
    });
    const after = await studio.store.read((r) => r.get('student', ana));
    expect(after).toMatchObject({ family: null, contacts: [contact] });
    expect(await studio.store.read((r) => r.list('family'))).toEqual([]);
    expect((await studio.refused({ type: 'undo', change: joined })).message).toContain('erased for good');
  });

  test('a group of which only they are left, but that others have on record, ends and stays readable', async () => {
    const studio = await openFull();
    await studio.done({ type: 'group.put', seen: 1, group: { id: duo, name: 'The duo', members: [zelda] } });
    await eraseZelda(studio);
    const course = await studio.store.read((r) => r.get('course', duoCourse));
    expect(course?.ended).toBe('2026-09-07');
    expect((await studio.lessons(duoCourse)).every((lesson) => lesson.date <= '2026-09-07')).toBe(true);
    expect((await studio.store.read((r) => r.list('group')))[0]?.members).toEqual([]);
  });
});

describe('[R-ERASE] what comes later', () => {
  test('a change queued in another browser is refused in words, and brings nothing back', async () => {
    const studio = await openFull();
    const [lesson] = await studio.lessons(zeldaCourse);
    const own = present(lesson, 'a lesson').id;
    const [segment] = await studio.segments(own);
    await eraseZelda(studio);
    const dump = await studio.store.dump();
    const refused = [
      await studio.refused({
        type: 'lesson.write',
        lesson: own,
        field: 'note',
        base: '',
        text: 'typed on a train',
      }),
      await studio.refused({ type: 'lesson.close', lesson: own, minutes: null }),
      await studio.refused({ type: 'take.keep', take: emptyTake(id('take', 'late'), zelda), sound: null }),
      await studio.refused({
        type: 'segment.log',
        segment: present(segment, 'a segment').id,
        seconds: 5,
        outcome: null,
        share: null,
      }),
      await studio.refused({
        type: 'observe',
        observation: id('observation', 'late'),
        course: duoCourse,
        student: zelda,
        lesson: null,
        skill: id('skill', 'steady-beat'),
        level: 2,
        note: '',
      }),
    ];
    for (const fault of refused) expect(fault.message).toMatch(/erased/);
    expect(refused[0]?.message).toContain('typed on a train');
    expect(await studio.store.dump()).toEqual(dump);
  });

  test('a change that was applied before, sent again, counts once and brings nothing back', async () => {
    const studio = await openFull();
    const added = await changeWith(studio, 'Added 2 students');
    const opened = await changeWith(studio, 'Opened');
    const consent = await changeWith(studio, `Consent to record ${fullName}`);
    await eraseZelda(studio);
    const dump = await studio.store.dump();
    for (const change of [added, opened, consent]) {
      const again = await studio.send(
        {
          type: 'student.add',
          student: {
            id: zelda,
            name: fullName,
            born: null,
            birthYear: 2015,
            instruments: [],
            family: null,
            contacts: [],
            note: '',
            since: day('2026-09-01'),
          },
        },
        change.slice('change:'.length),
      );
      expect(again.ok).toBe(true);
    }
    expect(await studio.store.dump()).toEqual(dump);
  });

  test('undo: refused where the change was about them, or the plan was made anew; what is of others goes back', async () => {
    const studio = await openFull();
    const closed = await changeWith(studio, 'Closed');
    const fair = await changeWith(studio, 'Fair');
    const note = await changeWith(studio, 'Wrote the note of The duo');
    const gave = await changeWith(studio, 'A unit for');
    const { change: erased } = await eraseZelda(studio);
    const undo = (change: typeof closed) => ({ type: 'undo', change }) as const;
    expect((await studio.refused(undo(closed))).message).toContain('a student who was erased for good');
    expect((await studio.refused(undo(erased))).message).toContain('cannot be brought back');
    expect((await studio.refused(undo(id('change', 'never')))).message).toContain('older than a year');
    // The duo was planned again without her, and with it the lesson of this note.
    expect((await studio.refused(undo(note))).message).toContain('erased for good since');
    const shown = await studio.store.read((r) => viewChanges(r));
    expect(shown.changes.find((change) => change.id === gave)?.label).toBe(
      'A unit for [name erased] and Ana',
    );
    expect(shown.changes.some((change) => change.id === closed)).toBe(false);
    const onFair = async () =>
      (await studio.store.read((r) => r.list('lesson', { where: { date: day('2026-11-09') } }))).map(
        ({ course, status }) => [course, status],
      );
    await studio.done(undo(gave));
    expect(await onFair()).toEqual([]);
    await studio.done(undo(fair));
    expect((await onFair()).sort()).toEqual([
      [anaCourse, 'planned'],
      [duoCourse, 'planned'],
    ]);
    const units = await studio.store.read((r) => r.list('courseUnit', { where: { course: anaCourse } }));
    expect(units.map((u) => u.id)).toEqual(['course-unit:ana-unit']);
  });
});

test('[R-ERASE] the file of one student holds what is theirs, their sounds, and no notes of a group', async () => {
  const studio = await openFull();
  const file = present(await studio.store.read((r) => loadStudentFile(r, zelda)), 'a file');
  const text = JSON.stringify(file);
  expect(tracesIn(text)).toEqual(traces);
  expect(text).not.toContain('Tom Reed');
  expect(text).not.toContain('duet went well');
  expect(file.groups.find((group) => group.name === 'The duo')?.lessons[1]?.wasThere).toBe(false);
  expect(file.tables.observation?.map((o) => o.id).sort()).toEqual([
    'observation:zq-duo-level',
    'observation:zq-level',
  ]);
});
