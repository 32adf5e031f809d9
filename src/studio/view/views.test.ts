import { describe, expect, test } from 'vitest';
import type { Fault } from '#contract';
import { present, type Result } from '#core';
import { studioId } from '../record/studio-id.ts';
import {
  ana,
  anaCourse,
  ben,
  benCourse,
  day,
  id,
  newCourse,
  newStudent,
  openCourseStudio,
  openStore,
  openStudio,
  otherUnit,
  slotOf,
  strandMain,
  unit,
} from '../testing/open-studio.contract.ts';
import { readTables } from '../testing/random-command.contract.ts';
import { course, courseUnit, lessonAt, shownLesson, teachFirst } from '../testing/taught-course.contract.ts';
import { viewChanges } from './view-changes.ts';
import { viewCourseUnit } from './view-course-unit.ts';
import { viewDay } from './view-day.ts';
import { viewLesson } from './view-lesson.ts';
import { viewSkills } from './view-skills.ts';
import { viewStudent } from './view-student.ts';
import { viewStudents } from './view-students.ts';
import { viewStudio } from './view-studio.ts';
import { viewTerm } from './view-term.ts';
import { viewUnit, viewUnits } from './view-units.ts';
import { whatIf } from './what-if.ts';

describe('the studio and its changes', () => {
  test('before it is founded, and after', async () => {
    const empty = await openStore();
    expect(await empty.store.read((r) => viewStudio(r, empty.outside()))).toMatchObject({
      founded: false,
      revision: 0,
    });
    const studio = await openCourseStudio();
    expect(await studio.store.read((r) => viewStudio(r, studio.outside()))).toMatchObject({
      founded: true,
      name: 'Harbour Street',
      today: '2026-09-07',
      now: '08:00',
      counts: { students: 1, units: 2, terms: 1, courses: 1 },
    });
  });

  test('changes: newest first, with what was undone and done again', async () => {
    const studio = await openStudio();
    await studio.send({ type: 'student.add', student: newStudent(ben, 'Ben', 2012) }, 'ben');
    await studio.send({ type: 'undo', change: id('change', 'ben') }, 'back');
    const flags = async () =>
      (await studio.store.read((r) => viewChanges(r))).changes
        .slice(0, 3)
        .map((c) => [c.label, c.undone, c.isUndo]);
    expect((await flags()).slice(0, 2)).toEqual([
      ['Took back: Added Ben', false, true],
      ['Added Ben', true, false],
    ]);
    await studio.send({ type: 'undo', change: id('change', 'back') }, 'again');
    expect(await flags()).toEqual([
      ['Did again: Added Ben', false, true],
      ['Took back: Added Ben', true, true],
      ['Added Ben', false, false],
    ]);
  });
});

describe('the day', () => {
  test('lessons with their blocks, what to set up, and the days around', async () => {
    const studio = await openCourseStudio();
    const view = await studio.store.read((r) => viewDay(r, day('2026-09-07'), studio.outside()));
    expect(view).toMatchObject({ holiday: null, before: null, after: '2026-09-14' });
    expect(view.lessons[0]).toMatchObject({
      number: 1,
      time: '16:00',
      status: 'planned',
      decisions: [],
      learner: { name: 'Ana', age: 9, instrumentName: 'Recorder, descant (soprano)' },
    });
    expect(view.lessons[0]?.segments.reduce((sum, s) => sum + s.minutes, 0)).toBe(30);
    expect(view.setUp).toEqual([{ item: 'two hand drums', lessons: [view.lessons[0]?.id] }]);
    const off = await studio.store.read((r) => viewDay(r, day('2026-10-26'), studio.outside()));
    expect(off).toMatchObject({
      holiday: 'Half-term',
      lessons: [],
      before: '2026-10-19',
      after: '2026-11-02',
    });
  });

  test('decisions: a lesson gone by and not closed, a plan that moved, a course without work', async () => {
    const studio = await openCourseStudio();
    studio.setToday('2026-09-14');
    const decisions = async (date: string) =>
      (await studio.store.read((r) => viewDay(r, day(date), studio.outside()))).lessons[0]?.decisions.join(
        ' ',
      ) ?? '';
    expect(await decisions('2026-09-07')).toContain('Not closed yet');
    expect(await decisions('2026-09-14')).toContain('The lesson of 7 September is not closed yet');
    await studio.done({ type: 'lesson.close', lesson: (await lessonAt(studio, 0)).id, minutes: null });
    expect(await decisions('2026-09-14')).toContain('Its plan moved');
    const bare = await openStudio();
    const view = await bare.store.read((r) => viewDay(r, day('2026-09-07'), bare.outside()));
    expect(view.lessons[0]?.decisions.join(' ')).toContain('No new work is planned');
    expect(view.lessons[0]?.wantsUnit).toBe(true);
  });
});

