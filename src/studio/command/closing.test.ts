import { describe, expect, test } from 'vitest';
import { present } from '#core';
import { loadCourse } from '../course/course-records.ts';
import type { SegmentRecord } from '../record/records.ts';
import { ana, anaCourse, id, openCourseStudio, type TestStudio } from '../testing/open-studio.contract.ts';
import { latestLevels } from '../view/latest-level.ts';

const courseUnit = id('course-unit', 'ana-answers');

async function lessonAt(studio: TestStudio, at: number) {
  return present((await studio.lessons(anaCourse))[at], `lesson ${at}`);
}
async function workIn(studio: TestStudio, at: number): Promise<readonly SegmentRecord[]> {
  const segments = await studio.segments((await lessonAt(studio, at)).id);
  return segments.filter((s) => s.kind === 'work');
}
const log = (
  segment: SegmentRecord,
  outcome: SegmentRecord['outcome'],
  seconds: number | null = null,
  share: number | null = null,
) => ({ type: 'segment.log', segment: segment.id, seconds, outcome, share }) as const;
const close = async (studio: TestStudio, at: number) =>
  studio.done({ type: 'lesson.close', lesson: (await lessonAt(studio, at)).id, minutes: null });
const planned = async (studio: TestStudio) =>
  (await studio.store.read((r) => r.list('segment', { where: { course: anaCourse, courseUnit } }))).filter(
    (s) => s.outcome === null,
  );
const minutesPlanned = async (studio: TestStudio, activity: string) =>
  (await planned(studio))
    .filter((s) => s.activity === activity && s.kind === 'work')
    .reduce((sum, s) => sum + s.minutes, 0);

describe('[R-COVERED] what was done counts in usual minutes', () => {
  test('[R-COVERED-1] finished is all that was left; what is not finished comes again; later lessons follow', async () => {
    const studio = await openCourseStudio();
    const [walk, clap] = await workIn(studio, 0);
    const before = await minutesPlanned(studio, 'clap-answers');
    await studio.done(log(present(walk, 'walk'), 'finished', 600));
    await studio.done(log(present(clap, 'clap'), 'skipped'));
    const reply = await close(studio, 0);
    const [walked, clapped] = await workIn(studio, 0);
    expect(walked).toMatchObject({ activity: 'walk-the-beat', outcome: 'finished', covered: 12 });
    expect(clapped).toMatchObject({ outcome: 'skipped', covered: 0 });
    expect(await minutesPlanned(studio, 'walk-the-beat')).toBe(0);
    // Nothing of it was reached, so all of it is planned again.
    expect(await minutesPlanned(studio, 'clap-answers')).toBeGreaterThanOrEqual(before - 9);
    expect(reply.courses).toEqual([
      { course: anaCourse, revision: await studio.revision(anaCourse), moved: reply.courses[0]?.moved },
    ]);
    expect(reply.courses[0]?.moved).toBeGreaterThan(0);
  });

  test('[R-COVERED-2] [R-COVERED-3] a share counts as that share of the chunk, a clock as what it is worth, neither as half', async () => {
    for (const [seconds, share, covered] of [
      [null, 0.25, 3],
      [240, null, 4],
      [3600, null, 12],
      [null, null, 6],
    ] as const) {
      const studio = await openCourseStudio();
      const walk = present((await workIn(studio, 0))[0], 'walk');
      await studio.done(log(walk, 'partly', seconds, share));
      await close(studio, 0);
      expect((await workIn(studio, 0))[0]?.covered, `${seconds} s, share ${share}`).toBeCloseTo(covered, 3);
    }
  });

  test('[R-CLOSE-2] without an outcome the clock speaks: nine tenths finish, less is partly, nothing is not reached', async () => {
    for (const [seconds, outcome] of [
      [700, 'finished'],
      [300, 'partly'],
      [null, 'skipped'],
    ] as const) {
      const studio = await openCourseStudio();
      const walk = present((await workIn(studio, 0))[0], 'walk');
      if (seconds !== null) await studio.done(log(walk, null, seconds));
      await close(studio, 0);
      expect((await workIn(studio, 0))[0]?.outcome).toBe(outcome);
    }
  });
});

