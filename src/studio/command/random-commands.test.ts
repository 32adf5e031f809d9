// Random sequences of commands against a real store in memory: whatever a teacher does in whatever order, nothing throws,
// lessons stay whole, revisions rise, nothing is left hanging, and undo brings back exactly what was.

import { expect, test } from 'vitest';
import { type Command, whatIfSchema } from '#contract';
import { addDays, createSeededRandom, type PlainDate } from '#core';
import type { TableName } from '../record/records.ts';
import { listMissing } from '../record/row-links.ts';
import { id, openCourseStudio, type TestStudio } from '../testing/open-studio.contract.ts';
import { randomCommand, readTables } from '../testing/random-command.contract.ts';

type Tables = Awaited<ReturnType<typeof readTables>>;
const steps = 60;

/** Rows without their counters, to be compared as wholes; sounds stand outside of undo. */
const withoutRevisions = ({ sound: _sound, soundData: _data, ...tables }: Tables) =>
  Object.fromEntries(
    Object.entries(tables).map(([name, rows]) => [
      name,
      (rows as readonly object[]).map((row) => ({ ...row, revision: 0 })),
    ]),
  );

const seeds = [1, 2, 3, 4, 5, 6];

test.each(seeds)('[R-WHOLE] [R-ALL] [R-REVISION] a studio stays whole, seed %i', async (seed) => {
  const random = createSeededRandom(seed);
  const studio = await openCourseStudio();
  let today = '2026-09-07' as PlainDate;
  const changes: string[] = [];
  let tables = await studio.store.read(readTables);
  let done = 0;
  for (let step = 0; step < steps; step++) {
    if (random.next() < 0.25) {
      today = addDays(today, 1 + Math.floor(random.next() * 6));
      studio.setToday(today);
    }
    const draw = () => randomCommand(tables, changes.slice(-12), today, random);
    const command = random.next() < 0.15 ? asOne([draw(), draw()]) : draw();
    if (command === null) continue;
    const change = `s${seed}-${step}`;
    const reply = await studio.send(command, change);
    const after = await studio.store.read(readTables);
    const told = `seed ${seed}, step ${step}: ${JSON.stringify(command).slice(0, 300)}`;
    if (!reply.ok) {
      expect(after, `${told} was refused and changed something`).toEqual(tables);
      continue;
    }
    done++;
    changes.push(`change:${change}`);
    expectWhole(after, today, told);
    expectRevisions(tables, after, reply.value.courses, told);
    await expectNoOrphans(studio, after, told);
    expectStands(after, command, told);
    const canBeUndone = command.type !== 'undo' && command.type !== 'take.eraseSounds';
    if (canBeUndone && random.next() < 0.4) await expectUndo(studio, change, tables, after, told);
    tables = await studio.store.read(readTables);
  }
  // Some are refused, as they should be; a run in which nearly all are would prove nothing.
  expect(done).toBeGreaterThan(steps / 6);
  await expectErasable(studio, today, `seed ${seed}`);
  await studio.store.close();
});

/** [R-ERASE] Whatever went before, every student can be erased, and no undo brings one back. */
async function expectErasable(studio: TestStudio, today: PlainDate, told: string): Promise<void> {
  const erased: string[] = [];
  // What is taken back may bring others to the list, or take them from it.
  for (let times = 0; times < 12; times++) {
    const [first] = await studio.store.read((r) => r.list('student'));
    if (first === undefined) return;
    const { id: student, revision, name } = first;
    const erase = { type: 'student.erase' as const, called: [], keep: [], copies: false };
    await studio.done({ ...erase, seen: revision, student, name });
    erased.push(student);
    const tables = await studio.store.read(readTables);
    expectWhole(tables, today, `${told}, ${name} erased`);
    await expectNoOrphans(studio, tables, `${told}, ${name} erased`);
    const changes = await studio.store.read((r) => r.listChanges(1000));
    for (const { id: change } of changes.slice(0, 40)) await studio.send({ type: 'undo', change });
    const left = JSON.stringify(await studio.store.dump());
    expect(
      erased.filter((one) => left.includes(one)),
      told,
    ).toEqual([]);
    await expectNoOrphans(studio, await studio.store.read(readTables), `${told}, ${name} erased and undone`);
  }
}