describe('the lesson', () => {
  test('segments to teach from: how-to, what to look for, levels here and before', async () => {
    const studio = await openCourseStudio();
    await teachFirst(studio);
    const first = await shownLesson(studio, 0);
    const walk = present(
      first.segments.find((s) => s.activity === 'walk-the-beat'),
      'walk',
    );
    expect(walk).toMatchObject({
      howTo: 'Play and say walk-the-beat.',
      unitTitle: 'Answers in two bars',
      bring: ['two hand drums'],
      outcome: 'finished',
      covered: 12,
    });
    expect(walk.skills).toEqual([
      {
        skill: 'skill:steady-beat',
        title: 'steady beat',
        level: 3,
        here: { observation: 'observation:beat', level: 3 },
        wanted: 2,
        lookFor: ['feet and hands agree'],
        listenable: [
          {
            skill: 'skill:steady-beat',
            title: 'steady beat',
            wanted: 2,
            lookFor: 'feet and hands agree',
            listenFor: [{ kind: 'evenTiming', withinMs: 60 }],
          },
        ],
      },
    ]);
    expect(first.ongoing.map((o) => o.title)).toEqual(['relaxed hands']);
    expect(first).toMatchObject({
      number: 1,
      previous: null,
      next: { date: '2026-09-14' },
      courseRevision: await studio.revision(anaCourse),
    });

    const second = await shownLesson(studio, 1);
    expect(second.previous).toMatchObject({ date: '2026-09-07', practice: 'Walk and clap' });
    const recap = present(
      second.segments.find((s) => s.kind === 'recap'),
      'recap',
    );
    expect(recap.howTo).toContain('- walk the beat');
    expect(recap.howTo).toContain('Walk and clap');
    expect(recap.skills[0]).toMatchObject({ level: 3, here: null });
    expect(second.suggestedPractice).toContain('clap answers');
    expect(second.onHand.map((o) => [o.kind, o.title])).toContainEqual(['extension', 'lead the call']);
    expect(await studio.store.read((r) => viewLesson(r, id('lesson', 'none')))).toBeNull();
    expect(second.toKnow).toEqual([]);
    const note = 'A stiff left hand: short turns.';
    await studio.done({
      type: 'student.change',
      seen: (await studio.store.read((r) => r.get('student', ana)))?.revision ?? 0,
      student: { ...newStudent(ana, 'Ana', 2017), note },
    });
    expect((await shownLesson(studio, 1)).toKnow).toEqual([{ student: ana, name: 'Ana', note }]);
  });
});

