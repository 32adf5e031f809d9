import { describe, expect, test } from 'vitest';
import type { Command } from '#contract';
import { present } from '#core';
import { createMemoryStore, parseDump } from '#storage';
import { anaCourse, day, id, openCourseStudio, type TestStudio } from '../testing/open-studio.contract.ts';
import { viewLesson } from '../view/view-lesson.ts';
import { viewStudents } from '../view/view-students.ts';

const waltz = { kind: 'rhythm', metre: '3/4' };
const band = { kind: 'backing', chart: '| Dm7 | G7 |', tempo: 90 };
const lessonOf = async (s: TestStudio, at = 0) => present((await s.lessons(anaCourse))[at], 'a lesson');
const keep = async (
  s: TestStudio,
  name: string,
  spec: Record<string, unknown>,
  at = 0,
): Promise<Command> => ({
  type: 'material.keep',
  lesson: (await lessonOf(s, at)).id,
  material: { id: id('material', name), title: name, spec, seed: 7 },
});
const kept = async (s: TestStudio, at = 0) => {
  const lesson = await lessonOf(s, at);
  return present(await s.store.read((r) => viewLesson(r, lesson.id)), 'the lesson').kept;
};

describe('[R-SHEET-1] kept on one practice sheet', () => {
  test('notation and a band stand on that lesson’s sheet alone, in the order in which they were kept', async () => {
    const s = await openCourseStudio();
    await s.done(await keep(s, 'waltz', waltz));
    s.setToday('2026-09-07', '08:01');
    const reply = await s.done(await keep(s, 'answers', band));
    expect(reply.label).toBe('Kept “answers” on Ana’s practice sheet of 7 September');
    expect(await kept(s)).toEqual([
      { id: 'material:waltz', title: 'waltz', spec: waltz, seed: 7 },
      { id: 'material:answers', title: 'answers', spec: band, seed: 7 },
    ]);
    expect(await kept(s, 1)).toEqual([]);
  });

  test.each([
    ['a sheet', { kind: 'rhythm', bars: 4000 }],
    ['a band', { ...band, tempo: 4000 }],
    ['nothing known', { kind: 'hologram' }],
    ['nothing at all', {}],
  ])('%s that cannot be read is refused in words', async (_, spec) => {
    const s = await openCourseStudio();
    expect(await s.refused(await keep(s, 'waltz', spec))).toMatchObject({
      kind: 'Invalid',
      field: 'material.spec',
    });
    expect(await kept(s)).toEqual([]);
  });

  test('a cancelled lesson, one that is gone, and the same thing twice are refused', async () => {
    const s = await openCourseStudio();
    await s.done(await keep(s, 'waltz', waltz));
    expect((await s.refused(await keep(s, 'waltz', waltz))).field).toBe('material.id');
    await s.done({ type: 'lesson.cancel', lesson: (await lessonOf(s, 1)).id, reason: '' });
    expect((await s.refused(await keep(s, 'late', waltz, 1))).kind).toBe('NotAllowedNow');
    const gone = await keep(s, 'gone', waltz);
    expect((await s.refused({ ...gone, lesson: id('lesson', 'gone') } as Command)).kind).toBe('NotFound');
    expect((await s.refused({ type: 'material.remove', material: id('material', 'gone') })).kind).toBe(
      'NotFound',
    );
  });
});

describe('[R-SHEET-2] taken off, undone, planned around', () => {
  test('[R-UNDO-1] keeping and taking off are taken back exactly, after a replanning too', async () => {
    const s = await openCourseStudio();
    await s.send(await keep(s, 'waltz', waltz), 'kept');
    const shown = await kept(s);
    await s.send({ type: 'material.remove', material: id('material', 'waltz') }, 'off');
    expect(await kept(s)).toEqual([]);
    await s.done({ type: 'course.replan', seen: await s.revision(anaCourse), course: anaCourse });
    await s.done({ type: 'undo', change: id('change', 'off') });
    expect(await kept(s)).toEqual(shown);
    await s.done({ type: 'undo', change: id('change', 'kept') });
    expect(await kept(s)).toEqual([]);
  });

  test('[R-LESSON-3] a lesson with something on its sheet stays when the term ends before it', async () => {
    const s = await openCourseStudio();
    const last = (await s.lessons(anaCourse)).length - 1;
    const { date } = await lessonOf(s, last);
    await s.done(await keep(s, 'waltz', waltz, last));
    await s.done({
      type: 'term.put',
      term: { id: id('term', 'autumn'), name: 'Autumn', starts: day('2026-09-07'), ends: day('2026-11-30') },
    });
    expect((await s.lessons(anaCourse)).at(-1)?.date).toBe(date);
  });

  test('it goes with its course', async () => {
    const s = await openCourseStudio();
    await s.done(await keep(s, 'waltz', waltz));
    const { revision } = present(await s.store.read((r) => r.get('student', id('student', 'ana'))), 'Ana');
    await s.send({ type: 'student.remove', seen: revision, student: id('student', 'ana') }, 'gone');
    expect(await s.store.read((r) => r.list('lessonMaterial'))).toEqual([]);
    await s.done({ type: 'undo', change: id('change', 'gone') });
    expect(await s.store.read((r) => r.list('lessonMaterial'))).toHaveLength(1);
  });

  test('it goes out with the studio and in again; a file of an earlier release has none', async () => {
    const s = await openCourseStudio();
    await s.done(await keep(s, 'waltz', waltz));
    const dump = await s.store.dump();
    const load = async (text: string) => {
      const read = parseDump(text);
      if (!read.ok) throw new Error(read.error);
      const store = await createMemoryStore(s.outside().clock);
      expect(await store.load(read.value)).toMatchObject({ ok: true });
      return store.read((r) => r.list('lessonMaterial'));
    };
    expect(await load(JSON.stringify(dump))).toEqual(dump.tables.lessonMaterial);
    const { lessonMaterial, ...earlier } = dump.tables;
    expect(lessonMaterial).toHaveLength(1);
    expect(await load(JSON.stringify({ ...dump, tables: earlier, changes: [] }))).toEqual([]);
  });
});

describe('open practice sheets', () => {
  const sheets = async (s: TestStudio) =>
    (await s.store.read((r) => viewStudents(r, s.outside()))).courses[0]?.sheets.map(({ date }) => date);

  test('are the latest lesson’s up to today, and the next', async () => {
    const s = await openCourseStudio();
    expect(await sheets(s)).toEqual(['2026-09-07', '2026-09-14']);
    s.setToday('2026-09-13');
    expect(await sheets(s)).toEqual(['2026-09-07', '2026-09-14']);
    await s.done({ type: 'lesson.cancel', lesson: (await lessonOf(s, 1)).id, reason: '' });
    s.setToday('2026-09-14');
    expect(await sheets(s)).toEqual(['2026-09-07', '2026-09-21']);
    s.setToday('2027-03-01');
    expect(await sheets(s)).toEqual([]);
  });
});
