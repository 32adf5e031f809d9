import { describe, expect, test } from 'vitest';
import { present } from '#core';
import {
  activity,
  anaCourse,
  day,
  id,
  openCourseStudio,
  openStudio,
  otherUnit,
  skills,
  strandMain,
  type TestStudio,
  unit,
} from '../testing/open-studio.contract.ts';

const courseUnit = id('course-unit', 'ana-answers');
const copy = async (studio: TestStudio) =>
  present(await studio.store.read((r) => r.get('courseUnit', courseUnit)), 'the copy');
const seen = (studio: TestStudio) => studio.revision(anaCourse);
const adapted = {
  ...unit,
  activities: [activity('stamp-the-beat', 'steady-beat', 6), ...unit.activities.slice(1)],
};

describe('[R-UNIT] units', () => {
  test('[R-UNIT-1] the library moves on, the copy stays; [R-UNIT-2] and every version is kept', async () => {
    const studio = await openCourseStudio();
    await studio.done({ type: 'unit.save', seenVersion: 1, document: adapted });
    expect((await copy(studio)).document).toEqual(unit);
    const versions = await studio.store.read((r) => r.list('unitVersion', { where: { unit: unit.id } }));
    expect(versions.map((v) => v.version)).toEqual([1, 2]);
  });

  test('[R-UNIT-2] from the library: what was done stays done, by activity', async () => {
    const studio = await openCourseStudio();
    const first = present((await studio.lessons(anaCourse))[0], 'lesson');
    for (const segment of await studio.segments(first.id))
      if (segment.kind === 'work')
        await studio.done({
          type: 'segment.log',
          segment: segment.id,
          seconds: 500,
          outcome: 'finished',
          share: null,
        });
    await studio.done({ type: 'lesson.close', lesson: first.id, minutes: null });
    await studio.done({ type: 'unit.save', seenVersion: 1, document: adapted });
    const reply = await studio.done({
      type: 'courseUnit.takeFromLibrary',
      seen: await seen(studio),
      courseUnit,
    });
    expect(reply.notices.join(' ')).toContain('What changed for Ana');
    expect((await copy(studio)).unitVersion).toBe(2);
    const planned = await studio.store.read((r) =>
      r.list('segment', { where: { course: anaCourse, kind: 'work' } }),
    );
    const open = planned.filter((s) => s.outcome === null).map((s) => s.activity);
    expect(open).toContain('stamp-the-beat');
    expect(open).not.toContain('clap-answers');
  });

  test('[R-UNIT-2] into the library: the copy becomes the next version, and an equal one is refused', async () => {
    const studio = await openCourseStudio();
    expect(
      (await studio.refused({ type: 'courseUnit.takeIntoLibrary', seen: await seen(studio), courseUnit }))
        .kind,
    ).toBe('NotAllowedNow');
    await studio.done({ type: 'courseUnit.change', seen: await seen(studio), courseUnit, document: adapted });
    await studio.done({ type: 'courseUnit.takeIntoLibrary', seen: await seen(studio), courseUnit });
    expect(await studio.store.read((r) => r.get('unit', unit.id))).toMatchObject({
      version: 2,
      document: { activities: [{ key: 'stamp-the-beat' }, {}, {}] },
    });
    expect((await copy(studio)).unitVersion).toBe(2);
  });

  test('a broken document is refused, naming the field', async () => {
    const studio = await openStudio();
    const broken = {
      ...unit,
      activities: [
        { ...present(unit.activities[0], 'activity'), minutes: { shortest: 9, usual: 5, longest: 300 } },
      ],
    };
    const fault = await studio.refused({ type: 'unit.save', seenVersion: 1, document: broken });
    expect(fault.kind).toBe('Invalid');
    expect(fault.field).toContain('document.activities[0].minutes');
    expect(fault.details?.length).toBeGreaterThan(0);
  });

  test('[R-UNIT-3] import merges skills; a ring is refused, a different definition is said and ours kept', async () => {
    const studio = await openStudio();
    const [beat] = skills;
    const mine = present(beat, 'skill');
    const theirs = { ...mine, restsOn: [...mine.restsOn], title: 'beats steadily' };
    const reply = await studio.done({
      type: 'unit.import',
      units: [],
      skills: [theirs, { ...theirs, id: id('skill', 'sways'), restsOn: [theirs.id] }],
    });
    expect(reply.notices.join(' ')).toContain('yours were kept');
    expect((await studio.store.read((r) => r.get('skill', theirs.id)))?.title).toBe('steady beat');
    const ring = await studio.refused({
      type: 'skill.put',
      skill: { ...theirs, restsOn: [id('skill', 'sways')] },
    });
    expect(ring.message).toContain('rests on');
    expect((await studio.refused({ type: 'skill.remove', skill: theirs.id })).kind).toBe('NotAllowedNow');
    await studio.done({ type: 'skill.remove', skill: id('skill', 'sways') });
  });

  test('[R-UNIT-5] a skill that is not in the map joins it, and the unit can be planned and revisited', async () => {
    const studio = await openStudio();
    const own = {
      ...otherUnit,
      id: id('unit', 'own'),
      skills: [id('skill', 'soft-tongue')],
      checks: [],
      activities: [activity('say-du', 'soft-tongue', 8)],
    };
    const reply = await studio.done({ type: 'unit.save', seenVersion: 0, document: own });
    expect(reply.notices.join(' ')).toContain('“soft tongue”');
    await studio.done({
      type: 'courseUnit.give',
      seen: await seen(studio),
      course: anaCourse,
      courseUnit,
      unit: own.id,
      strand: strandMain,
    });
    await studio.done({
      type: 'observe',
      observation: id('observation', 'soft'),
      course: anaCourse,
      student: null,
      lesson: null,
      skill: id('skill', 'soft-tongue'),
      level: 3,
      note: '',
    });
    const revisits = await studio.store.read((r) =>
      r.list('segment', { where: { course: anaCourse, kind: 'revisit' } }),
    );
    expect(revisits[0]?.skill).toBe('skill:soft-tongue');
    expect((await studio.refused({ type: 'skill.remove', skill: id('skill', 'soft-tongue') })).kind).toBe(
      'NotAllowedNow',
    );
  });

  test('[R-UNIT-4] taken off, the taught part stays readable, the rest is no longer planned', async () => {
    const studio = await openCourseStudio();
    const first = present((await studio.lessons(anaCourse))[0], 'lesson');
    const [work] = (await studio.segments(first.id)).filter((s) => s.kind === 'work');
    await studio.done({
      type: 'segment.log',
      segment: present(work, 'work').id,
      seconds: 300,
      outcome: 'finished',
      share: null,
    });
    await studio.done({ type: 'lesson.close', lesson: first.id, minutes: null });
    const reply = await studio.done({ type: 'courseUnit.remove', seen: await seen(studio), courseUnit });
    expect(reply.notices.join(' ')).toContain('begins anew');
    const segments = await studio.store.read((r) =>
      r.list('segment', { where: { course: anaCourse, kind: 'work' }, orderBy: ['position'] }),
    );
    expect(segments.map((s) => [s.title, s.courseUnit])).toEqual([
      ['walk the beat', null],
      ['clap answers', null],
    ]);
  });

  test('the order of units within a strand', async () => {
    const studio = await openCourseStudio();
    await studio.done({
      type: 'courseUnit.give',
      seen: await seen(studio),
      course: anaCourse,
      courseUnit: id('course-unit', 'notes'),
      unit: otherUnit.id,
      strand: strandMain,
      position: 0,
    });
    const order = async () =>
      (
        await studio.store.read((r) =>
          r.list('courseUnit', { where: { course: anaCourse }, orderBy: ['position'] }),
        )
      ).map((u) => [u.unit, u.position]);
    expect(await order()).toEqual([
      [otherUnit.id, 0],
      [unit.id, 1],
    ]);
    await studio.done({ type: 'courseUnit.change', seen: await seen(studio), courseUnit, position: 0 });
    expect(await order()).toEqual([
      [unit.id, 0],
      [otherUnit.id, 1],
    ]);
    expect(
      (
        await studio.refused({
          type: 'courseUnit.change',
          seen: await seen(studio),
          courseUnit,
          notBefore: day('2026-10-01'),
          notAfter: day('2026-09-01'),
        })
      ).field,
    ).toBe('notAfter');
  });
});