describe('lists', () => {
  test("a pace is the same in the list and on the student's page, also once the studio has a pace of its own", async () => {
    const studio = await openCourseStudio();
    await teachFirst(studio);
    const listed = async () =>
      (await studio.store.read((r) => viewStudents(r, studio.outside()))).students[0]?.pacePercent;
    const before = await listed();
    await studio.store.change(
      { id: id('change', 'pace'), at: '2026-09-08T08:00:00.000Z', type: 'studio.change' },
      async (tx) => {
        const own = present(await tx.get('studio', studioId), 'the studio');
        const prior = { mean: Math.log(1.3), between: 0.1, within: 0.3 };
        await tx.put('studio', { ...own, pace: { prior, asOf: day('2026-09-08') } });
        return { ok: true, value: { label: 'Learnt the pace', reply: null } };
      },
    );
    expect(await listed()).toBeGreaterThan(present(before ?? null, 'a pace'));
    expect(await listed()).toBe(Math.round((await course(studio)).pace.percent));
  });

  test('students, with the next lesson and pace; one student; the library; one unit; the map; the term', async () => {
    const studio = await openCourseStudio();
    await teachFirst(studio);
    await studio.done({ type: 'student.add', student: newStudent(ben, 'Ben', 2012) });
    await studio.done({
      type: 'course.open',
      course: newCourse(benCourse, ben),
      slot: slotOf('ben', '16:15'),
    });
    const students = await studio.store.read((r) => viewStudents(r, studio.outside()));
    expect(students.students[0]).toMatchObject({
      name: 'Ana',
      age: 9,
      courses: [anaCourse],
      next: { date: '2026-09-14' },
    });
    expect(students.students[0]?.pacePercent).toBe((await course(studio)).pace.percent);
    expect(students.students[1]).toMatchObject({ name: 'Ben', pacePercent: null });
    expect(students.courses).toMatchObject([
      { id: anaCourse, weekly: true, units: 1, strands: [{ id: strandMain, name: 'Rhythm' }] },
      { id: benCourse, weekly: true, units: 0, stage: 'beginner' },
    ]);
    expect(await studio.store.read((r) => viewStudent(r, ana, studio.outside()))).toMatchObject({
      name: 'Ana',
      courses: [{ id: anaCourse, group: null }],
    });

    const { units } = await studio.store.read((r) => viewUnits(r));
    expect(units.map((u) => [u.title, u.usualMinutes, u.usedBy])).toEqual([
      ['Answers in two bars', 56, 1],
      ['Long notes', 25, 0],
    ]);
    const one = await studio.store.read((r) => viewUnit(r, unit.id));
    expect(one).toMatchObject({
      document: unit,
      versions: [{ version: 1 }],
      usedBy: [{ courseUnit, learner: 'Ana', version: 1 }],
      findings: [],
    });
    expect(await studio.store.read((r) => viewUnit(r, unit.id, 9))).toBeNull();
    const map = await studio.store.read((r) => viewSkills(r));
    expect(map.skills.find((s) => s.id === id('skill', 'steady-beat'))?.taughtBy.map((u) => u.title)).toEqual(
      ['Answers in two bars', 'Long notes'],
    );

    const term = await studio.store.read((r) => viewTerm(r, studio.outside()));
    expect(term.terms).toMatchObject([{ name: 'Autumn', lessons: 28 }]);
    expect(term.week.map((w) => [w.learner, w.time, w.clash])).toEqual([
      ['Ana', '16:00', true],
      ['Ben', '16:15', true],
    ]);
    const compare = await studio.store.read((r) => viewCourseUnit(r, courseUnit));
    expect(compare).toMatchObject({ learner: 'Ana', differences: [] });
  });
});

describe('what-if', () => {
  const value = <T>(result: Result<T, Fault>): T => {
    if (!result.ok) throw new Error(result.error.message);
    return result.value;
  };

  test('another unit, a lesson less: sentences, and nothing saved', async () => {
    const studio = await openCourseStudio();
    const before = await studio.store.read(readTables);
    const [first, second] = await studio.lessons(anaCourse);
    const view = value(
      await whatIf(
        studio.store,
        anaCourse,
        [
          { type: 'lesson.cancel', lesson: present(first, 'first').id, reason: 'away' },
          { type: 'lesson.cancel', lesson: present(second, 'second').id, reason: 'away' },
          {
            type: 'courseUnit.give',
            seen: 0,
            course: anaCourse,
            courseUnit: id('course-unit', 'notes'),
            unit: otherUnit.id,
            strand: strandMain,
          },
        ],
        studio.outside(),
      ),
    );
    expect(view.changes[0]).toMatch(/^The planned work would end on .+ instead of 28 September: later\.$/);
    expect(view.changes.join('\n')).toContain('2 lessons fewer: 12 instead of 14.');
    expect(view.changes.join('\n')).toContain('“Long notes” would be finished on');
    expect(view.ends.before).toBe('2026-09-28');
    expect(view.ends.after && view.ends.after > '2026-09-28').toBe(true);
    expect(view.course.units).toHaveLength(2);
    expect(await studio.store.read(readTables)).toEqual(before);
  });

  test('45 minutes instead of 30: sooner', async () => {
    const studio = await openCourseStudio();
    const slot = { ...slotOf('ana'), minutes: 45 };
    const view = value(
      await whatIf(
        studio.store,
        anaCourse,
        [{ type: 'slot.put', seen: 0, course: anaCourse, slot }],
        studio.outside(),
      ),
    );
    expect(view.changes[0]).toContain('sooner');
  });

  test('what cannot be done cannot be imagined', async () => {
    const studio = await openCourseStudio();
    const answer = await whatIf(
      studio.store,
      anaCourse,
      [{ type: 'lesson.cancel', lesson: id('lesson', 'none'), reason: '' }],
      studio.outside(),
    );
    expect(answer).toMatchObject({ ok: false, error: { kind: 'NotFound' } });
  });
});
