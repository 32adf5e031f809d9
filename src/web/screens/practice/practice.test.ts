import { expect, test } from 'vitest';
import type { LessonView } from '#contract';
import type { PlainDate } from '#core';
import { suggestMinutesADay } from './minutes-a-day.ts';
import { practiceDays } from './practice-days.ts';
import { listPracticeMaterials } from './practice-materials.ts';
import { readPractice, withMinutes } from './practice-text.ts';

test('tasks are the lines of the text, minutes a line of their own', () => {
  expect(readPractice('- Scale of D\n15 minutes a day\n\nBars 1 to 4, slowly')).toEqual({
    minutes: 15,
    tasks: ['Scale of D', 'Bars 1 to 4, slowly'],
  });
  expect(readPractice('Play 20 minutes a day if you can')).toEqual({
    minutes: null,
    tasks: ['Play 20 minutes a day if you can'],
  });
});

test('minutes are written into the text and nothing else changes', () => {
  const text = '- Scale of D\n15 minutes a day\nBars 1 to 4';
  expect(withMinutes(text, 25)).toBe('- Scale of D\n25 minutes a day\nBars 1 to 4');
  expect(withMinutes('Scale of D', 25)).toBe('25 minutes a day\nScale of D');
  expect(withMinutes('', 25)).toBe('25 minutes a day');
  expect(readPractice(withMinutes(text, 40)).minutes).toBe(40);
});

test('minutes a day never fall with age or stage', () => {
  const stages = ['beginner', 'elementary', 'intermediate', 'advanced'] as const;
  for (let age = 4; age < 80; age++) {
    for (const stage of stages)
      expect(suggestMinutesADay(stage, age + 1)).toBeGreaterThanOrEqual(suggestMinutesADay(stage, age));
    const byStage = stages.map((stage) => suggestMinutesADay(stage, age));
    expect(byStage).toEqual([...byStage].sort((a, b) => a - b));
  }
  expect(suggestMinutesADay('beginner', 6)).toBe(10);
});

const day = (text: string) => text as PlainDate;

test('days to tick lie between the lessons, at most seven', () => {
  expect(practiceDays(day('2026-11-25'), day('2026-12-02'))).toEqual(
    ['26', '27', '28', '29', '30'].map((d) => `2026-11-${d}`).concat(['2026-12-01']),
  );
  expect(practiceDays(day('2026-11-25'), day('2026-12-16'))).toHaveLength(7);
  expect(practiceDays(day('2026-11-25'), null)).toHaveLength(7);
  expect(practiceDays(day('2026-11-25'), day('2026-11-26'))).toHaveLength(1);
});

const lessonOf = (course: string, outcome: string | null = 'partly') =>
  ({
    course,
    segments: [
      {
        kind: 'work',
        courseUnit: 'course-unit:one',
        activity: 'slow',
        outcome,
        materials: [
          { key: 'scale', title: 'Scale', spec: { kind: 'scale' }, seed: null },
          { key: 'song', title: 'The tune', spec: null, seed: null },
          { key: 'later', title: 'Not yet known', spec: { kind: 'hologram' }, seed: null },
          { key: 'same', title: 'For all', spec: { kind: 'reading' }, seed: 7 },
        ],
      },
    ],
  }) as unknown as LessonView; // only what the function reads

test('what was worked on brings its notation, with a seed of the student’s own', () => {
  const ada = listPracticeMaterials(lessonOf('course:ada'));
  expect(ada.map(({ title }) => title)).toEqual(['Scale', 'For all']);
  expect(ada[1]?.seed).toBe(7);
  expect(listPracticeMaterials(lessonOf('course:ada'))).toEqual(ada);
  expect(listPracticeMaterials(lessonOf('course:bo'))[0]?.seed).not.toBe(ada[0]?.seed);
  expect(listPracticeMaterials(lessonOf('course:ada', 'skipped'))).toEqual([]);
});