test('[R-CLOSE-2] without an outcome the levels speak first: reached is finished, below is partly', async () => {
  for (const [level, outcome] of [
    [2, 'finished'],
    [1, 'partly'],
  ] as const) {
    const studio = await openCourseStudio();
    const first = await lessonAt(studio, 0);
    await studio.done({
      type: 'observe',
      observation: id('observation', 'here'),
      course: anaCourse,
      student: ana,
      lesson: first.id,
      skill: id('skill', 'steady-beat'),
      level,
      note: '',
    });
    await close(studio, 0);
    expect((await workIn(studio, 0))[0]?.outcome).toBe(outcome);
  }
});

describe('[R-CLOSE] closing', () => {
  test('[R-CLOSE-3] nothing marked: nothing counts, the work comes again, and a notice says so', async () => {
    const studio = await openCourseStudio();
    const titles = (await workIn(studio, 0)).map((s) => s.activity);
    const reply = await close(studio, 0);
    expect(reply.notices.join(' ')).toContain('nothing counts as done');
    expect((await workIn(studio, 1)).map((s) => s.activity)[0]).toBe(titles[0]);
  });

  test('[R-CLOSE-1] a lesson to come cannot be closed; twice neither; a later one while an earlier waits can', async () => {
    const studio = await openCourseStudio();
    const second = await lessonAt(studio, 1);
    expect((await studio.refused({ type: 'lesson.close', lesson: second.id, minutes: null })).kind).toBe(
      'NotAllowedNow',
    );
    studio.setToday(second.date);
    await close(studio, 1);
    expect(
      (await studio.refused({ type: 'lesson.close', lesson: second.id, minutes: null })).message,
    ).toContain('closed already');
    expect((await lessonAt(studio, 0)).status).toBe('planned');
    await close(studio, 0);
    expect((await lessonAt(studio, 0)).status).toBe('taught');
  });

  test('[R-CLOSE-4] a lesson cut short has its segments cut with it', async () => {
    const studio = await openCourseStudio();
    const first = await lessonAt(studio, 0);
    await studio.done({ type: 'lesson.close', lesson: first.id, minutes: 20 });
    expect((await studio.segments(first.id)).reduce((sum, s) => sum + s.minutes, 0)).toBe(20);
  });

  test('[R-ONCE] closed once, though it was sent twice', async () => {
    const studio = await openCourseStudio();
    const command = { type: 'lesson.close', lesson: (await lessonAt(studio, 0)).id, minutes: null } as const;
    const first = await studio.send(command, 'twice');
    const revision = await studio.revision(anaCourse);
    expect(await studio.send(command, 'twice')).toEqual(first);
    expect(await studio.revision(anaCourse)).toBe(revision);
  });

  test('[R-MOVED] work that was not reached is listed as moved to the next lesson', async () => {
    const studio = await openCourseStudio();
    await close(studio, 0);
    const moved = (await studio.store.read((r) => r.get('course', anaCourse)))?.moved ?? [];
    expect(moved.find((m) => m.title === 'walk the beat')).toMatchObject({
      from: { date: '2026-09-07' },
      to: { date: '2026-09-14' },
      because: { kind: 'notReached' },
    });
  });

  test('[R-MOVED] what moved stays listed until looked at', async () => {
    const studio = await openCourseStudio();
    await close(studio, 0);
    const moved = async () => (await studio.store.read((r) => r.get('course', anaCourse)))?.moved.length;
    expect(await moved()).toBeGreaterThan(0);
    await studio.done({ type: 'course.looked', course: anaCourse });
    expect(await moved()).toBe(0);
  });

  test('[R-ASIDE] set aside: away for as many lessons as the course rests, then planned again', async () => {
    const studio = await openCourseStudio();
    const [walk, clap] = await workIn(studio, 0);
    await studio.done(log(present(walk, 'walk'), 'finished', 600));
    await studio.done(log(present(clap, 'clap'), 'setAside', 300));
    await close(studio, 0);
    const [aside] = await studio.store.read((r) => r.list('setAside'));
    const back = (await lessonAt(studio, 3)).date;
    expect(aside).toMatchObject({ activity: 'clap-answers', backFrom: back });
    const lessons = await studio.lessons(anaCourse);
    for (const segment of (await planned(studio)).filter(
      (s) => s.activity === 'clap-answers' && s.kind === 'work',
    ))
      expect(
        present(
          lessons.find((l) => l.id === segment.lesson),
          'lesson',
        ).date >= back,
      ).toBe(true);
    await studio.done({
      type: 'activity.takeUp',
      seen: await studio.revision(anaCourse),
      course: anaCourse,
      courseUnit,
      activity: 'clap-answers',
    });
    expect((await workIn(studio, 1)).some((s) => s.activity === 'clap-answers')).toBe(true);
  });
});