describe('[R-HAND] by hand', () => {
  const find = async (studio: TestStudio, key: string) => {
    const segments = await studio.store.read((r) =>
      r.list('segment', { where: { course: anaCourse, activity: key, kind: 'work' } }),
    );
    return present(segments[0], key);
  };
  const lessonAt = async (studio: TestStudio, at: number) =>
    present((await studio.lessons(anaCourse))[at], 'lesson');

  test('[R-HAND-1] moved work is pinned where it was put, keeps its row, and the rest flows around it', async () => {
    const studio = await openCourseStudio();
    const walk = await find(studio, 'walk-the-beat');
    const third = await lessonAt(studio, 2);
    await studio.done({
      type: 'segment.move',
      seen: await seen(studio),
      segment: walk.id,
      lesson: third.id,
      minutes: null,
    });
    expect((await studio.segments(third.id)).find((s) => s.id === walk.id)).toMatchObject({
      pinned: true,
      activity: 'walk-the-beat',
    });
    // What rests on it cannot come before it.
    const clap = await find(studio, 'clap-answers');
    const date = (await studio.lessons(anaCourse)).find((l) => l.id === clap.lesson)?.date;
    expect(date && date >= third.date).toBe(true);
    await studio.done({ type: 'segment.pin', seen: await seen(studio), segment: walk.id, pinned: false });
    expect((await find(studio, 'walk-the-beat')).lesson).toBe((await lessonAt(studio, 0)).id);
  });

  test('[R-HAND-2] before what it rests on, or where it does not fit: refused with the reason', async () => {
    const studio = await openCourseStudio();
    const play = await find(studio, 'play-answers');
    const first = await lessonAt(studio, 0);
    const order = await studio.refused({
      type: 'segment.move',
      seen: await seen(studio),
      segment: play.id,
      lesson: first.id,
      minutes: 5,
    });
    expect(order.message).toContain('rests on “clap answers”');
    const walk = await find(studio, 'walk-the-beat');
    const room = await studio.refused({
      type: 'segment.move',
      seen: await seen(studio),
      segment: walk.id,
      lesson: first.id,
      minutes: 29,
    });
    expect(room.message).toContain('do not fit');
    const [settling] = await studio.segments(first.id);
    const frame = await studio.refused({
      type: 'segment.move',
      seen: await seen(studio),
      segment: present(settling, 'frame').id,
      lesson: first.id,
      minutes: 5,
    });
    expect(frame.message).toContain('stays in it');
  });

  test('[R-HAND-3] on the spot, in a lesson under way: the minutes come from the rest, the sum stays', async () => {
    const studio = await openCourseStudio();
    const first = await lessonAt(studio, 0);
    const walk = await find(studio, 'walk-the-beat');
    await studio.done({
      type: 'segment.log',
      segment: walk.id,
      seconds: 240,
      outcome: 'finished',
      share: null,
    });
    await studio.done({
      type: 'segment.add',
      lesson: first.id,
      segment: id('segment', 'spot'),
      courseUnit,
      activity: 'lead-the-call',
      minutes: 6,
    });
    const segments = await studio.segments(first.id);
    expect(segments.map((s) => s.minutes).reduce((a, b) => a + b, 0)).toBe(30);
    expect(segments.find((s) => s.id === id('segment', 'spot'))).toMatchObject({
      kind: 'extension',
      minutes: 6,
      outcome: null,
    });
    const reply = await studio.done({
      type: 'segment.add',
      lesson: first.id,
      segment: id('segment', 'more'),
      courseUnit,
      activity: 'play-answers',
      minutes: 60,
    });
    expect(reply.notices.join(' ')).toContain('of 60 minutes');
  });

  test('a bare lesson to come: what is added is pinned and planned in', async () => {
    const studio = await openCourseStudio();
    const second = await lessonAt(studio, 1);
    await studio.done({
      type: 'segment.add',
      lesson: second.id,
      segment: id('segment', 'add'),
      courseUnit,
      activity: 'walk-the-beat',
      minutes: 5,
    });
    expect((await studio.segments(second.id)).find((s) => s.id === id('segment', 'add'))).toMatchObject({
      pinned: true,
      activity: 'walk-the-beat',
    });
  });
});
