import { expect, test } from 'vitest';
import { present } from '#core';
import { loadCourse } from '../course/course-records.ts';
import { anaCourse, openCourseStudio } from '../testing/open-studio.contract.ts';
import { expectedPace, outcomeByClock, type ReckonedSegment, reckonCovered } from './reckon.ts';

const segment = (more: Partial<ReckonedSegment>): ReckonedSegment => ({
  minutes: 12,
  completes: false,
  seconds: null,
  outcome: null,
  reasons: [],
  ...more,
});

test.each([
  // At pace 1.2 twelve minutes on the clock are a chunk of ten usual minutes, out of 20 left.
  ['[R-COVERED-1] finished: all that was left', { outcome: 'finished' }, null, 20],
  ['[R-COVERED-2] a share of the chunk', { outcome: 'partly' }, 0.5, 5],
  [
    '[R-COVERED-2] a share of a last chunk is of all that is left',
    { outcome: 'partly', completes: true },
    0.5,
    10,
  ],
  ['[R-COVERED-3] the clock at this pace', { outcome: 'partly', seconds: 360 }, null, 5],
  ['[R-COVERED-3] never more than the chunk', { outcome: 'partly', seconds: 3600 }, null, 10],
  ['[R-COVERED-3] without a clock, half', { outcome: 'setAside' }, null, 5],
  ['[R-COVERED-4] skipped: nothing', { outcome: 'skipped', seconds: 600 }, null, 0],
  [
    '[R-COVERED-4] the short check of something known: its own minutes',
    { outcome: 'finished', minutes: 3, reasons: [{ kind: 'knownAlready', level: 3 }] },
    null,
    2.5,
  ],
] as const)('%s', (_, more, share, covered) => {
  expect(reckonCovered({ segment: segment(more), left: 20, pace: 1.2, share })).toBeCloseTo(covered, 6);
});

test('[R-COVERED-3] past its usual minutes, a further go still counts as its own', () => {
  expect(
    reckonCovered({ segment: segment({ outcome: 'partly' }), left: 0, pace: 1.2, share: 1 }),
  ).toBeCloseTo(10, 6);
});

test('[R-CLOSE-2] the clock speaks: nine tenths of a last chunk is finished', () => {
  const last = (seconds: number | null) => outcomeByClock(segment({ completes: true, seconds }), 10, 1.2);
  expect([last(null), last(0), last(60), last(647), last(649)]).toEqual([
    'skipped',
    'skipped',
    'partly',
    'partly',
    'finished',
  ]);
});

test('[R-COVERED-5] work without a clock says nothing of the pace', async () => {
  const studio = await openCourseStudio();
  const first = present((await studio.lessons(anaCourse))[0], 'lesson');
  const [walk, clap] = (await studio.segments(first.id)).filter((s) => s.kind === 'work');
  await studio.done({
    type: 'segment.log',
    segment: present(walk, 'walk').id,
    seconds: null,
    outcome: 'finished',
    share: null,
  });
  await studio.done({ type: 'lesson.close', lesson: first.id, minutes: null });
  const pace = async () =>
    expectedPace(present(await studio.store.read((r) => loadCourse(r, anaCourse)), 'course'));
  expect(await pace()).toBe(1);
  await studio.done({
    type: 'segment.log',
    segment: present(clap, 'clap').id,
    seconds: 1800,
    outcome: 'finished',
    share: null,
  });
  expect(await pace()).toBeGreaterThan(1);
});
