import { describe, expect, test } from 'vitest';
import { present } from '#core';
import {
  ana,
  anaCourse,
  day,
  id,
  openCourseStudio,
  openStudio,
  strandMain,
  unit,
} from '../testing/open-studio.contract.ts';
import { course, courseUnit, lessonBars, teachFirst } from '../testing/taught-course.contract.ts';
import { whatIf } from './what-if.ts';

describe('the course', () => {
  test('bars in date order with the holiday at rest; shares, checks, standing, pace', async () => {
    const studio = await openCourseStudio();
    await teachFirst(studio);
    const view = await course(studio);
    expect(view.bars.map((b) => (b.kind === 'rest' ? b.name : b.date)).slice(6, 9)).toEqual([
      '2026-10-19',
      'Half-term',
      '2026-11-02',
    ]);
    const bars = lessonBars(view);
    expect(bars.map((b) => b.number)).toEqual(bars.map((_, i) => i + 1));
    expect(view.units[0]).toMatchObject({ status: 'begun', adapted: false, version: 1, libraryVersion: 1 });
    expect(view.units[0]?.activities[0]).toMatchObject({
      activity: 'walk-the-beat',
      share: 1,
      setAside: false,
    });
    expect(view.units[0]?.share).toBeCloseTo(12 / 56, 6);
    expect(view.units[0]?.checks[0]).toMatchObject({ wanted: 2, level: 3 });
    const beat = present(
      view.skills.find((s) => s.skill === id('skill', 'steady-beat')),
      'beat',
    );
    expect(beat).toMatchObject({ level: 3, recall: 1, history: [{ date: '2026-09-07', level: 3 }] });
    expect(beat.due && beat.due > '2026-09-07').toBe(true);
    // 15 minutes for what usually takes 12.
    expect(view.pace.percent).toBeGreaterThan(100);
    expect(view.pace).toMatchObject({ observations: 1 });
    expect(view.pace.low).toBeLessThan(view.pace.percent);
    expect(view.attendance).toEqual({ taught: 1, missed: 0, cancelled: 0 });
    expect(view.leftOut).toEqual([]);
    expect(view.moves.length).toBeGreaterThan(0);
    for (const move of view.moves) expect(move.sentence).toMatch(/^“.+\.$/);
  });

  test('the check of a unit stands at its last segment, and nowhere while the unit does not fit', async () => {
    const studio = await openCourseStudio();
    const ends = lessonBars(await course(studio)).flatMap((b) =>
      b.segments.filter((s) => s.endsUnit).map((s) => [s.activity, b.date]),
    );
    expect(ends).toEqual([['play-answers', '2026-09-28']]);
    await studio.done({
      type: 'course.end',
      seen: await studio.revision(anaCourse),
      course: anaCourse,
      on: day('2026-09-15'),
    });
    const short = await course(studio);
    expect(lessonBars(short).flatMap((b) => b.segments.filter((s) => s.endsUnit))).toEqual([]);
    expect(short.leftOut.map((l) => l.activity)).toContain('play-answers');
    expect(short.leftOut[0]?.why).toContain('left out');
  });

  test('the list of what is left out agrees with the planner’s own', async () => {
    const studio = await openCourseStudio();
    await studio.done({
      type: 'course.end',
      seen: await studio.revision(anaCourse),
      course: anaCourse,
      on: day('2026-09-15'),
    });
    const { loadCourse } = await import('../course/course-records.ts');
    const { assembleCourseInput } = await import('../course/assemble-course-input.ts');
    const { loadLibrary } = await import('../course/replan-course.ts');
    const { planner } = studio.outside();
    const plan = await studio.store.read(async (r) =>
      planner.planCourse(
        assembleCourseInput(
          present(await loadCourse(r, anaCourse), 'course'),
          await loadLibrary(r),
          day('2026-09-07'),
        ),
        null,
        'full',
      ),
    );
    expect((await course(studio)).leftOut.map((l) => l.activity)).toEqual(
      plan.leftOut.map((l) => l.activity),
    );
  });

  test('a unit it is not ready for: what is missing, and the shortest way', async () => {
    const studio = await openStudio();
    const advanced = {
      ...unit,
      id: id('unit', 'solo'),
      title: 'A solo',
      skills: [id('skill', 'solo')],
      checks: [],
      extensions: [],
      activities: [{ ...present(unit.activities[0], 'activity'), develops: [id('skill', 'solo')] }],
    };
    await studio.done({
      type: 'unit.import',
      units: [advanced],
      skills: [
        {
          id: id('skill', 'solo'),
          title: 'solo',
          area: 'improvisation',
          stage: 'beginner',
          description: '',
          restsOn: [id('skill', 'two-bar-answers')],
          ongoing: false,
        },
      ],
    });
    const give = {
      type: 'courseUnit.give',
      seen: await studio.revision(anaCourse),
      course: anaCourse,
      courseUnit,
      unit: advanced.id,
      strand: strandMain,
    } as const;
    // Tried out beforehand, it says what the course would say, and nothing about room.
    const imagined = await whatIf(studio.store, anaCourse, [give], studio.outside());
    expect(imagined).toMatchObject({ ok: true });
    const changes = imagined.ok ? imagined.value.changes.join('\n') : '';
    expect(changes).toContain('it rests on “two bar answers”. Shortest way:');
    expect(changes).not.toMatch(/left out|would not be finished/);
    await studio.done(give);
    const view = await course(studio);
    expect(view.notReady[0]).toMatchObject({ courseUnit, way: [{ unit: unit.id, title: unit.title }] });
    expect(view.notReady[0]?.sentence).toContain('“two bar answers”');
    expect(view.notReady[0]?.missing).toEqual([
      { skill: id('skill', 'two-bar-answers'), title: 'two bar answers' },
    ]);
    expect(view.units[0]?.status).toBe('notReady');
    // A student who has it already: one observation, and the unit is planned.
    await studio.done({
      type: 'observe',
      observation: id('observation', 'has-it'),
      course: anaCourse,
      student: ana,
      lesson: null,
      skill: id('skill', 'two-bar-answers'),
      level: 2,
      note: '',
    });
    const ready = await course(studio);
    expect(ready.notReady).toEqual([]);
    expect(ready.units[0]?.status).toBe('planned');
  });
});
