import { expect, test } from 'vitest';
import type { DayLesson } from '#contract';
import type { PlainTime } from '#core';
import { standInTheWay } from './stand-in-the-way.ts';

const lesson = (id: string, time: string, minutes: number, status = 'planned') =>
  ({ id, time, minutes, status }) as unknown as DayLesson; // only what the function reads

test('a lesson is in the way where it shares a minute, unless it falls out or is the one moved', () => {
  const lessons = [
    lesson('own', '16:00', 30),
    lesson('before', '15:30', 30),
    lesson('over', '16:20', 45),
    lesson('off', '16:00', 30, 'cancelled'),
    lesson('missed', '16:00', 30, 'missed'),
    lesson('given', '15:50', 15, 'taught'),
    lesson('after', '16:30', 30),
  ];
  const inTheWay = (time: string, minutes: number) =>
    standInTheWay({ lessons }, 'own' as DayLesson['id'], { time: time as PlainTime, minutes }).map(
      ({ id }) => id,
    );
  expect(inTheWay('16:00', 30)).toEqual(['over', 'given']);
  expect(inTheWay('16:05', 15)).toEqual([]);
  expect(inTheWay('15:00', 240)).toEqual(['before', 'over', 'given', 'after']);
});
