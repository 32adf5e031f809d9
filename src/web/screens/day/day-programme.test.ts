import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DayLesson } from '#contract';
import type { PlainDate, PlainTime } from '#core';
import { dayExtent, dayProgramme } from './day-programme.ts';

const day = '2026-11-25' as PlainDate;
const lesson = (
  id: string,
  time: string,
  minutes: number,
  status: DayLesson['status'] = 'planned',
): DayLesson => ({
  id: `lesson:${id}` as DayLesson['id'],
  course: 'course:c' as DayLesson['course'],
  learner: {
    student: null,
    group: null,
    name: id,
    age: null,
    instrument: 'flute' as DayLesson['learner']['instrument'],
    instrumentName: 'Flute',
    stage: 'beginner',
    members: [],
  },
  number: 1,
  time: time as PlainTime,
  minutes,
  status,
  reason: '',
  segments: [],
  overrun: 0.1,
  decisions: [],
  wantsUnit: false,
  lastNote: '',
  absent: [],
  lastAbsent: [],
});
const at = (time: string, date: PlainDate = day) => ({ date, time: time as PlainTime });
const shape = (rows: ReturnType<typeof dayProgramme>) =>
  rows.map((r) =>
    r.kind === 'between'
      ? `${r.minutes}${r.now ? ' now' : ''}`
      : `${r.lesson.learner.name} ${r.place}${r.teach ? ' teach' : ''}`,
  );

describe('dayProgramme', () => {
  const lessons = [lesson('c', '16:45', 30), lesson('a', '15:00', 45), lesson('b', '15:45', 30)];

  it('puts lessons in order and shows back to back and gaps', () => {
    expect(shape(dayProgramme(day, lessons, at('08:00')))).toEqual([
      'a next teach',
      '0',
      'b later',
      '30',
      'c later',
    ]);
  });
  it('marks the lesson that is now, up to but not including its end', () => {
    expect(shape(dayProgramme(day, lessons, at('15:44')))[0]).toBe('a now teach');
    expect(shape(dayProgramme(day, lessons, at('15:45')))[2]).toBe('b now teach');
    const row = dayProgramme(day, lessons, at('15:50'))[2];
    expect(row?.kind === 'lesson' && row.minute).toBe(5);
  });
  it('puts now into the gap it lies in, and teaching on the next lesson', () => {
    expect(shape(dayProgramme(day, lessons, at('16:20')))).toEqual([
      'a over',
      '0',
      'b over',
      '30 now',
      'c next teach',
    ]);
  });
  it('offers teaching nowhere on another day or after the last lesson', () => {
    for (const now of [at('15:10', '2026-11-24' as PlainDate), at('18:00')])
      expect(shape(dayProgramme(day, lessons, now)).some((s) => s.includes('teach'))).toBe(false);
  });
  it('counts the time of a cancelled lesson as free', () => {
    const rows = dayProgramme(
      day,
      [lesson('a', '15:00', 30), lesson('x', '15:30', 30, 'cancelled'), lesson('b', '16:00', 30)],
      at('15:40'),
    );
    expect(shape(rows)).toEqual(['a over', 'x off', '30 now', 'b next teach']);
  });
  it('goes on to the next lesson when the present one is closed early', () => {
    const rows = dayProgramme(
      day,
      [lesson('a', '15:00', 30, 'taught'), lesson('b', '15:30', 30)],
      at('15:20'),
    );
    expect(shape(rows)).toEqual(['a over', '0', 'b next teach']);
  });
  it('says by how much two lessons overlap', () => {
    const rows = dayProgramme(day, [lesson('a', '15:00', 45), lesson('b', '15:30', 30)], at('08:00'));
    expect(shape(rows)[1]).toBe('-15');
  });
  it('keeps every lesson once, has at most one now and at most one to teach (law)', () => {
    const anyLesson = fc
      .record({
        start: fc.integer({ min: 0, max: 1380 }),
        minutes: fc.integer({ min: 10, max: 60 }),
        status: fc.constantFrom<DayLesson['status']>('planned', 'taught', 'missed', 'cancelled'),
      })
      .map(({ start, minutes, status }) => {
        const time = `${String(Math.floor(start / 60)).padStart(2, '0')}:${String(start % 60).padStart(2, '0')}`;
        return { time, minutes, status };
      });
    fc.assert(
      fc.property(fc.array(anyLesson, { maxLength: 9 }), fc.integer({ min: 0, max: 23 }), (plain, hour) => {
        const all = plain.map((p, i) => lesson(`l${i}`, p.time, p.minutes, p.status));
        const rows = dayProgramme(day, all, at(`${String(hour).padStart(2, '0')}:30`));
        const shown = rows.flatMap((r) => (r.kind === 'lesson' ? [r] : []));
        expect(shown.map((r) => r.lesson.id).sort()).toEqual(all.map((l) => l.id).sort());
        expect(shown.filter((r) => r.teach).length).toBeLessThanOrEqual(1);
        const nows = rows.filter((r) => (r.kind === 'between' ? r.now : r.place === 'now'));
        expect(nows.length).toBeLessThanOrEqual(1);
      }),
      { seed: 20261125 },
    );
  });
});

describe('dayExtent', () => {
  it('counts the lessons that stand', () => {
    expect(
      dayExtent([lesson('a', '09:30', 30), lesson('x', '10:00', 30, 'missed'), lesson('b', '11:00', 45)]),
    ).toEqual({
      lessons: 2,
      minutes: 75,
      from: 570,
      to: 705,
    });
  });
  it('is nothing when no lesson stands', () => {
    expect(dayExtent([lesson('x', '10:00', 30, 'cancelled')])).toBeNull();
  });
});