describe('[R-CORRECT] a correction after closing counts, and the plan follows', () => {
  test('skipped turns out to have been finished', async () => {
    const studio = await openCourseStudio();
    await close(studio, 0);
    const walk = present((await workIn(studio, 0))[0], 'walk');
    expect(walk.outcome).toBe('skipped');
    const reply = await studio.done(log(walk, 'finished', 540));
    expect((await workIn(studio, 0))[0]).toMatchObject({ outcome: 'finished', covered: 12, seconds: 540 });
    expect(await minutesPlanned(studio, 'walk-the-beat')).toBe(0);
    expect(reply.courses[0]?.moved).toBeGreaterThan(0);
  });

  test('finished in two lessons: when the first turns out to be less, the second covers the rest', async () => {
    const studio = await openCourseStudio();
    const walk = present((await workIn(studio, 0))[0], 'walk');
    await studio.done(log(walk, 'partly', null, 0.5));
    await close(studio, 0);
    studio.setToday((await lessonAt(studio, 1)).date);
    const rest = present(
      (await workIn(studio, 1)).find((s) => s.activity === 'walk-the-beat'),
      'rest',
    );
    await studio.done(log(rest, 'finished', 300));
    await close(studio, 1);
    const covered = async () => (await studio.segments(rest.lesson)).find((s) => s.id === rest.id)?.covered;
    expect(await covered()).toBe(6);
    await studio.done(log(walk, 'partly', null, 0.25));
    expect(await covered()).toBe(9);
  });
});

describe('[R-SETTLED] [R-UNCLOSED] a lesson that is under way or waits to be closed keeps its segments', () => {
  test('while it is taught, a replanning goes round it', async () => {
    const studio = await openCourseStudio();
    const first = await lessonAt(studio, 0);
    const before = await studio.segments(first.id);
    await studio.done(log(present((await workIn(studio, 0))[0], 'walk'), null, 30));
    await studio.done({
      type: 'course.change',
      seen: await studio.revision(anaCourse),
      course: anaCourse,
      settings: {
        overrun: 0.2,
        retention: 0.85,
        maxRun: 3,
        parkGap: 2,
        settlingIn: 9,
        settingPractice: 9,
        recap: 5,
        revisit: 5,
        mostBlocks: 2,
        mostStrands: 2,
      },
    });
    const after = await studio.segments(first.id);
    expect(after.map((s) => [s.id, s.minutes])).toEqual(before.map((s) => [s.id, s.minutes]));
    expect((await studio.segments((await lessonAt(studio, 1)).id))[0]?.minutes).toBeGreaterThanOrEqual(9);
  });

  test('the day after, unclosed, it counts as planned: the plan of the others stays', async () => {
    const studio = await openCourseStudio();
    const layout = async () =>
      (await planned(studio))
        .filter((s) => s.kind !== 'revisit')
        .map((s) => `${s.lesson} ${s.key} ${s.minutes}`)
        .sort();
    const before = await layout();
    studio.setToday('2026-09-08');
    await studio.done({ type: 'course.replan', seen: await studio.revision(anaCourse), course: anaCourse });
    expect(await layout()).toEqual(before);
  });
});

