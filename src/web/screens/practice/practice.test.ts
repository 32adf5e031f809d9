import { expect, test } from 'vitest';
import type { LessonView } from '#contract';
import type { PlainDate } from '#core';
import { parseBackingMaterial } from '#music';
import { describeBacking, writeChart } from './describe-backing.ts';
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

const lessonOf = (course: string, outcome: string | null = 'partly', kept: readonly object[] = []) =>
  ({
    course,
    kept,
    learner: { instrument: 'alto_sax', stage: 'elementary', age: 12 },
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
          { key: 'band', title: 'Round and round', spec: { kind: 'backing', chart: '| C |' }, seed: null },
        ],
      },
    ],
  }) as unknown as LessonView; // only what the function reads

test('what was worked on brings its notation, with a seed of the student’s own', () => {
  const ada = listPracticeMaterials(lessonOf('course:ada'));
  expect(ada.map(({ kind, title }) => `${kind} ${title}`)).toEqual([
    'notation Scale',
    'notation For all',
    'backing Round and round',
  ]);
  expect(ada[1]?.seed).toBe(7);
  expect(listPracticeMaterials(lessonOf('course:ada'))).toEqual(ada);
  expect(listPracticeMaterials(lessonOf('course:bo'))[0]?.seed).not.toBe(ada[0]?.seed);
  expect(listPracticeMaterials(lessonOf('course:ada', 'skipped'))).toEqual([]);
});

const tune = { key: 'tune', title: 'Little Hans', spec: { kind: 'chart', chart: '| C |' }, seed: null };
const workOn = (activity: string, fields: object) => ({
  kind: 'work',
  courseUnit: 'course-unit:one',
  activity,
  outcome: 'partly',
  completes: false,
  materials: [{ ...tune, takeHome: null }],
  ...fields,
});
const sheetOf = (...segments: readonly object[]) =>
  listPracticeMaterials({ ...lessonOf('course:ada'), segments } as unknown as LessonView);

test('a tune that two activities of a unit share stands on the sheet once', () => {
  expect(sheetOf(workOn('map', {}), workOn('beads', {}))).toHaveLength(1);
  const other = { ...tune, spec: { kind: 'chart', chart: '| G |' }, takeHome: null };
  expect(sheetOf(workOn('map', {}), workOn('beads', { materials: [other] }))).toHaveLength(2);
  expect(sheetOf(workOn('map', {}), workOn('map', { courseUnit: 'course-unit:two' }))).toHaveLength(2);
});

test('what stays in the lesson, or goes home once the activity is done, waits until then', () => {
  const waits = (takeHome: string | null, fields: object = {}) =>
    sheetOf(workOn('beads', { materials: [{ ...tune, takeHome }], ...fields })).map((one) => one.waits);
  expect(waits(null)).toEqual([false]);
  expect(waits('never', { outcome: 'finished' })).toEqual([true]);
  expect(waits('whenDone')).toEqual([true]);
  expect(waits('whenDone', { outcome: 'finished' })).toEqual([false]);
  // Before the lesson is closed the plan says whether the activity comes to its end in it.
  expect(waits('whenDone', { outcome: null })).toEqual([true]);
  expect(waits('whenDone', { outcome: null, completes: true })).toEqual([false]);
});

test('a tune that waits for one activity and goes home with another goes home', () => {
  const held = workOn('map', { materials: [{ ...tune, takeHome: 'never' }] });
  expect(sheetOf(held, workOn('beads', {})).map((one) => one.waits)).toEqual([false]);
  expect(sheetOf(workOn('beads', {}), held).map((one) => one.waits)).toEqual([false]);
});

test('what was kept on the sheet stands on it too, whatever was worked on', () => {
  const kept = [
    { id: 'material:a', title: 'Waltz steps', spec: { kind: 'rhythm', metre: '3/4' }, seed: 4 },
    { id: 'material:b', title: 'Of a newer Levare', spec: { kind: 'hologram' }, seed: 4 },
  ];
  expect(listPracticeMaterials(lessonOf('course:ada', 'skipped', kept))).toMatchObject([
    { id: 'material:a', kind: 'notation', title: 'Waltz steps', seed: 4, kept: 'material:a' },
  ]);
});

const backing = (fields: object) => {
  const read = parseBackingMaterial({ kind: 'backing', chart: '| Bb6 | Eb7 | F7 | Bb6 |', ...fields });
  if (!read.ok) throw new Error(read.error.message);
  return read.value;
};

// An alto saxophone in E flat reads a major sixth above what sounds, a clarinet in B flat a major second, a flute and a
// guitar the name that sounds (checks/instruments/data/instruments.json).
test.each([
  ['alto_sax', 'In G major as you read it'],
  ['clarinet_bb', 'In C major as you read it'],
  ['flute', 'In B♭ major'],
  ['guitar', 'In B♭ major'],
] as const)('a backing is named in the key its player reads: %s', (instrument, key) => {
  expect(describeBacking(backing({}), instrument)[0]).toBe(key);
  const tonic = /(?<=In )\S+/.exec(key)?.[0].replace('♭', 'b') ?? '';
  expect(writeChart(backing({}), instrument).startsWith(`| ${tonic}6 | `)).toBe(true);
});

test('a backing is told by tempo, times through, count-in and who plays when', () => {
  expect(describeBacking(backing({ tempo: 92, choruses: 1, countIn: 2, play: 2, rest: 2 }), 'flute')).toEqual(
    [
      'In B♭ major',
      '92 beats a minute',
      'once through',
      '2 bars counted in',
      'the band plays 2 bars, then only keeps time for 2',
    ],
  );
  expect(
    describeBacking(backing({ keys: 'fourths', tempoStep: 4, trade: 4, transpose: -2, countIn: 0 }), 'flute'),
  ).toEqual([
    'In A♭ major',
    'up a fourth each time',
    '120 beats a minute',
    '4 faster each time',
    '3 times through',
    'no count-in',
    'the band plays 4 bars, then leaves you 4',
  ]);
});