/** The commands sent together; null where one of them cannot be. */
function asOne(commands: readonly unknown[]): Command | null {
  const steps = whatIfSchema.safeParse({ commands });
  return steps.success ? { type: 'together', label: 'Both', commands: steps.data.commands } : null;
}

function expectWhole(tables: Tables, today: PlainDate, told: string): void {
  for (const lesson of tables.lesson) {
    const segments = tables.segment
      .filter((s) => s.lesson === lesson.id)
      .sort((a, b) => a.position - b.position);
    if (lesson.status === 'cancelled' || lesson.status === 'missed') {
      expect(segments, `${told}: segments in a lesson that is off`).toEqual([]);
      continue;
    }
    if (lesson.status === 'planned' && lesson.date >= today)
      expect(segments.length, `${told}: ${lesson.date} has no segments`).toBeGreaterThan(0);
    if (segments.length === 0) continue;
    let at = 0;
    for (const segment of segments) {
      expect(segment.start, `${told}: a gap in ${lesson.date}`).toBeCloseTo(at, 6);
      at += segment.minutes;
    }
    expect(at, `${told}: ${lesson.date} does not add up`).toBeCloseTo(lesson.minutes, 6);
  }
}

/** What was put somewhere by hand stands there. */
function expectStands(tables: Tables, command: Command, told: string): void {
  if (command.type !== 'segment.move' && command.type !== 'segment.add' && command.type !== 'segment.pin')
    return;
  const segment = tables.segment.find((s) => s.id === command.segment);
  expect(segment, `${told}: it is gone`).toBeDefined();
  if (command.type !== 'segment.pin')
    expect(segment?.lesson, `${told}: it is elsewhere`).toBe(command.lesson);
}

function expectRevisions(
  before: Tables,
  after: Tables,
  told: readonly { readonly course: string; readonly revision: number }[],
  command: string,
): void {
  for (const course of after.course) {
    const was = before.course.find((c) => c.id === course.id);
    const said = told.find((c) => c.course === course.id);
    expect(course.revision, `${command}: revision of ${course.id}`).toBe(said?.revision ?? was?.revision);
    if (said !== undefined && was !== undefined) expect(said.revision).toBe(was.revision + 1);
  }
}

async function expectNoOrphans(studio: TestStudio, tables: Tables, told: string): Promise<void> {
  await studio.store.read(async (reader) => {
    for (const [name, rows] of Object.entries(tables))
      for (const row of rows)
        expect(await listMissing(reader, name as TableName, row), `${told}: ${name}`).toEqual([]);
  });
}

async function expectUndo(
  studio: TestStudio,
  change: string,
  before: Tables,
  after: Tables,
  told: string,
): Promise<void> {
  const undo: Command = { type: 'undo', change: id('change', change) };
  const undone = await studio.send(undo, `${change}-undo`);
  expect(undone.ok ? '' : undone.error.message, `${told}: undo`).toBe('');
  const back = await studio.store.read(readTables);
  expect(withoutRevisions(back), `${told}: undone`).toEqual(withoutRevisions(before));
  for (const course of back.course)
    expect(course.revision).toBeGreaterThanOrEqual(
      after.course.find((c) => c.id === course.id)?.revision ?? 0,
    );
  const again = await studio.send({ type: 'undo', change: id('change', `${change}-undo`) }, `${change}-redo`);
  expect(again.ok ? '' : again.error.message, `${told}: redo`).toBe('');
  expect(withoutRevisions(await studio.store.read(readTables)), `${told}: redone`).toEqual(
    withoutRevisions(after),
  );
}