describe('levels', () => {
  test('a level outside of a lesson replans: what is known already takes a short check at most', async () => {
    const studio = await openCourseStudio();
    const before = await minutesPlanned(studio, 'clap-answers');
    for (const skill of ['steady-beat', 'call-and-answer'])
      await studio.done({
        type: 'observe',
        observation: id('observation', skill),
        course: anaCourse,
        student: ana,
        lesson: null,
        skill: id('skill', skill),
        level: 4,
        note: '',
      });
    expect(await minutesPlanned(studio, 'clap-answers')).toBeLessThan(before);
    await studio.done({ type: 'observe.remove', observation: id('observation', 'call-and-answer') });
    expect(await minutesPlanned(studio, 'clap-answers')).toBe(before);
  });

  test('of two levels noted on one day the later counts, whatever their ids', async () => {
    for (const [earlier, later] of [
      ['aaa', 'zzz'],
      ['zzz', 'aaa'],
    ] as const) {
      const studio = await openCourseStudio();
      for (const [observation, level, at] of [
        [earlier, 1, '10:00'],
        [later, 3, '10:20'],
      ] as const) {
        studio.setToday('2026-09-07', at);
        await studio.done({
          type: 'observe',
          observation: id('observation', observation),
          course: anaCourse,
          student: ana,
          lesson: null,
          skill: id('skill', 'steady-beat'),
          level,
          note: '',
        });
      }
      const records = await studio.store.read((reader) => loadCourse(reader, anaCourse));
      const levels = latestLevels(present(records, 'the course').observations);
      expect(levels.get(id('skill', 'steady-beat'))).toBe(3);
    }
  });

  test('[R-LENIENT] a level or a text from an old queue is taken; on a lesson that is gone the text comes back', async () => {
    const studio = await openCourseStudio();
    const first = await lessonAt(studio, 0);
    await studio.done({
      type: 'lesson.write',
      lesson: first.id,
      field: 'note',
      base: '',
      text: 'tapped along',
    });
    const reply = await studio.done({
      type: 'lesson.write',
      lesson: first.id,
      field: 'note',
      base: '',
      text: 'bring the drum',
    });
    expect(reply.notices).toHaveLength(1);
    expect((await lessonAt(studio, 0)).note).toBe('tapped along\n\nbring the drum');
    // The window that typed it goes on from what became of it.
    const over = 'tapped along';
    expect(reply.wrote).toEqual({ text: `${over}\n\nbring the drum`, typed: 'bring the drum', over });
    const again = { type: 'lesson.write', lesson: first.id, field: 'note' } as const;
    const both = 'tapped along\n\nbring the drum';
    const loud = await studio.done({ ...again, base: both, text: both.replace('along', 'along, loud') });
    expect(loud.wrote).toEqual({ text: both.replace('along', 'along, loud') });
    // Each goes on in its own line, and neither stands twice.
    const drums = await studio.done({ ...again, base: both, text: `${both}s` });
    expect(drums.notices).toEqual([]);
    expect((await lessonAt(studio, 0)).note).toBe('tapped along, loud\n\nbring the drums');
    const fault = await studio.refused({
      type: 'lesson.write',
      lesson: id('lesson', 'gone'),
      field: 'note',
      base: '',
      text: 'precious',
    });
    expect(fault).toMatchObject({ kind: 'NotFound' });
    expect(fault.message).toContain('precious');
  });
});
