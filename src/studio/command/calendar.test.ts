import { describe, expect, test } from 'vitest';
import type { Command } from '#contract';
import { present } from '#core';
import {
  anaCourse,
  ben,
  benCourse,
  day,
  id,
  newCourse,
  newStudent,
  openCourseStudio,
  openStudio,
  slotOf,
  type TestStudio,
  time,
} from '../testing/open-studio.contract.ts';

const dates = async (studio: TestStudio, status = 'planned') =>
  (await studio.lessons(anaCourse)).filter((l) => l.status === status).map((l) => l.date);
const holiday = (name: string, starts: string, ends: string): Command => ({
  type: 'holiday.putMany',
  holidays: [{ id: id('holiday', 'new'), name, starts: day(starts), ends: day(ends), source: '' }],
});
const term = (ends: string) =>
  ({
    type: 'term.put',
    term: { id: id('term', 'autumn'), name: 'Autumn', starts: day('2026-09-07'), ends: day(ends) },
  }) as const;

describe('[R-LESSON] lessons follow slots, terms and holidays', () => {
  test('[R-LESSON-1] Mondays of the term from today on, without half-term', async () => {
    expect(await dates(await openStudio())).toEqual(
      '2026-09-07 2026-09-14 2026-09-21 2026-09-28 2026-10-05 2026-10-12 2026-10-19 2026-11-02 2026-11-09 2026-11-16 2026-11-23 2026-11-30 2026-12-07 2026-12-14'.split(
        ' ',
      ),
    );
  });

  test('[R-LESSON-3] a shorter term takes untouched lessons away and keeps one with a note; a longer one brings them back', async () => {
    const studio = await openStudio();
    const last = present((await studio.lessons(anaCourse)).at(-1), 'last');
    await studio.done({
      type: 'lesson.write',
      lesson: last.id,
      field: 'note',
      base: '',
      text: 'play for the class',
    });
    await studio.done(term('2026-11-30'));
    expect((await dates(studio)).slice(-2)).toEqual(['2026-11-30', '2026-12-14']);
    await studio.done(term('2026-12-31'));
    expect((await dates(studio)).slice(-4)).toEqual(['2026-12-07', '2026-12-14', '2026-12-21', '2026-12-28']);
    expect((await studio.lessons(anaCourse)).filter((l) => l.date === '2026-12-14')).toHaveLength(1);
  });

  test('[R-LESSON-2] a moved lesson is not made twice; a new time reaches the untouched ones only', async () => {
    const studio = await openStudio();
    const second = present((await studio.lessons(anaCourse))[1], 'second');
    await studio.done({
      type: 'lesson.move',
      lesson: second.id,
      date: day('2026-09-16'),
      time: time('15:00'),
      minutes: 30,
    });
    await studio.done({
      type: 'slot.put',
      seen: await studio.revision(anaCourse),
      course: anaCourse,
      slot: slotOf('ana', '17:00'),
    });
    const lessons = await studio.lessons(anaCourse);
    expect(
      lessons.filter((l) => l.date >= '2026-09-14' && l.date <= '2026-09-16').map((l) => [l.date, l.time]),
    ).toEqual([['2026-09-16', '15:00']]);
    expect(lessons.filter((l) => l.time === '17:00')).toHaveLength(13);
  });

  test('[R-LESSON-4] a holiday removes, cancels what has a note with its name, and gives it back when it goes', async () => {
    const studio = await openCourseStudio();
    const [, second, third] = await studio.lessons(anaCourse);
    await studio.done({
      type: 'lesson.write',
      lesson: present(third, 'third').id,
      field: 'note',
      base: '',
      text: 'bring the drum',
    });
    const reply = await studio.done(holiday('Harvest week', '2026-09-14', '2026-09-21'));
    expect(reply.notices.join(' ')).toContain('1 lesson');
    const lessons = await studio.lessons(anaCourse);
    expect(lessons.some((l) => l.id === second?.id)).toBe(false);
    expect(lessons.find((l) => l.id === third?.id)).toMatchObject({
      status: 'cancelled',
      reason: 'Harvest week',
    });
    await studio.done({ type: 'holiday.remove', holiday: id('holiday', 'new') });
    expect((await dates(studio)).slice(1, 3)).toEqual(['2026-09-14', '2026-09-21']);
  });

  test('[R-LESSON-5] a clash is told, not refused', async () => {
    const studio = await openStudio();
    await studio.done({ type: 'student.add', student: newStudent(ben, 'Ben', 2012) });
    const reply = await studio.done({
      type: 'course.open',
      course: newCourse(benCourse, ben),
      slot: slotOf('ben', '16:15'),
    });
    expect(reply.notices.join(' ')).toContain('Ana on 7 September at 16:00');
  });

  test('[R-LESSON-6] a term that ends before it starts, or lasts for years, is refused', async () => {
    const studio = await openStudio();
    expect((await studio.refused(term('2026-09-01'))).message).toContain('before it starts');
    expect((await studio.refused(term('2036-09-01'))).message).toContain('at most 400');
  });

  test('[R-LESSON-7] cancelled and missed: the work flows on; a lesson that has begun is closed instead', async () => {
    const studio = await openCourseStudio();
    const [first, second] = await studio.lessons(anaCourse);
    const works = async (lesson: typeof first) =>
      (await studio.segments(present(lesson, 'lesson').id))
        .filter((s) => s.kind === 'work')
        .map((s) => s.key);
    const was = await works(first);
    await studio.done({ type: 'lesson.cancel', lesson: present(first, 'first').id, reason: 'ill' });
    expect(await works(first)).toEqual([]);
    expect(await works(second)).toEqual(was);
    await studio.done({ type: 'lesson.restore', lesson: present(first, 'first').id });
    expect(await works(first)).toEqual(was);
    const [segment] = (await studio.segments(present(first, 'first').id)).filter((s) => s.kind === 'work');
    await studio.done({
      type: 'segment.log',
      segment: present(segment, 'segment').id,
      seconds: 60,
      outcome: null,
      share: null,
    });
    expect(
      (await studio.refused({ type: 'lesson.miss', lesson: present(first, 'first').id, reason: '' })).message,
    ).toContain('has begun');
  });

  test('a holiday of one day is named by that day', async () => {
    const studio = await openStudio();
    expect((await studio.done(holiday('Feast', '2026-12-08', '2026-12-08'))).label).toBe(
      'Set the holiday Feast, 8 December',
    );
    expect((await studio.done(holiday('Feast', '2026-12-08', '2026-12-09'))).label).toBe(
      'Set the holiday Feast, 8 December to 9 December',
    );
  });

  test('a lesson moved into the holidays or into the past is told, not refused', async () => {
    const studio = await openStudio();
    const [, , lesson] = await studio.lessons(anaCourse);
    const move = (date: string): Command => ({
      type: 'lesson.move',
      lesson: present(lesson, 'a lesson').id,
      date: day(date),
      time: time('16:00'),
      minutes: 30,
    });
    expect((await studio.done(move('2026-10-28'))).notices).toEqual([
      '28 October lies in the holidays: Half-term.',
    ]);
    expect((await studio.done(move('2025-10-28'))).notices).toEqual(['28 October 2025 has passed.']);
    expect((await studio.done(move('2026-10-20'))).notices).toEqual([]);
  });

  test('the same calendar imported again brings its holidays up to date', async () => {
    const studio = await openStudio();
    const put = (tail: string, ends: string): Command => ({
      type: 'holiday.putMany',
      holidays: [
        {
          id: id('holiday', tail),
          name: 'Feast',
          starts: day('2026-12-01'),
          ends: day(ends),
          source: 'uid-1',
        },
      ],
    });
    await studio.done(put('a', '2026-12-07'));
    await studio.done(put('b', '2026-12-08'));
    const holidays = await studio.store.read((r) => r.list('holiday', { where: { source: 'uid-1' } }));
    expect(holidays).toMatchObject([{ id: 'holiday:a', ends: '2026-12-08' }]);
  });
});
